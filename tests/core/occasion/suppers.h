// A small supper for tests: six guests, three recipes that contain this or that, a kitchen.
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "core/occasion/occasion.h"

namespace suppertide::test {

inline Variant variantThatAdds(const std::string& id, std::vector<Substance> contains)
{
    Variant variant;
    variant.id = VariantId{id};
    variant.name = id;
    IngredientLine line;
    line.id = LineId{id + "-line"};
    line.ingredient = id;
    line.contains = std::move(contains);
    variant.adds.lines = {line};
    return variant;
}

inline Recipe recipeOf(const std::string& id, std::vector<Variant> variants)
{
    Recipe recipe;
    recipe.id = RecipeId{id};
    recipe.name = id;
    recipe.variants = std::move(variants);
    return recipe;
}

inline Guest guest(const std::string& name, std::vector<Diet> diets = {},
                   std::vector<Substance> allergies = {})
{
    return {GuestId{name}, name, std::move(diets), std::move(allergies)};
}

inline MixEntry entry(const std::string& variant, const Portions& portions,
                      std::vector<GuestId> guests = {})
{
    return {VariantId{variant}, portions, std::move(guests)};
}

struct Supper
{
    Supper()
    {
        recipes.push_back(recipeOf(
            "tart", {variantThatAdds("wheat", {Substance::Wheat}), variantThatAdds("free", {})}));
        recipes.push_back(recipeOf("lamb", {variantThatAdds("plain", {Substance::Meat})}));
        recipes.push_back(recipeOf("squash", {variantThatAdds("plain", {Substance::Milk})}));
        recipes.push_back(recipeOf("potatoes", {variantThatAdds("plain", {})}));
        kitchen.id = KitchenId{"cottage"};
        kitchen.name = "Cottage";
        kitchen.cooks = {{.id = CookId{"maren"}, .name = "Maren"}};
        occasion.id = OccasionId{"supper"};
        occasion.name = "Supper";
        occasion.kitchen = kitchen.id;
        occasion.guests = {guest("Ada"), guest("Bea", {Diet::Coeliac}),
                           guest("Dov", {Diet::Vegetarian})};
        occasion.courses = {course("starter", 19), course("main", 20)};
        addDish(0, "tart", {entry("wheat", Portions{2}), entry("free", Portions{1})});
        addDish(1, "lamb", {entry("plain", Portions{2})});
        addDish(1, "squash", {entry("plain", Portions{1})});
        addDish(1, "potatoes", {entry("plain", Portions{3})});
    }

    static Course course(const std::string& id, int hour)
    {
        Course made;
        made.id = CourseId{id};
        made.name = id;
        made.serving = {{2027, 6, 19}, {hour, 0}};
        return made;
    }

    Dish& addDish(std::size_t course, const std::string& recipe, std::vector<MixEntry> mix)
    {
        Dish dish;
        dish.id = DishId{recipe};
        dish.recipe = RecipeId{recipe};
        dish.mix = std::move(mix);
        occasion.courses[course].dishes.push_back(std::move(dish));
        return occasion.courses[course].dishes.back();
    }

    [[nodiscard]] std::map<RecipeId, const Recipe*> table() const
    {
        std::map<RecipeId, const Recipe*> result;
        for (const Recipe& recipe : recipes) {
            result.emplace(recipe.id, &recipe);
        }
        return result;
    }

    [[nodiscard]] std::vector<OccasionFault> faults() const
    {
        return faultsOf(occasion, kitchen, table());
    }

    std::vector<Recipe> recipes;
    Kitchen kitchen;
    Occasion occasion;
};

} // namespace suppertide::test
