#include "core/occasion/suitability.h"

#include <algorithm>
#include <iterator>
#include <set>
#include <utility>

#include "core/food/name_words.h"

namespace suppertide {

namespace {

using Recipes = std::map<RecipeId, const Recipe*>;

// 165 °F and 160 °F, rounded up to a tenth.
constexpr Celsius heatedThrough = Celsius::tenths(739);
constexpr Celsius eggHeatedThrough = Celsius::tenths(712);

bool isHeatedTo(const FollowedFood& food, Celsius least)
{
    return std::ranges::any_of(food.steps, [least](const FoodTreatment& step) {
        return makesHot(step.treatment) && step.to && *step.to >= least;
    });
}

FoodClass classAsEaten(const FollowedFood& food)
{
    FoodClass result = food.kind.food;
    for (const FoodTreatment& step : food.steps) {
        result = step.becomes.value_or(result);
    }
    return result;
}

/// What it is when it comes to the table.
FoodKind kindAsEaten(const FollowedFood& food)
{
    FoodKind kind{classAsEaten(food), {}};
    if (isHeatedTo(food, heatedThrough)) {
        return kind;
    }
    const bool isEggCooked = isHeatedTo(food, eggHeatedThrough);
    for (const RiskFact fact : food.kind.facts) {
        if (fact != RiskFact::RawEgg || !isEggCooked) {
            kind.facts.push_back(fact);
        }
    }
    const auto add = [&kind](RiskFact fact) {
        if (!kind.has(fact)) {
            kind.facts.push_back(fact);
        }
    };
    if (kind.food == FoodClass::RawEggParts && !isEggCooked) {
        add(RiskFact::RawEgg);
    }
    if (kind.food == FoodClass::ColdSmokedFish) {
        add(RiskFact::ColdSmokedFish);
    }
    return kind;
}

struct Gathered
{
    std::vector<FoodKind> foods;
    std::set<std::string> ingredients;
    std::set<RecipeId> visited;
};

void gather(const Recipe& recipe, const VariantId& variant, const Recipes& recipes,
            Gathered& gathered);

void gatherPart(const RecipePart& part, const Recipes& recipes, Gathered& gathered)
{
    for (const FollowedFood& food : part.foods) {
        gathered.foods.push_back(kindAsEaten(food));
    }
    for (const IngredientLine& line : part.lines) {
        gathered.ingredients.insert(line.ingredient);
        if (!line.preparation) {
            continue;
        }
        const auto made = recipes.find(*line.preparation);
        if (made != recipes.end() && !made->second->variants.empty()) {
            gather(*made->second, made->second->variants.front().id, recipes, gathered);
        }
    }
}

void gather(const Recipe& recipe, const VariantId& variant, const Recipes& recipes,
            Gathered& gathered)
{
    const auto resolved = resolve(recipe, variant);
    if (!resolved || !gathered.visited.insert(recipe.id).second) {
        return;
    }
    gatherPart(resolved->part, recipes, gathered);
    for (const MethodChoice& choice : resolved->methods) {
        for (const Method& method : choice.methods) {
            gatherPart(method.part, recipes, gathered);
        }
    }
}

/// Absent: a fact that lessens a risk and is none itself.
std::optional<safety::Subject> subjectOf(RiskFact fact)
{
    switch (fact) {
    case RiskFact::RawEgg:
        return safety::Subject::RawEgg;
    case RiskFact::RareMeat:
        return safety::Subject::RareMeat;
    case RiskFact::RawFish:
        return safety::Subject::RawFish;
    case RiskFact::RawShellfish:
        return safety::Subject::RawShellfish;
    case RiskFact::ColdSmokedFish:
        return safety::Subject::ColdSmokedFish;
    case RiskFact::UnpasteurisedMilk:
        return safety::Subject::UnpasteurisedMilk;
    case RiskFact::PasteurisedEgg:
    case RiskFact::LionEgg:
    case RiskFact::SoldForEatingRaw:
        break;
    }
    return std::nullopt;
}

/// Egg that is pasteurised, or of a scheme that the book trusts, may be eaten raw.
bool isRelieved(const FoodKind& food, RiskFact fact, safety::RuleBook book)
{
    return fact == RiskFact::RawEgg &&
           (food.has(RiskFact::PasteurisedEgg) ||
            (book == safety::RuleBook::UkEu && food.has(RiskFact::LionEgg)));
}

std::vector<RiskFact> risksOf(const std::vector<FoodKind>& foods, safety::RuleBook book)
{
    std::set<RiskFact> risks;
    for (const FoodKind& food : foods) {
        for (const RiskFact fact : food.facts) {
            const auto subject = subjectOf(fact);
            if (subject && !isRelieved(food, fact, book) &&
                !safety::rulesAbout(book, *subject, FoodClass::CookedDish).empty()) {
                risks.insert(fact);
            }
        }
    }
    return {risks.begin(), risks.end()};
}

} // namespace

VariantNature natureOf(const Recipe& recipe, const VariantId& variant, const Recipes& recipes,
                       const IngredientBook& ingredients)
{
    Gathered gathered;
    gather(recipe, variant, recipes, gathered);
    return {contentsOf(recipe, variant, recipes, ingredients),
            std::move(gathered.foods),
            {gathered.ingredients.begin(), gathered.ingredients.end()}};
}

Suitability suitabilityOf(const Guest& guest, const VariantNature& nature, safety::RuleBook book)
{
    Suitability result;
    const std::vector<Substance> avoided = avoidedBy(guest);
    std::ranges::set_intersection(avoided, nature.contents.contains,
                                  std::back_inserter(result.unsuitable));
    if (!avoided.empty()) {
        result.unknown = nature.contents.unknown;
    }
    if (!guest.risks.empty()) {
        result.risks = risksOf(nature.foods, book);
    }
    return result;
}

std::vector<std::string> dislikedIn(const Guest& guest, const VariantNature& nature)
{
    std::vector<std::string> result;
    for (const std::string& dislike : guest.dislikes) {
        const std::vector<std::string> wanted = nameWords(dislike);
        const bool isThere =
            std::ranges::any_of(nature.ingredients, [&wanted](const std::string& ingredient) {
                return hasWords(nameWords(ingredient), wanted);
            });
        if (isThere) {
            result.push_back(dislike);
        }
    }
    return result;
}

} // namespace suppertide
