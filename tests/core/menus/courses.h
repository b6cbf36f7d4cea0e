// Courses of alternatives for tests of mixes and menus: each alternative one dish, each variant a
// few steps and something that guests may avoid.
#pragma once

#include <string>
#include <vector>

#include "core/menus/mix.h"
#include "tests/support/supper/supper.h"

namespace suppertide::test {

/// A variant with this ingredient and these steps of its own beside the common ones.
inline Variant variantWith(const std::string& name, std::vector<Substance> contains,
                           const std::vector<std::string>& steps = {})
{
    Variant variant;
    variant.id = VariantId{name};
    variant.name = name;
    variant.adds.lines = {ingredient(name, std::move(contains))};
    variant.adds.lines.front().id = LineId{"line-" + name};
    for (const std::string& each : steps) {
        variant.adds.steps.push_back(step(each, Minutes{10}));
    }
    return variant;
}

/// A recipe with these variants; cooked in one step that all share.
inline Recipe recipeOf(const std::string& name, std::vector<Variant> variants)
{
    Recipe made = recipe(name, {step("Cook " + name, Minutes{20})});
    made.variants = std::move(variants);
    return made;
}

/// The last course gets the recipe as one more alternative that may lead.
inline void offer(Supper& supper, const Recipe& recipe, bool isForEverybody = false)
{
    Course& course = supper.occasion.courses.back();
    const AlternativeId alternative{recipe.id.text()};
    course.alternatives.push_back({alternative, recipe.name, isForEverybody});
    Dish dish;
    dish.id = DishId{recipe.id.text()};
    dish.recipe = recipe.id;
    dish.alternative = alternative;
    course.dishes.push_back(std::move(dish));
    supper.addRecipe(recipe);
}

inline menus::CourseMix mixOfLast(const Supper& supper, const std::string& leading)
{
    const PlanInput input = supper.input();
    const menus::CourseOffer offered = menus::offerOf(input, input.occasion->courses.back());
    return menus::mixOf(input, offered, AlternativeId{leading});
}

/// Lamb or squash with a gratin for all, shared out.
inline Supper sharedOut()
{
    Supper supper;
    offer(supper, recipeOf("lamb", {variantWith("herbs", {Substance::Meat})}));
    offer(supper,
          recipeOf("squash", {variantWith("cheese", {Substance::Milk}), variantWith("plain", {})}));
    offer(supper, recipeOf("gratin", {variantWith("cream", {Substance::Milk})}), true);
    supper.addGuest("Ada");
    supper.addGuest("Dov").diets = {Diet::Vegetarian};
    supper.addGuest("Bea").diets = {Diet::Vegan};
    supper.occasion.courses.back() =
        menus::withMix(supper.occasion.courses.back(), mixOfLast(supper, "lamb"));
    return supper;
}

} // namespace suppertide::test
