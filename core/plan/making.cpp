#include "core/plan/making.h"

#include <algorithm>
#include <iterator>
#include <set>

#include "core/base/contracts.h"
#include "core/plan/other_mould.h"

namespace suppertide {

namespace {

const Guest* findGuest(const Occasion& occasion, const GuestId& id)
{
    const auto guest = std::ranges::find(occasion.guests, id, &Guest::id);
    return guest == occasion.guests.end() ? nullptr : &*guest;
}

/// Those to be kept clear of something come before those that contain it; else as in the mix.
std::vector<MakingVariant> clearOnesFirst(const Occasion& occasion,
                                          std::vector<MakingVariant> variants)
{
    std::vector<MakingVariant> ordered;
    while (!variants.empty()) {
        const auto mayBeNext = [&](const MakingVariant& next) {
            return std::ranges::none_of(variants, [&](const MakingVariant& other) {
                return mustBeClearOf(occasion, other, next) &&
                       !mustBeClearOf(occasion, next, other);
            });
        };
        auto next = std::ranges::find_if(variants, mayBeNext);
        next = next == variants.end() ? variants.begin() : next;
        ordered.push_back(std::move(*next));
        variants.erase(next);
    }
    return ordered;
}

/// The portions of the variants in one row.
void lineUp(std::vector<MakingVariant>& variants)
{
    Portions from;
    for (MakingVariant& variant : variants) {
        const Portions size = variant.portions.to - variant.portions.from;
        variant.portions = {from, from + size};
        from = from + size;
    }
}

std::vector<MakingVariant> variantsOf(const Dish& dish, const Recipe& recipe,
                                      const std::vector<Helping>& helpings,
                                      const RecipeTable& recipes, const IngredientBook& ingredients)
{
    std::vector<MakingVariant> variants;
    for (const MixEntry& entry : dish.mix) {
        if (entry.portions <= Portions{0}) {
            continue;
        }
        const auto known = std::ranges::find(variants, entry.variant, &MakingVariant::id);
        if (known != variants.end()) {
            known->portions.to = known->portions.to + entry.portions;
            continue;
        }
        auto resolved = resolve(recipe, entry.variant);
        if (!resolved) {
            continue; // a fault of the occasion, told by faultsOf
        }
        MakingVariant variant;
        variant.id = entry.variant;
        variant.name = std::ranges::find(recipe.variants, entry.variant, &Variant::id)->name;
        variant.portions = {Portions{0}, entry.portions};
        variant.recipe = *std::move(resolved);
        if (dish.mould) {
            putIntoMould(variant.recipe, *dish.mould);
        }
        variant.contains = contentsOf(recipe, entry.variant, recipes, ingredients).contains;
        for (const Helping& helping : helpings) {
            if (helping.dish == dish.id && helping.variant == entry.variant) {
                variant.eaters.push_back(helping.guest);
            }
        }
        variants.push_back(std::move(variant));
    }
    return variants;
}

Making dishMaking(const PlanInput& input, const Course& course, const Dish& dish,
                  const std::vector<Helping>& helpings, const RecipeTable& recipes)
{
    Making making;
    making.recipe = recipes.at(dish.recipe);
    making.key = dish.id.text();
    making.name = making.recipe->name;
    making.course = &course;
    making.dish = &dish;
    making.cook = dish.cook;
    making.variants = clearOnesFirst(
        *input.occasion, variantsOf(dish, *making.recipe, helpings, recipes, input.ingredients));
    lineUp(making.variants);
    narrowMethods(making, dish.methods, *input.layout);
    if (dish.mould && !dish.mould->keepsAmounts) {
        making.mould = dish.mould->mould;
    }
    tellStepsApart(making, *input.kitchen);
    return making;
}

/// Preparations that `recipe` needs, and those that they need, each after all that use it.
void visitPreparations(const Recipe& recipe, const VariantId& variant, const RecipeTable& recipes,
                       std::set<RecipeId>& visited, std::vector<const Recipe*>& usedFirst)
{
    for (const RecipeId& id : preparationsOf(recipe, variant)) {
        const auto found = recipes.find(id);
        if (found == recipes.end() || found->second->variants.empty() ||
            !visited.insert(id).second) {
            continue;
        }
        visitPreparations(*found->second, found->second->variants.front().id, recipes, visited,
                          usedFirst);
        usedFirst.push_back(found->second);
    }
}

} // namespace

RecipeTable recipeTable(const PlanInput& input)
{
    RecipeTable table;
    for (const auto& [id, recipe] : input.recipes) {
        table.emplace(id, recipe.get());
    }
    return table;
}

bool mustBeClearOf(const Occasion& occasion, const MakingVariant& one, const MakingVariant& other)
{
    std::vector<Substance> added;
    std::ranges::set_difference(other.contains, one.contains, std::back_inserter(added));
    if (one.eaters.empty()) {
        return !added.empty();
    }
    return std::ranges::any_of(one.eaters, [&](const GuestId& id) {
        const Guest* guest = findGuest(occasion, id);
        if (guest == nullptr) {
            return false;
        }
        const std::vector<Substance> avoided = avoidedBy(*guest);
        return std::ranges::any_of(added, [&](Substance substance) {
            return std::ranges::find(avoided, substance) != avoided.end();
        });
    });
}

void narrowMethods(Making& making, const std::map<MethodChoiceId, MethodId>& taken,
                   const Layout& layout)
{
    const auto isTaken = [&](const MethodChoice& choice) -> std::optional<MethodId> {
        if (const auto said = taken.find(choice.id); said != taken.end()) {
            return said->second;
        }
        const std::string id = making.key + "/" + choice.id.text();
        const auto laid = layout.options.find(id);
        if (layout.pinned.contains(id) && laid != layout.options.end()) {
            return MethodId{laid->second};
        }
        return std::nullopt;
    };
    for (MakingVariant& variant : making.variants) {
        for (MethodChoice& choice : variant.recipe.methods) {
            const auto only = isTaken(choice);
            if (only &&
                std::ranges::find(choice.methods, *only, &Method::id) != choice.methods.end()) {
                std::erase_if(choice.methods,
                              [&](const Method& method) { return method.id != *only; });
            }
        }
    }
    if (making.variants.empty()) {
        return;
    }
    for (const MethodChoice& choice : making.variants.front().recipe.methods) {
        if (choice.methods.size() > 1) {
            making.choices.push_back(choice);
        }
    }
}

std::vector<Making> makingsOf(const PlanInput& input)
{
    const RecipeTable recipes = recipeTable(input);
    std::vector<Making> makings;
    std::vector<const Recipe*> usedFirst;
    std::set<RecipeId> visited;
    for (const Course& course : input.occasion->courses) {
        const std::vector<Helping> helpings =
            helpingsOf(*input.occasion, course, recipes, input.ingredients);
        for (const Dish& dish : course.dishes) {
            if (portionsOf(dish) <= Portions{0}) {
                continue;
            }
            makings.push_back(dishMaking(input, course, dish, helpings, recipes));
            for (const MakingVariant& variant : makings.back().variants) {
                visitPreparations(*makings.back().recipe, variant.id, recipes, visited, usedFirst);
            }
        }
    }
    std::ranges::reverse(usedFirst);
    for (const Recipe* recipe : usedFirst) {
        if (auto making = preparationFor(*recipe, makings, input)) {
            makings.push_back(*std::move(making));
        }
    }
    return makings;
}

} // namespace suppertide
