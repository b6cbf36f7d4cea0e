#include "core/sheet/sheet_parts.h"

namespace suppertide {

namespace {

std::map<RecipeId, const Recipe*> tableOf(const PlanInput& input)
{
    std::map<RecipeId, const Recipe*> table;
    for (const auto& [id, recipe] : input.recipes) {
        table.emplace(id, recipe.get());
    }
    return table;
}

} // namespace

SheetContext::SheetContext(const Plan& shown, const PlanInput& input, const ReadingStyle& reading)
    : plan(shown), formulation(*shown.formulation), occasion(*input.occasion),
      recipes(tableOf(input)), ingredients(input.ingredients),
      timetable(formulation.problem, shown.schedule), style(reading)
{}

std::string SheetContext::clock(PlanTime time, PlanTime relativeTo) const
{
    return timeText(formulation.calendar, time, formulation.calendar.civil(relativeTo).date, style);
}

std::vector<std::string> SheetContext::cooksOf(TaskIndex task) const
{
    std::vector<std::string> names;
    for (const CookIndex cook : plan.schedule.cooks[task]) {
        names.push_back(formulation.cookNames[cook]);
    }
    return names;
}

} // namespace suppertide
