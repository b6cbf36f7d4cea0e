#include "core/menus/course_offer.h"

#include <algorithm>
#include <memory>

#include "core/plan/making.h"

namespace suppertide::menus {

namespace {

/// What a dish is so far for a guest or two only is no sign of what the cook wants for all.
std::size_t usualVariant(const Dish& dish, const Recipe& recipe, std::size_t guests)
{
    const auto most = std::ranges::max_element(dish.mix, {}, &MixEntry::portions);
    const Portions half{static_cast<std::int64_t>(guests), 2};
    if (most == dish.mix.end() || most->portions <= Portions{0} || most->portions < half) {
        return 0;
    }
    const auto found = std::ranges::find(recipe.variants, most->variant, &Variant::id);
    return found == recipe.variants.end()
               ? 0
               : static_cast<std::size_t>(found - recipe.variants.begin());
}

std::optional<std::size_t> alternativeOf(const Dish& dish, const std::vector<AlternativeId>& leads)
{
    const auto found = std::ranges::find(leads, dish.alternative);
    return found == leads.end() ? std::nullopt
                                : std::optional{static_cast<std::size_t>(found - leads.begin())};
}

/// Whether the step is done when each choice takes its usual method.
bool isUsual(const MadeStep& step, const Making& making)
{
    if (!step.method) {
        return true;
    }
    const auto choice = std::ranges::find(making.choices, step.method->choice, &MethodChoice::id);
    return choice == making.choices.end() || choice->methods.front().id == step.method->method;
}

} // namespace

std::optional<std::size_t> CourseOffer::mainDish(std::size_t alternative) const
{
    const std::vector<std::size_t> own = dishesOf(alternative);
    return own.empty() ? std::nullopt : std::optional{own.front()};
}

std::vector<std::size_t> CourseOffer::dishesOf(std::optional<std::size_t> alternative) const
{
    std::vector<std::size_t> own;
    for (std::size_t i = 0; i < dishes.size(); ++i) {
        if (dishes[i].alternative == alternative) {
            own.push_back(i);
        }
    }
    return own;
}

std::vector<AlternativeId> leadingAlternatives(const Course& course)
{
    std::vector<AlternativeId> leads;
    for (const Alternative& alternative : course.alternatives) {
        const bool hasDishes = std::ranges::find(course.dishes, alternative.id,
                                                 &Dish::alternative) != course.dishes.end();
        if (!alternative.isForEverybody && hasDishes) {
            leads.push_back(alternative.id);
        }
    }
    if (leads.empty()) {
        leads.emplace_back();
    }
    return leads;
}

CourseOffer offerOf(const PlanInput& input, const Course& course)
{
    CourseOffer offer;
    offer.course = &course;
    offer.alternatives = leadingAlternatives(course);
    const RecipeTable recipes = recipeTable(input);
    const bool isCooked = std::ranges::any_of(
        course.dishes, [](const Dish& dish) { return portionsOf(dish) > Portions{0}; });
    for (const Dish& dish : course.dishes) {
        const auto recipe = recipes.find(dish.recipe);
        const auto alternative = alternativeOf(dish, offer.alternatives);
        const bool isLeftOut = !alternative && isCooked && portionsOf(dish) <= Portions{0};
        if (recipe == recipes.end() || recipe->second->variants.empty() || isLeftOut) {
            continue;
        }
        OfferedDish offered{&dish,
                            recipe->second,
                            alternative,
                            {},
                            usualVariant(dish, *recipe->second, input.occasion->guests.size())};
        for (const Variant& variant : recipe->second->variants) {
            offered.variants.push_back(
                {variant.id, natureOf(*recipe->second, variant.id, recipes, input.ingredients)});
        }
        offer.dishes.push_back(std::move(offered));
    }
    return offer;
}

StepCounter::StepCounter(const PlanInput& input, const CourseOffer& offer)
    : input_(input), offer_(offer)
{
    input_.layout = std::make_shared<const Layout>();
}

int StepCounter::count(const std::set<MadeVariant>& made)
{
    if (const auto known = known_.find(made); known != known_.end()) {
        return known->second;
    }
    Occasion occasion;
    Course& course = occasion.courses.emplace_back();
    for (const auto& [dish, variant] : made) {
        const OfferedDish& offered = offer_.dishes[dish];
        if (course.dishes.empty() || course.dishes.back().id != offered.dish->id) {
            course.dishes.push_back(*offered.dish);
            course.dishes.back().mix.clear();
        }
        course.dishes.back().mix.push_back({offered.variants[variant].id, Portions{1}, {}});
    }
    input_.occasion = std::make_shared<const Occasion>(std::move(occasion));
    int steps = 0;
    for (const Making& making : makingsOf(input_)) {
        steps += static_cast<int>(std::ranges::count_if(
            making.steps, [&making](const MadeStep& step) { return isUsual(step, making); }));
    }
    known_.emplace(made, steps);
    return steps;
}

} // namespace suppertide::menus
