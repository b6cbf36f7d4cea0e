#include "core/recipe/faults_of_preparations.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace suppertide {

namespace {

using RecipeMap = std::map<RecipeId, const Recipe*>;

/// Calls body(line) for each line of the recipe, whichever variant and method it belongs to.
template <typename Body>
void forEachLine(const Recipe& recipe, const Body& body)
{
    const auto visit = [&body](const RecipePart& part) { std::ranges::for_each(part.lines, body); };
    visit(recipe.common);
    for (const Variant& variant : recipe.variants) {
        visit(variant.adds);
    }
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            visit(method.part);
        }
    }
}

/// Whether the recipe is made from `wanted`, directly or by way of other preparations.
bool needs(const Recipe& recipe, const RecipeId& wanted, const RecipeMap& recipes)
{
    std::set<RecipeId> seen;
    std::vector<const Recipe*> open{&recipe};
    bool isFound = false;
    while (!open.empty() && !isFound) {
        const Recipe* next = open.back();
        open.pop_back();
        forEachLine(*next, [&](const IngredientLine& line) {
            if (!line.preparation || !seen.insert(*line.preparation).second) {
                return;
            }
            isFound = isFound || *line.preparation == wanted;
            if (const auto made = recipes.find(*line.preparation); made != recipes.end()) {
                open.push_back(made->second);
            }
        });
    }
    return isFound;
}

} // namespace

std::vector<RecipeFault> faultsOfPreparations(const Recipe& recipe, const RecipeMap& recipes)
{
    std::vector<RecipeFault> faults;
    std::set<RecipeId> seen;
    forEachLine(recipe, [&](const IngredientLine& line) {
        // A recipe made from itself is told by faultsOf.
        if (!line.preparation || *line.preparation == recipe.id ||
            !seen.insert(*line.preparation).second) {
            return;
        }
        const std::string place =
            "line “" + (line.ingredient.empty() ? line.id.text() : line.ingredient) + "”";
        const auto made = recipes.find(*line.preparation);
        if (made == recipes.end()) {
            faults.push_back({place, fmt::format("Its recipe “{}” is not in the library. Import "
                                                 "it, or take the line away.",
                                                 line.preparation->text())});
        } else if (needs(*made->second, recipe.id, recipes)) {
            faults.push_back(
                {place, fmt::format("“{}” is made from “{}” in turn: a circle, and neither can "
                                    "be made first. Take one of the two lines away.",
                                    made->second->name, recipe.name)});
        }
    });
    return faults;
}

} // namespace suppertide
