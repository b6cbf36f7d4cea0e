// SheetParts: what the per-hour plan is put together from: steps, knob turns, what goes into and
// out of the cold, servings and notes. For core/sheet only.
#pragma once

#include <map>
#include <vector>

#include "core/problem/timetable.h"
#include "core/sheet/per_hour_plan.h"

namespace suppertide {

struct SheetContext
{
    const Plan& plan;
    const Formulation& formulation;
    const Occasion& occasion;
    std::map<RecipeId, const Recipe*> recipes;
    const IngredientBook& ingredients;
    Timetable timetable;
    ReadingStyle style;

    SheetContext(const Plan& plan, const PlanInput& input, const ReadingStyle& style);

    /// "19:30", with the day where it is not that of `relativeTo`.
    [[nodiscard]] std::string clock(PlanTime time, PlanTime relativeTo) const;
    [[nodiscard]] std::vector<std::string> cooksOf(TaskIndex task) const;
};

/// "Roast roots" → "roast roots": a name in the middle of a line.
[[nodiscard]] std::string plainName(const std::string& name);
/// "mushroom tartlets, gluten-free case"; without the variant where there is only one.
[[nodiscard]] std::string portionName(const Recipe& recipe, const VariantId& variant);

/// Each in order of time.
[[nodiscard]] std::vector<SheetStep> sheetSteps(const SheetContext& context);
[[nodiscard]] std::vector<SheetOvenTurn> sheetOvenTurns(const SheetContext& context);
[[nodiscard]] std::vector<SheetFetch> sheetFetches(const SheetContext& context);
[[nodiscard]] std::vector<SheetServing> sheetServings(const SheetContext& context);
[[nodiscard]] std::vector<SheetNote> sheetNotes(const SheetContext& context,
                                                const std::vector<SheetStep>& steps);
[[nodiscard]] std::vector<SheetTable> sheetTable(const SheetContext& context);

} // namespace suppertide
