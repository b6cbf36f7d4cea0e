#include "core/sheet/per_hour_plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "core/plan/food_safety.h"
#include "core/plan/fridge_order.h"
#include "core/sheet/sheet_parts.h"
#include "core/wording/phrases.h"

namespace suppertide {

namespace {

/// Days and hours are made as things fall into them; a clock hour that occurs twice in the night of
/// a change of clocks is two rows.
class HourGrid
{
public:
    explicit HourGrid(const PlanCalendar& calendar) : calendar_(calendar) {}

    SheetHour& at(PlanTime time)
    {
        const CivilTime civil = calendar_.civil(time);
        const PlanTime start = time - Minutes{civil.clock.minute};
        SheetHour& hour = hours_[start];
        hour.start = start;
        hour.civil = {civil.date, {civil.clock.hour, 0}};
        return hour;
    }

    [[nodiscard]] std::vector<SheetDay> days() const
    {
        std::vector<SheetDay> result;
        for (const auto& [start, hour] : hours_) {
            if (result.empty() || result.back().date != hour.civil.date) {
                result.push_back({hour.civil.date, dayText(hour.civil.date), {}});
            }
            result.back().hours.push_back(hour);
        }
        return result;
    }

private:
    const PlanCalendar& calendar_;
    std::map<PlanTime, SheetHour> hours_;
};

std::vector<SheetDay> daysOf(const SheetContext& context)
{
    HourGrid grid(context.formulation.calendar);
    const std::vector<SheetStep> steps = sheetSteps(context);
    for (const SheetStep& step : steps) {
        grid.at(step.start).steps.push_back(step);
    }
    for (const SheetNote& note : sheetNotes(context, steps)) {
        grid.at(note.at).notes.push_back(note);
    }
    for (const SheetOvenTurn& turn : sheetOvenTurns(context)) {
        grid.at(turn.at).ovenTurns.push_back(turn);
    }
    for (const SheetFetch& fetch : sheetFetches(context)) {
        grid.at(fetch.at).fetches.push_back(fetch);
    }
    for (const SheetServing& serving : sheetServings(context)) {
        grid.at(serving.at).servings.push_back(serving);
    }
    return grid.days();
}

/// "Saturday 19 June, 15:30 to 21:20, 8 at table": from the first deed of the serving day to the
/// last serving.
std::string subtitleOf(const SheetContext& context, const std::vector<SheetDay>& days)
{
    if (context.occasion.courses.empty()) {
        return {};
    }
    const CivilDate date = context.occasion.courses.front().serving.date;
    std::optional<PlanTime> first;
    std::optional<PlanTime> last;
    for (const SheetDay& day : days) {
        for (const SheetHour& hour : day.hours) {
            if (day.date == date && !hour.steps.empty()) {
                first =
                    std::min(first.value_or(hour.steps.front().start), hour.steps.front().start);
            }
            for (const SheetServing& serving : hour.servings) {
                last = std::max(last.value_or(serving.at), serving.at);
            }
        }
    }
    std::string text = dayText(date);
    if (first && last) {
        text +=
            fmt::format(", {} to {}", context.clock(*first, *first), context.clock(*last, *first));
    }
    return text + fmt::format(", {} at table", context.occasion.guests.size());
}

std::vector<DishId> dishesOf(const Occasion& occasion)
{
    std::vector<DishId> result;
    for (const Course& course : occasion.courses) {
        for (const Dish& dish : course.dishes) {
            if (portionsOf(dish) > Portions{0}) {
                result.push_back(dish.id);
            }
        }
    }
    return result;
}

/// Which raw food stands in the fridge beside food that is eaten as it is.
void addFridgeOrder(const SheetContext& context, PerHourPlan& sheet)
{
    std::vector<std::string> raw;
    std::vector<std::string> ready;
    for (const RawBesideReady& pair : rawBesideReady(context.formulation, context.plan.schedule)) {
        raw.push_back(theThing(context.formulation.foods[pair.raw].name));
        ready.push_back(theThing(context.formulation.foods[pair.ready].name));
    }
    if (!raw.empty()) {
        sheet.cautions.push_back(fmt::format(
            "In the fridge keep {}, raw, covered and below {}: they are there at one time.",
            listed(raw), listed(ready)));
    }
}

/// Silence would read as if no rule were broken.
void addNotJudged(const SheetContext& context, const PlanInput& input, PerHourPlan& sheet)
{
    FoodSafety safety(context.formulation, input);
    safety.update(context.plan.schedule);
    for (const FoodIndex food : context.formulation.foods.indices()) {
        if (const auto why = safety.notJudged(food)) {
            sheet.cautions.push_back(
                fmt::format("{} cannot be judged by the rules of food safety: {}",
                            capitalised(theThing(context.formulation.foods[food].name)), *why));
        }
    }
}

} // namespace

PerHourPlan perHourPlan(const PlanPtr& plan, const PlanInput& input, const ReadingStyle& style)
{
    expects(plan && plan->formulation, "a plan to print");
    const SheetContext context(*plan, input, style);
    PerHourPlan sheet;
    sheet.plan = plan;
    sheet.style = style;
    sheet.title = input.occasion->name;
    sheet.cookNames = plan->formulation->cookNames.items();
    sheet.ovenNames = plan->formulation->ovenNames.items();
    sheet.days = daysOf(context);
    sheet.subtitle = subtitleOf(context, sheet.days);
    sheet.table = sheetTable(context);
    sheet.dishes = dishesOf(*input.occasion);
    for (const Clash& clash : plan->clashes) {
        sheet.clashes.push_back(sentence(*plan, *input.occasion, clash, style));
    }
    sheet.cautions = {
        "Check with a thermometer that food is hot enough; cool it quickly and keep it cold. Local "
        "food-safety codes, and the advice of those licensed to give it, prevail over this sheet.",
        "What dishes contain is only as sure as what their recipes say: read the labels."};
    addFridgeOrder(context, sheet);
    addNotJudged(context, input, sheet);
    return sheet;
}

} // namespace suppertide
