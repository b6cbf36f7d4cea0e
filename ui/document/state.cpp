#include "ui/document/state.h"

#include <algorithm>

#include "core/larder/ingredient_book.h"

namespace suppertide::ui {

namespace {

template <typename Key, typename Value>
std::set<Key> differing(const std::map<Key, Value>& before, const std::map<Key, Value>& after)
{
    std::set<Key> keys;
    for (const auto& [key, value] : before) {
        const auto there = after.find(key);
        if (there == after.end() || there->second != value) {
            keys.insert(key);
        }
    }
    for (const auto& [key, value] : after) {
        if (!before.contains(key)) {
            keys.insert(key);
        }
    }
    return keys;
}

void addLines(const RecipePart& part, std::vector<RecipeId>& wanted)
{
    for (const IngredientLine& line : part.lines) {
        if (line.preparation) {
            wanted.push_back(*line.preparation);
        }
    }
}

std::vector<RecipeId> preparationsOf(const Recipe& recipe)
{
    std::vector<RecipeId> wanted;
    addLines(recipe.common, wanted);
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            addLines(method.part, wanted);
        }
    }
    for (const Variant& variant : recipe.variants) {
        addLines(variant.adds, wanted);
    }
    return wanted;
}

/// The recipes that an occasion cooks, with the preparations that these need, and theirs.
std::map<RecipeId, RecipePtr> cookedRecipes(const LibraryState& library, const Occasion& occasion)
{
    std::vector<RecipeId> wanted;
    for (const Course& course : occasion.courses) {
        for (const Dish& dish : course.dishes) {
            wanted.push_back(dish.recipe);
        }
    }
    std::map<RecipeId, RecipePtr> found;
    while (!wanted.empty()) {
        const RecipeId id = wanted.back();
        wanted.pop_back();
        const auto there = library.recipes.find(id);
        if (there == library.recipes.end() || found.contains(id)) {
            continue;
        }
        found.emplace(id, there->second);
        const std::vector<RecipeId> more = preparationsOf(*there->second);
        wanted.insert(wanted.end(), more.begin(), more.end());
    }
    return found;
}

/// A tick on the shopping list plans nothing anew.
bool isOnlyBought(const OccasionPtr& before, const OccasionPtr& after)
{
    return before && after && before->occasion == after->occasion &&
           before->layout == after->layout && before->progress == after->progress;
}

} // namespace

OccasionPtr openOccasion(const LibraryState& library)
{
    if (!library.open) {
        return nullptr;
    }
    const auto there = library.occasions.find(*library.open);
    return there == library.occasions.end() ? nullptr : there->second;
}

KitchenPtr openKitchen(const LibraryState& library)
{
    const OccasionPtr record = openOccasion(library);
    if (!record) {
        return nullptr;
    }
    const auto there = library.kitchens.find(record->occasion.kitchen);
    return there == library.kitchens.end() ? nullptr : there->second;
}

std::optional<PlanInput> planInputOf(const LibraryState& library)
{
    const OccasionPtr record = openOccasion(library);
    KitchenPtr kitchen = openKitchen(library);
    if (!record || !kitchen) {
        return std::nullopt;
    }
    // The record keeps both alive: the two pointers share its ownership.
    PlanInput input{std::shared_ptr<const Occasion>(record, &record->occasion), std::move(kitchen),
                    cookedRecipes(library, record->occasion),
                    std::shared_ptr<const Layout>(record, &record->layout)};
    input.ingredients = ingredientBook(larderOf(library));
    return input;
}

std::map<RecipeId, const Recipe*> recipesOf(const LibraryState& library)
{
    std::map<RecipeId, const Recipe*> recipes;
    for (const auto& [id, recipe] : library.recipes) {
        recipes.emplace_hint(recipes.end(), id, recipe.get());
    }
    return recipes;
}

ChangeSet changesBetween(const LibraryState& before, const LibraryState& after)
{
    ChangeSet changes{differing(before.recipes, after.recipes),
                      differing(before.kitchens, after.kitchens),
                      differing(before.occasions, after.occasions),
                      before.open != after.open,
                      false,
                      false,
                      before.larder != after.larder};
    changes.isOccasionChanged =
        changes.isOtherOccasion || (after.open && changes.occasions.contains(*after.open));
    // What ingredients contain decides who may eat what, and what is kept clear of what.
    changes.isPlanTouched =
        changes.isOtherOccasion ||
        (changes.isOccasionChanged && !isOnlyBought(openOccasion(before), openOccasion(after))) ||
        (changes.isLarderChanged && (larderOf(before).ingredients != larderOf(after).ingredients ||
                                     larderOf(before).labels != larderOf(after).labels));
    const OccasionPtr record = openOccasion(after);
    if (record && !changes.isPlanTouched) {
        const auto cooked = cookedRecipes(after, record->occasion);
        changes.isPlanTouched =
            changes.kitchens.contains(record->occasion.kitchen) ||
            std::any_of(changes.recipes.begin(), changes.recipes.end(), [&](const RecipeId& id) {
                return cooked.contains(id) || !after.recipes.contains(id);
            });
    }
    return changes;
}

} // namespace suppertide::ui
