#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <tuple>

#include "core/larder/larder.h"
#include "core/shopping/by_products.h"
#include "core/shopping/ingredient_facts.h"
#include "core/shopping/shopping_need.h"

namespace suppertide::shopping {

namespace {

/// The evening as it will be cooked: of each open method the one that the layout, or the recipe's
/// order, says; without dishes whose recipes are not there. Says what it leaves out.
class CookedEvening
{
public:
    CookedEvening(const PlanInput& input, std::vector<std::string>& sentences)
        : input_(input), sentences_(sentences)
    {}

    PlanInput make()
    {
        Occasion occasion = *input_.occasion;
        for (Course& course : occasion.courses) {
            std::erase_if(course.dishes, [this](const Dish& dish) { return !isThere(dish); });
            for (Dish& dish : course.dishes) {
                clean(dish);
            }
        }
        PlanInput made = input_;
        made.occasion = std::make_shared<const Occasion>(std::move(occasion));
        return made;
    }

private:
    bool isThere(const Dish& dish)
    {
        if (input_.recipes.contains(dish.recipe)) {
            return true;
        }
        if (portionsOf(dish) > Portions{0}) {
            sentences_.push_back(
                fmt::format("The recipe “{}” of a dish is not in the library, so nothing is bought "
                            "for it. Take it in, or take the dish off the menu.",
                            dish.recipe.text()));
        }
        return false;
    }

    void clean(Dish& dish)
    {
        const Recipe& recipe = *input_.recipes.at(dish.recipe);
        const bool wasAsked = !dish.mix.empty();
        const std::size_t said = sentences_.size();
        std::erase_if(dish.mix, [&](const MixEntry& entry) { return !isMakeable(recipe, entry); });
        if (wasAsked && said == sentences_.size() && portionsOf(dish) == Portions{0}) {
            sentences_.push_back(
                fmt::format("“{}” has 0 portions, so nothing is bought for it.", recipe.name));
        }
        for (const auto& [id, each] : input_.recipes) {
            // A preparation is keyed by its recipe, a dish by itself (core/plan).
            const std::string key = id == dish.recipe ? dish.id.text() : id.text();
            for (const MethodChoice& choice : each->methods) {
                takeMethod(dish, choice, key);
            }
        }
    }

    bool isMakeable(const Recipe& recipe, const MixEntry& entry)
    {
        if (entry.portions < Portions{0}) {
            sentences_.push_back(
                fmt::format("“{}” has {} portions of a variant, so nothing is bought for it. Give "
                            "it portions above 0.",
                            recipe.name, entry.portions.text()));
            return false;
        }
        if (std::ranges::find(recipe.variants, entry.variant, &Variant::id) ==
            recipe.variants.end()) {
            sentences_.push_back(
                fmt::format("“{}” has no variant “{}”, so nothing is bought for its {} portions. "
                            "Choose another variant.",
                            recipe.name, entry.variant.text(), entry.portions.text()));
            return false;
        }
        return true;
    }

    void takeMethod(Dish& dish, const MethodChoice& choice, const std::string& key) const
    {
        if (choice.methods.empty() || dish.methods.contains(choice.id)) {
            return;
        }
        const auto laid = input_.layout->options.find(key + "/" + choice.id.text());
        const auto named =
            laid == input_.layout->options.end()
                ? choice.methods.end()
                : std::ranges::find(choice.methods, MethodId{laid->second}, &Method::id);
        dish.methods[choice.id] =
            named == choice.methods.end() ? choice.methods.front().id : named->id;
    }

    const PlanInput& input_;
    std::vector<std::string>& sentences_;
};

using StepKey = std::tuple<DishId, RecipeId, StepId>;

std::map<StepKey, Instant> startsOf(const Plan* plan)
{
    std::map<StepKey, Instant> starts;
    if (plan == nullptr) {
        return starts;
    }
    const Formulation& formulation = *plan->formulation;
    for (const TaskIndex task : formulation.tasks.indices()) {
        const TaskSource& source = formulation.tasks[task];
        const auto when = plan->interval(task);
        if (!when || !source.dish || !source.recipe || !source.step) {
            continue;
        }
        const Instant start = formulation.calendar.instant(when->start);
        const auto [known, isNew] =
            starts.emplace(StepKey{*source.dish, *source.recipe, *source.step}, start);
        if (!isNew) {
            known->second = std::min(known->second, start);
        }
    }
    return starts;
}

class NeedWriter
{
public:
    NeedWriter(const PlanInput& input, const Plan* plan,
               const std::optional<MeasureSystem>& measures, Needs& result)
        : input_(input), makings_(makingsOf(input)), starts_(startsOf(plan)), measures_(measures),
          result_(result), byProducts_(makings_, *input.layout)
    {}

    void write()
    {
        for (std::size_t index = 0; index < makings_.size(); ++index) {
            dishes_.push_back(dishesOf(index));
            taken_.clear();
            for (const MadeStep& made : makings_[index].steps) {
                for (const IngredientLine& line : made.lines) {
                    addTaken(index, made, line);
                }
            }
            addStrays(index);
        }
        result_.spare = byProducts_.spare();
    }

private:
    /// Each once, in order of the menu.
    [[nodiscard]] std::vector<std::size_t> dishesOf(std::size_t index) const
    {
        const Making& making = makings_[index];
        if (!making.isPreparation) {
            return {index};
        }
        std::set<std::size_t> dishes;
        for (const Consumer& consumer : making.consumers) {
            dishes.insert(dishes_[consumer.making].begin(), dishes_[consumer.making].end());
        }
        return {dishes.begin(), dishes.end()};
    }

    [[nodiscard]] bool isMade(const IngredientLine& line) const
    {
        return line.preparation && input_.recipes.contains(*line.preparation);
    }

    /// A line counts for the first step that takes it.
    void addTaken(std::size_t index, const MadeStep& made, const IngredientLine& line)
    {
        bool isNew = true;
        for (const std::size_t variant : made.variants) {
            isNew = taken_.emplace(variant, line.id).second && isNew;
        }
        if (!isNew || isMade(line)) {
            return;
        }
        const Making& making = makings_[index];
        const Portions all = making.shareOf(made.variants).total();
        for (const std::size_t batch : made.batches) {
            const Portions portions = making.batches[batch].share.total();
            ShoppingNeed need = needFor(index, line, made.variants, portions);
            need.amount = amountFor(line, making, portions, all);
            need.firstUse = firstUse(making, &made);
            if (line.byProduct) {
                byProducts_.offer(index, line, need);
            }
            add(std::move(need));
        }
    }

    void addStrays(std::size_t index)
    {
        const Making& making = makings_[index];
        std::vector<std::pair<IngredientLine, std::vector<std::size_t>>> strays;
        for (std::size_t variant = 0; variant < making.variants.size(); ++variant) {
            for (const IngredientLine& line : linesOf(making.variants[variant])) {
                if (isMade(line) || taken_.contains({variant, line.id})) {
                    continue;
                }
                const auto known =
                    std::ranges::find(strays, line, [](const auto& stray) { return stray.first; });
                if (known == strays.end()) {
                    strays.push_back({line, {variant}});
                } else {
                    known->second.push_back(variant);
                }
            }
        }
        for (const auto& [line, variants] : strays) {
            const Portions all = making.shareOf(variants).total();
            ShoppingNeed need = needFor(index, line, variants, all);
            need.amount = amountFor(line, making, all, all);
            need.firstUse = firstUse(making, nullptr);
            add(std::move(need));
        }
    }

    [[nodiscard]] ShoppingNeed needFor(std::size_t index, const IngredientLine& line,
                                       const std::vector<std::size_t>& variants,
                                       const Portions& portions) const
    {
        const Making& making = makings_[index];
        ShoppingNeed need;
        need.making = index;
        need.line = line.id;
        need.ingredient = line.ingredient;
        need.note = line.note;
        need.part = line.part;
        need.recipeName = making.recipe->name;
        need.recipe = making.recipe->id;
        for (const std::size_t dish : dishes_[index]) {
            need.dishes.push_back(makings_[dish].dish->id);
            need.dishNames.push_back(makings_[dish].name);
        }
        for (const std::size_t variant : variants) {
            need.variants.push_back(making.variants[variant].name);
        }
        need.portions = portions;
        return need;
    }

    /// When the plan has the step, or the first step; else when it is served.
    [[nodiscard]] std::optional<Instant> firstUse(const Making& making, const MadeStep* made) const
    {
        std::optional<Instant> first;
        for (const MadeStep& step : making.steps) {
            const auto start = starts_.find({making.dish->id, making.recipe->id, step.step.id});
            const bool isMeant = made == nullptr || made->step.id == step.step.id;
            if (isMeant && start != starts_.end() && (!first || start->second < *first)) {
                first = start->second;
            }
        }
        if (first) {
            return first;
        }
        const auto zone = TimeZone::find(input_.occasion->zone);
        return zone ? std::optional{zone->instant(making.course->serving)} : std::nullopt;
    }

    void add(ShoppingNeed need)
    {
        if (need.amount.value < Rational{0}) {
            result_.sentences.push_back(
                fmt::format("“{}” asks for {} of {}, which is less than nothing, so none is "
                            "bought. Correct the recipe.",
                            need.recipeName, kitchenText(need.amount, measures_), need.ingredient));
            return;
        }
        if (ingredientKey(need.ingredient).empty()) {
            result_.sentences.push_back(fmt::format(
                "A line of “{}” names no ingredient. Complete the recipe.", need.recipeName));
            return;
        }
        const auto isSame = [&need](const ShoppingNeed& other) {
            return other.making == need.making && other.line == need.line &&
                   other.variants == need.variants && other.ingredient == need.ingredient &&
                   other.part == need.part && other.amount.unit == need.amount.unit &&
                   other.takenFrom == need.takenFrom;
        };
        const auto known = std::ranges::find_if(result_.needs, isSame);
        if (known == result_.needs.end()) {
            result_.needs.push_back(std::move(need));
            return;
        }
        known->amount.value = sumOf(known->amount.most(), need.amount.most());
        known->portions = known->portions + need.portions;
        if (need.firstUse && (!known->firstUse || *need.firstUse < *known->firstUse)) {
            known->firstUse = need.firstUse;
        }
    }

    const PlanInput& input_;
    std::vector<Making> makings_;
    std::map<StepKey, Instant> starts_;
    std::optional<MeasureSystem> measures_;
    Needs& result_;
    ByProducts byProducts_;
    std::vector<std::vector<std::size_t>> dishes_; // of each making
    std::set<std::pair<std::size_t, LineId>> taken_;
};

} // namespace

Needs needsOf(const PlanInput& input, const Plan* plan,
              const std::optional<MeasureSystem>& measures)
{
    Needs result;
    const PlanInput cooked = CookedEvening(input, result.sentences).make();
    NeedWriter(cooked, plan, measures, result).write();
    return result;
}

} // namespace suppertide::shopping
