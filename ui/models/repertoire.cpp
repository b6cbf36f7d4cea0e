#include "ui/models/repertoire.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <sstream>

#include "core/larder/ingredient_book.h"
#include "core/wording/wording.h"
#include "ui/models/edit.h"
#include "ui/models/reading.h"

namespace suppertide::ui {

namespace {

std::string lowered(std::string_view text)
{
    std::string lower(text);
    for (char& letter : lower) {
        const auto code = static_cast<unsigned char>(letter);
        letter = code < 128 ? static_cast<char>(std::tolower(code)) : letter;
    }
    return lower;
}

std::vector<Substance> sortedOnce(std::vector<Substance> substances)
{
    std::sort(substances.begin(), substances.end());
    substances.erase(std::unique(substances.begin(), substances.end()), substances.end());
    return substances;
}

void addIngredients(std::string& text, const RecipePart& part)
{
    for (const IngredientLine& line : part.lines) {
        text += " " + line.ingredient;
    }
}

std::string searchedText(const Recipe& recipe)
{
    std::string text = recipe.name;
    for (const std::string& keyword : recipe.keywords) {
        text += " " + keyword;
    }
    addIngredients(text, recipe.common);
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            text += " " + method.name;
            addIngredients(text, method.part);
        }
    }
    for (const Variant& variant : recipe.variants) {
        text += " " + variant.name;
        addIngredients(text, variant.adds);
    }
    return lowered(text);
}

std::string metaOf(const Recipe& recipe)
{
    const RecipeLength length = lengthOf(recipe);
    return fmt::format("{} hands-on, {} in all", durationText(length.handsOn),
                       durationText(length.inAll));
}

bool isKnownWithout(const Contents& contents, const std::vector<Substance>& without)
{
    return without.empty() ||
           (contents.unknown.empty() &&
            std::none_of(without.begin(), without.end(), [&](Substance substance) {
                return std::binary_search(contents.contains.begin(), contents.contains.end(),
                                          substance);
            }));
}

/// Portions of each variant on the open menu.
std::map<std::pair<RecipeId, VariantId>, Portions> portionsOnMenu(const LibraryState& library)
{
    std::map<std::pair<RecipeId, VariantId>, Portions> portions;
    if (const OccasionPtr open = openOccasion(library)) {
        for (const Course& course : open->occasion.courses) {
            for (const Dish& dish : course.dishes) {
                for (const MixEntry& mix : dish.mix) {
                    Portions& sum = portions[{dish.recipe, mix.variant}];
                    sum = sum + mix.portions;
                }
            }
        }
    }
    return portions;
}

/// Longest way from any step to each point of time, by relaxing until nothing moves.
class LongestWay
{
public:
    explicit LongestWay(const RecipePart& part) : part_(part)
    {
        for (const Step& step : part.steps) {
            starts_[step.id] = Minutes{0};
            lengths_[step.id] = step.duration.likely;
        }
        // Each round settles at least one more step; recipes with a circle stop all the same.
        for (std::size_t round = 0; round < part.steps.size() && relax(); ++round) {
        }
    }

    [[nodiscard]] Minutes inAll() const
    {
        Minutes latest{0};
        for (const auto& [step, start] : starts_) {
            latest = std::max(latest, start + lengths_.at(step));
        }
        for (const Wait& wait : part_.waits) {
            if (!wait.to.step) {
                latest = std::max(latest, timeOf(wait.from) + wait.least);
            }
        }
        return latest;
    }

private:
    [[nodiscard]] Minutes timeOf(const StepPoint& point) const
    {
        if (!point.step || !starts_.contains(*point.step)) {
            return Minutes{0};
        }
        const Minutes start = starts_.at(*point.step);
        return point.edge == StepEdge::Start ? start : start + lengths_.at(*point.step);
    }
    bool push(const StepId& step, Minutes start)
    {
        const auto there = starts_.find(step);
        if (there == starts_.end() || there->second >= start) {
            return false;
        }
        there->second = start;
        return true;
    }
    bool relax()
    {
        bool hasMoved = false;
        for (const Step& step : part_.steps) {
            for (const StepId& before : step.after) {
                hasMoved |= push(step.id, timeOf({before, StepEdge::End}));
            }
        }
        for (const Wait& wait : part_.waits) {
            if (wait.to.step && wait.from.step) {
                const Minutes back =
                    wait.to.edge == StepEdge::End && lengths_.contains(*wait.to.step)
                        ? lengths_.at(*wait.to.step)
                        : Minutes{0};
                hasMoved |= push(*wait.to.step, timeOf(wait.from) + wait.least - back);
            }
        }
        return hasMoved;
    }

    const RecipePart& part_;
    std::map<StepId, Minutes> starts_;
    std::map<StepId, Minutes> lengths_;
};

} // namespace

std::vector<Substance> ruledOutBy(std::string_view wish)
{
    const std::string word = lowered(wish);
    if (word == "nuts" || word == "nut") {
        std::vector<Substance> nuts = avoidedBy(Diet::NoTreeNuts);
        nuts.push_back(Substance::Peanut);
        return sortedOnce(nuts);
    }
    if (word == "gluten") {
        return sortedOnce(avoidedBy(Diet::Coeliac));
    }
    if (word == "dairy") {
        return sortedOnce(avoidedBy(Diet::NoDairy));
    }
    if (word == "meat") {
        return {Substance::Meat, Substance::Poultry};
    }
    if (word == "eggs") {
        return {Substance::Egg};
    }
    if (const auto substance = findSubstance(word)) {
        return {*substance};
    }
    if (const auto diet = findDiet("no " + word)) {
        return sortedOnce(avoidedBy(*diet));
    }
    return {};
}

RepertoireSearch RepertoireSearch::parse(std::string_view text)
{
    RepertoireSearch search;
    std::istringstream stream{lowered(text)};
    for (std::string word; stream >> word;) {
        std::vector<Substance> without;
        if (word == "no" || word == "without") {
            std::string wish;
            if (stream >> wish) {
                without = ruledOutBy(wish);
                word += " " + wish;
            }
        } else if (const auto diet = findDiet(word)) {
            without = avoidedBy(*diet);
        }
        if (without.empty()) {
            search.words.push_back(word);
        }
        search.without.insert(search.without.end(), without.begin(), without.end());
    }
    search.without = sortedOnce(search.without);
    return search;
}

RecipeLength lengthOf(const Recipe& recipe)
{
    RecipeLength length;
    if (recipe.variants.empty()) {
        return length;
    }
    const Result<ResolvedRecipe> resolved = resolve(recipe, recipe.variants.front().id);
    if (!resolved) {
        return length;
    }
    RecipePart part = resolved->part;
    for (const MethodChoice& choice : resolved->methods) {
        if (!choice.methods.empty()) {
            const RecipePart& usual = choice.methods.front().part;
            part.steps.insert(part.steps.end(), usual.steps.begin(), usual.steps.end());
            part.waits.insert(part.waits.end(), usual.waits.begin(), usual.waits.end());
        }
    }
    for (const Step& step : part.steps) {
        if (step.attention >= Attention::percent(60)) {
            length.handsOn += step.duration.likely;
        }
    }
    length.inAll = LongestWay(part).inAll();
    return length;
}

/// What recipes contain depends on what the cook has said of their ingredients.
void Repertoire::readLarder(const LibraryState& library)
{
    if (larder_ != library.larder) {
        larder_ = library.larder;
        ingredients_ = ingredientBook(larderOf(library));
        facts_.clear();
    }
}

const Repertoire::Facts& Repertoire::factsOf(const RecipePtr& recipe)
{
    Facts& facts = facts_[recipe->id];
    if (facts.recipe != recipe) {
        facts = {recipe, searchedText(*recipe), metaOf(*recipe), {}};
        for (const Variant& variant : recipe->variants) {
            const Result<ResolvedRecipe> resolved = resolve(*recipe, variant.id);
            facts.contents.push_back(resolved ? contentsOf(*resolved, ingredients_) : Contents{});
        }
    }
    return facts;
}

std::vector<RecipeCard> Repertoire::cards(const LibraryState& library, const DishLooks& looks,
                                          const RepertoireSearch& search)
{
    readLarder(library);
    const auto portions = portionsOnMenu(library);
    const OccasionPtr open = openOccasion(library);
    std::vector<RecipeCard> cards;
    for (const auto& [id, recipe] : library.recipes) {
        const Facts& facts = factsOf(recipe);
        const bool hasWords =
            std::all_of(search.words.begin(), search.words.end(), [&](const std::string& word) {
                return facts.searched.find(word) != std::string::npos;
            });
        if (!hasWords) {
            continue;
        }
        RecipeCard card{id, recipe->name, facts.meta, {}, {}};
        card.look = open ? looks.findRecipe(open->occasion, id) : std::nullopt;
        for (std::size_t i = 0; i < recipe->variants.size(); ++i) {
            const Variant& variant = recipe->variants[i];
            if (isKnownWithout(facts.contents[i], search.without)) {
                const auto there = portions.find({id, variant.id});
                card.variants.push_back(
                    {variant.id, variant.name,
                     there == portions.end() ? std::string() : fieldText(there->second)});
            }
        }
        if (!card.variants.empty() || search.without.empty()) {
            cards.push_back(std::move(card));
        }
    }
    std::stable_sort(cards.begin(), cards.end(), [](const RecipeCard& a, const RecipeCard& b) {
        if (a.look.has_value() != b.look.has_value()) {
            return a.look.has_value();
        }
        return a.look ? *a.look < *b.look : lowered(a.name) < lowered(b.name);
    });
    return cards;
}

} // namespace suppertide::ui
