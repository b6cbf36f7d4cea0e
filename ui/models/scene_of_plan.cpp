#include "ui/models/scene_of_plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "ui/models/scene_parts.h"

namespace suppertide::ui {

namespace {

constexpr std::array<const char*, 7> shortDays{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};

std::vector<SceneDish> dishesOf(const SceneSource& source)
{
    std::vector<SceneDish> dishes;
    for (const Course& course : source.occasion->courses) {
        for (const Dish& dish : course.dishes) {
            dishes.push_back({source.looks.find(dish.id).value_or(0), {}});
        }
    }
    return dishes;
}

/// Dishes stand in the order of the courses, also those that nothing is cooked of.
std::vector<DishId> dishOrder(const Occasion& occasion)
{
    std::vector<DishId> order;
    for (const Course& course : occasion.courses) {
        for (const Dish& dish : course.dishes) {
            order.push_back(dish.id);
        }
    }
    return order;
}

void nameDishes(const SceneSource& source, std::vector<SceneDish>& dishes)
{
    const std::vector<DishId> order = dishOrder(*source.occasion);
    for (const TaskSource& task : source.plan->formulation->tasks) {
        if (task.dish) {
            const auto at = std::find(order.begin(), order.end(), *task.dish);
            if (at != order.end()) {
                dishes[static_cast<std::size_t>(at - order.begin())].name = task.dishName;
            }
        }
    }
}

/// Ticks on what was said to be done; on the night, how late what should be done is.
void addProgress(const SceneSource& source, Scene& scene)
{
    if (!source.progress || source.progress->empty() || !scene.now) {
        return;
    }
    const Formulation& formulation = *source.plan->formulation;
    for (SceneBlock& block : scene.blocks) {
        const auto task = formulation.taskById.find(block.id);
        const auto said = source.progress->steps.find(block.id);
        const bool isSaid = said != source.progress->steps.end();
        if (task == formulation.taskById.end() ||
            !formulation.problem.tasks[task->second].needsCooks()) {
            continue;
        }
        block.progress.isDone = isSaid && said->second.done.has_value();
        const PlanTime end =
            block.start + block.likely + (isSaid ? said->second.longer : Minutes{0});
        const bool isLeftOut = isSaid && said->second.isLeftOut;
        if (!block.progress.isDone && !isLeftOut && end < *scene.now) {
            block.progress.late = *scene.now - end;
        }
    }
}

} // namespace

std::string inSentence(const std::string& name)
{
    if (name.size() < 2 || std::isupper(static_cast<unsigned char>(name[1])) != 0) {
        return name;
    }
    std::string lower = name;
    lower[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(name[0])));
    return lower;
}

std::optional<std::size_t> dishOf(const Scene& scene, const SceneContext& context,
                                  const std::optional<DishId>& dish)
{
    if (!dish) {
        return std::nullopt;
    }
    const std::vector<DishId> order = dishOrder(*context.source.occasion);
    const auto at = std::find(order.begin(), order.end(), *dish);
    const auto index = static_cast<std::size_t>(at - order.begin());
    return index < scene.dishes.size() ? std::optional(index) : std::nullopt;
}

std::vector<DayHeading> daysOf(const PlanCalendar& calendar, const Interval& horizon)
{
    std::vector<DayHeading> days;
    CivilDate date = calendar.civil(horizon.start).date;
    while (true) {
        const PlanTime from = calendar.planTime(CivilTime{date, {}});
        if (from > horizon.end) {
            return days;
        }
        const auto weekday = static_cast<std::size_t>(weekdayOf(date));
        days.push_back(
            {from, dayText(date), fmt::format("{} {}", shortDays.at(weekday), date.day)});
        date = addDays(date, 1);
    }
}

Scene sceneOfPlan(const SceneSource& source)
{
    expects(source.plan != nullptr, "a plan to show");
    const Plan& plan = *source.plan;
    const TaskPlaces places(plan);
    const SceneContext context{source, plan, *plan.formulation, plan.formulation->problem, places};
    Scene scene;
    scene.isFahrenheit = source.style.fahrenheit;
    scene.calendar = plan.formulation->calendar;
    scene.horizon = {planTime(0), context.problem.horizon};
    scene.days = daysOf(scene.calendar, scene.horizon);
    scene.dishes = dishesOf(source);
    nameDishes(source, scene.dishes);
    scene.lanes = lanesOf(context);
    scene.blocks = blocksOf(context, scene);
    scene.waits = waitsOf(context);
    scene.spans = spansOf(context, scene);
    scene.servings = servingsOf(context);
    addClashes(context, scene);
    if (source.now) {
        const PlanTime now = scene.calendar.planTime(*source.now);
        if (scene.horizon.contains(now)) {
            scene.now = now;
        }
    }
    addProgress(source, scene);
    return scene;
}

Scene sceneOfKitchen(const Occasion& occasion, const Kitchen* kitchen, std::optional<Instant> now)
{
    Scene scene;
    const auto zone = TimeZone::find(occasion.zone);
    scene.calendar.zone = zone ? *zone : TimeZone::utc();
    CivilTime first{};
    if (!occasion.courses.empty()) {
        first = occasion.courses.front().serving;
    } else if (now) {
        first = scene.calendar.zone.civil(*now);
    }
    scene.calendar.origin = scene.calendar.zone.instant({first.date, {}});
    scene.horizon = {planTime(0), planTime(0) + 24_h};
    scene.days = daysOf(scene.calendar, scene.horizon);
    if (kitchen != nullptr) {
        scene.lanes = lanesOfKitchen(*kitchen);
    }
    int number = 0;
    for (const Course& course : occasion.courses) {
        const PlanTime time = scene.calendar.planTime(course.serving);
        scene.horizon.end = std::max(scene.horizon.end, time + 1_h);
        scene.servings.push_back({++number, course.name, time, course.isServingPinned});
    }
    return scene;
}

void addSlack(Scene& scene, const SceneSource& source, TaskIndex task)
{
    const Formulation& formulation = *source.plan->formulation;
    const std::string& id = formulation.problem.tasks[task].id;
    const auto block = std::find_if(scene.blocks.begin(), scene.blocks.end(),
                                    [&](const SceneBlock& shown) { return shown.id == id; });
    if (block == scene.blocks.end()) {
        return;
    }
    const Interval starts = dragRange(formulation, source.plan->schedule, task).startsAlone;
    const Minutes earlier = block->start - starts.start;
    const Minutes later = starts.end - block->start;
    if (earlier < Minutes{0} || later < Minutes{0}) {
        return; // it already stands where it cannot
    }
    block->slack = starts;
    block->slackWords =
        earlier + later == Minutes{0}
            ? std::string("none as long as all else stands")
            : fmt::format("{} earlier, {} later", durationText(earlier), durationText(later));
}

} // namespace suppertide::ui
