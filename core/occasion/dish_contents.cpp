// What a dish contains with all that goes into it: preparations, and by-products of other dishes.
#include <algorithm>
#include <set>

#include "core/occasion/occasion.h"
#include "core/recipe/contents.h"

namespace suppertide {

namespace {

using Recipes = std::map<RecipeId, const Recipe*>;

bool leaves(const Step& step, const std::string& name)
{
    return std::ranges::find(step.leaves, name, &ByProduct::name) != step.leaves.end();
}

/// In any variant, by any method.
bool mayLeave(const Recipe& recipe, const std::string& name)
{
    const auto inPart = [&name](const RecipePart& part) {
        return std::ranges::any_of(part.steps,
                                   [&name](const Step& step) { return leaves(step, name); });
    };
    return inPart(recipe.common) || std::ranges::any_of(recipe.variants, inPart, &Variant::adds) ||
           std::ranges::any_of(recipe.methods, [&inPart](const MethodChoice& choice) {
               return std::ranges::any_of(choice.methods, inPart, &Method::part);
           });
}

/// Adds up a variant with what its lines lead to; each recipe once.
class DishContents
{
public:
    DishContents(const Recipes& recipes, const IngredientBook& ingredients)
        : recipes_(recipes), collector_(ingredients)
    {}

    void add(const Recipe& recipe, const VariantId& variant)
    {
        const auto resolved = resolve(recipe, variant);
        if (!resolved || !visited_.insert(recipe.id).second) {
            return;
        }
        add(resolved->part);
        for (const MethodChoice& choice : resolved->methods) {
            for (const Method& method : choice.methods) {
                add(method.part);
            }
        }
    }

    [[nodiscard]] Contents contents() const { return collector_.contents(); }

private:
    void add(const RecipePart& part)
    {
        for (const IngredientLine& line : part.lines) {
            add(line);
        }
    }

    void add(const IngredientLine& line)
    {
        collector_.add(line);
        if (line.byProduct && leavings_.insert(*line.byProduct).second) {
            addByProduct(*line.byProduct);
        }
        if (!line.preparation) {
            return;
        }
        const auto made = recipes_.find(*line.preparation);
        if (made != recipes_.end() && !made->second->variants.empty()) {
            add(*made->second, made->second->variants.front().id);
        } else {
            collector_.addUnknown(line.ingredient.empty() ? line.preparation->text()
                                                          : line.ingredient);
        }
    }

    /// What is left by a step comes from what it took; if it took nothing itself (oil is strained
    /// off), from what the steps before it took.
    void addByProduct(const std::string& name)
    {
        for (const auto& [id, recipe] : recipes_) {
            if (!mayLeave(*recipe, name)) {
                continue; // most: carrying their variants through would be for nothing
            }
            for (const Variant& variant : recipe->variants) {
                if (const auto resolved = resolve(*recipe, variant.id)) {
                    addLeft(resolved->part, name);
                    for (const MethodChoice& choice : resolved->methods) {
                        for (const Method& method : choice.methods) {
                            addLeft(method.part, name);
                        }
                    }
                }
            }
        }
    }

    void addLeft(const RecipePart& part, const std::string& name)
    {
        for (const Step& step : part.steps) {
            if (leaves(step, name)) {
                std::set<StepId> seen;
                addTaken(part, step, seen);
            }
        }
    }

    void addTaken(const RecipePart& part, const Step& step, std::set<StepId>& seen)
    {
        if (!seen.insert(step.id).second) {
            return;
        }
        for (const LineId& taken : step.lines) {
            const auto line = std::ranges::find(part.lines, taken, &IngredientLine::id);
            if (line != part.lines.end()) {
                add(*line);
            }
        }
        if (!step.lines.empty()) {
            return;
        }
        for (const StepId& id : step.after) {
            const auto before = std::ranges::find(part.steps, id, &Step::id);
            if (before != part.steps.end()) {
                addTaken(part, *before, seen);
            }
        }
    }

    const Recipes& recipes_;
    ContentsCollector collector_;
    std::set<RecipeId> visited_;
    std::set<std::string> leavings_;
};

} // namespace

Contents contentsOf(const Recipe& recipe, const VariantId& variant, const Recipes& recipes,
                    const IngredientBook& ingredients)
{
    DishContents all(recipes, ingredients);
    all.add(recipe, variant);
    return all.contents();
}

} // namespace suppertide
