// Small recipes for tests: steps in a row, lines, variants.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/recipe/recipe.h"

namespace suppertide::test {

inline Step step(const std::string& id, std::vector<StepId> after = {}, Minutes likely = 10_min)
{
    Step made;
    made.id = StepId{id};
    made.text = "Do " + id;
    made.after = std::move(after);
    made.duration = {likely, likely, likely};
    return made;
}

inline IngredientLine line(const std::string& id, std::vector<Substance> contains = {})
{
    IngredientLine made;
    made.id = LineId{id};
    made.ingredient = id;
    made.amount = {Rational{100}, Unit::Gram};
    made.contains = std::move(contains);
    return made;
}

inline Wait wait(const std::string& id, const std::string& from, const std::string& to)
{
    Wait made;
    made.id = WaitId{id};
    made.text = id;
    made.from = {StepId{from}, StepEdge::End};
    made.to = {StepId{to}, StepEdge::Start};
    return made;
}

inline Variant variant(const std::string& id)
{
    Variant made;
    made.id = VariantId{id};
    made.name = id;
    return made;
}

/// Peel, then slice, then bake; potatoes and nuts; the variants "plain" and "other".
inline Recipe gratin()
{
    Recipe recipe;
    recipe.id = RecipeId{"gratin"};
    recipe.name = "Gratin";
    recipe.common.lines = {line("potatoes"), line("nuts", {Substance::Hazelnut})};
    recipe.common.steps = {step("peel"), step("slice", {StepId{"peel"}}),
                           step("bake", {StepId{"slice"}})};
    recipe.common.steps[0].lines = {LineId{"potatoes"}};
    recipe.common.steps[2].lines = {LineId{"nuts"}};
    recipe.common.waits = {wait("stands", "peel", "slice"), wait("rests", "slice", "bake")};
    recipe.variants = {variant("plain"), variant("other")};
    return recipe;
}

inline const Step* findStep(const RecipePart& part, const std::string& id)
{
    for (const Step& each : part.steps) {
        if (each.id.text() == id) {
            return &each;
        }
    }
    return nullptr;
}

} // namespace suppertide::test
