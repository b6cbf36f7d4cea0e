#include "tests/support/print/sheet_builder.h"

#include <algorithm>
#include <utility>

namespace suppertide::ui::test {

SheetBuilder::SheetBuilder(const CivilDate& first)
{
    const TimeZone zone = TimeZone::find("Europe/London").value();
    formulation_.calendar = {zone.instant({first, {0, 0}}), zone};
}

PlanTime SheetBuilder::at(const On& time) const
{
    return formulation_.calendar.planTime(CivilTime{time.date, {time.hour, time.minute}});
}

CookIndex SheetBuilder::cook(const std::string& name, const std::optional<On>& from)
{
    words.cookNames.push_back(name);
    Cook cook;
    cook.id = name;
    constexpr Minutes week{7 * 24 * 60};
    cook.free = {{from ? at(*from) : planTime(0), planTime(0) + week}};
    formulation_.cookNames.push_back(name);
    return formulation_.problem.cooks.push_back(std::move(cook));
}

OvenIndex SheetBuilder::oven(const std::string& name, std::int64_t shelves, int maxC)
{
    words.ovenNames.push_back(name);
    formulation_.ovenNames.push_back(name);
    programs_.emplace_back();
    Oven oven;
    oven.id = name;
    oven.shelves = shelves;
    oven.minC = 50;
    oven.maxC = maxC;
    oven.startC = 20;
    oven.ambientC = 20;
    oven.heatMilliCPerMin = 10'000;
    oven.coolMilliCPerMin = 3'000;
    return formulation_.problem.ovens.push_back(std::move(oven));
}

DishId SheetBuilder::dish(const std::string& id, const std::string& name, int course)
{
    const DishId dish{id};
    words.dishes.push_back(dish);
    dishes_[dish] = {name, CourseId{"course-" + std::to_string(course)}};
    return dish;
}

TaskIndex SheetBuilder::addTask(PlanTime start, Minutes length, const std::optional<DishId>& dish)
{
    Task task;
    task.id = "task-" + std::to_string(formulation_.tasks.size());
    task.duration = length;
    TaskSource source;
    source.dish = dish;
    if (dish) {
        source.course = dishes_.at(*dish).course;
        source.dishName = dishes_.at(*dish).name;
    }
    formulation_.tasks.push_back(std::move(source));
    const TaskIndex index = formulation_.problem.tasks.push_back(std::move(task));
    starts_[index] = start;
    return index;
}

SheetHour& SheetBuilder::hourOf(PlanTime time)
{
    CivilTime civil = formulation_.calendar.civil(time);
    civil.clock.minute = 0;
    const PlanTime start = formulation_.calendar.planTime(civil);
    SheetHour& hour = hours_[start];
    hour.start = start;
    hour.civil = civil;
    return hour;
}

void SheetBuilder::step(const On& start, Minutes length, Attention attention,
                        const std::vector<std::string>& cooks, const std::optional<DishId>& dish,
                        const StepWords& text)
{
    const PlanTime from = at(start);
    hourOf(from).steps.push_back({addTask(from, length, dish), from, from + length, text.deed,
                                  text.detail, text.after, text.amounts, cooks, dish, attention});
}

void SheetBuilder::bake(OvenIndex oven, const On& from, const On& to, const DishId& dish)
{
    bakings_.push_back({addTask(at(from), at(to) - at(from), dish), oven, dish});
}

void SheetBuilder::turn(OvenIndex oven, const On& when, std::optional<int> setC,
                        const std::string& text)
{
    const PlanTime time = at(when);
    programs_[oven.value()].push_back({time, setC});
    hourOf(time).ovenTurns.push_back({oven, time, setC, text});
}

void SheetBuilder::note(const On& when, const std::string& text,
                        const std::vector<std::string>& cooks, SheetNoteKind kind)
{
    hourOf(at(when)).notes.push_back({kind, at(when), text, cooks});
}

void SheetBuilder::fetch(const On& when, const std::string& text,
                         const std::vector<std::string>& cooks)
{
    hourOf(at(when)).fetches.push_back({at(when), text, cooks});
}

void SheetBuilder::serving(int number, const On& when, const std::string& text,
                           const std::vector<std::string>& helpings)
{
    hourOf(at(when)).servings.push_back(
        {number, CourseId{"course-" + std::to_string(number)}, at(when), text, helpings});
}

void SheetBuilder::table(CookIndex cook, const On& from, const On& to)
{
    table_.push_back({cook, {at(from), at(to)}});
}

PerHourPlan SheetBuilder::build() const
{
    auto formulation = std::make_shared<Formulation>(formulation_);
    for (const Baking& baking : bakings_) {
        OvenDemand demand;
        demand.from = {baking.task, Edge::Start};
        demand.to = {baking.task, Edge::End};
        formulation->problem.ovenDemands.push_back(demand);
        DemandSource source;
        source.dish = baking.dish;
        formulation->ovenDemands.push_back(std::move(source));
    }
    auto plan = std::make_shared<Plan>();
    plan->schedule = emptyScheduleFor(formulation->problem);
    for (const auto& [task, start] : starts_) {
        plan->schedule.starts[task] = start;
    }
    for (std::size_t i = 0; i < bakings_.size(); ++i) {
        plan->schedule.ovens[OvenDemandIndex{i}] = bakings_[i].oven;
    }
    for (std::size_t i = 0; i < programs_.size(); ++i) {
        plan->schedule.programs[OvenIndex{i}] = programs_[i];
    }
    plan->formulation = std::move(formulation);

    PerHourPlan sheet = words;
    sheet.plan = std::move(plan);
    sheet.table = table_;
    for (const auto& [start, hour] : hours_) {
        if (sheet.days.empty() || sheet.days.back().date != hour.civil.date) {
            sheet.days.push_back({hour.civil.date, dayText(hour.civil.date), {}});
        }
        SheetHour sorted = hour;
        std::stable_sort(sorted.steps.begin(), sorted.steps.end(),
                         [](const SheetStep& a, const SheetStep& b) { return a.start < b.start; });
        sheet.days.back().hours.push_back(std::move(sorted));
    }
    return sheet;
}

} // namespace suppertide::ui::test
