// A small evening put together by hand: tasks with their food, an oven, two cooks, a fridge, so
// that what reads plans can be tested without making one. Minute 0 is midnight before 18 June 2027
// in London; `at` and `eve` give minutes of the evening's day and of the day before.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/plan/plan.h"

namespace suppertide::test {

/// A minute of Saturday 19 June.
constexpr PlanTime at(int hour, int minute = 0)
{
    return planTime((24 + hour) * 60 + minute);
}

/// A minute of Friday 18 June.
constexpr PlanTime eve(int hour, int minute = 0)
{
    return planTime(hour * 60 + minute);
}

struct TaskPlan
{
    std::string dish;
    std::string text;
    PlanTime start;
    int minutes = 10;
    Attention attention = handsOn;
    std::vector<std::size_t> cooks = {};
};

class SmallEvening
{
public:
    SmallEvening()
    {
        occasion.id = OccasionId{"supper"};
        occasion.name = "Midsummer supper";
        occasion.guests = {{GuestId{"ada"}, "Ada", {}, {}},
                           {GuestId{"bea"}, "Bea", {Diet::Coeliac}, {}},
                           {GuestId{"fay"}, "Fay", {}, {Substance::Almond}}};
        formulation.calendar.zone = *TimeZone::find(occasion.zone);
        formulation.calendar.origin =
            formulation.calendar.zone.instant(CivilTime{{2027, 6, 18}, {0, 0}});
        formulation.problem.horizon = planTime(2 * 24 * 60);
        for (const char* name : {"Maren", "Jory"}) {
            Cook cook;
            cook.id = name;
            cook.free = {interval(0, 2 * 24 * 60)};
            formulation.problem.cooks.push_back(cook);
            formulation.cookNames.push_back(name);
        }
        addOven("Oven");
    }

    OvenIndex addOven(const std::string& name)
    {
        Oven oven;
        oven.id = name;
        oven.shelves = 2;
        oven.minC = 50;
        oven.maxC = 250;
        oven.startC = 20;
        oven.ambientC = 20;
        oven.heatMilliCPerMin = 10'000;
        oven.coolMilliCPerMin = 3'000;
        formulation.ovenNames.push_back(name);
        schedule.programs.push_back({});
        return formulation.problem.ovens.push_back(oven);
    }

    /// The task's id is its text.
    TaskIndex add(const TaskPlan& plan, TaskRole role = TaskRole::Step)
    {
        Task task;
        task.id = plan.text;
        task.duration = Minutes{plan.minutes};
        task.window = {planTime(0), formulation.problem.horizon};
        if (plan.attention > unattended) {
            task.hands = Hands{plan.attention, 1, {}};
        }
        TaskSource source;
        source.role = role;
        source.dishName = plan.dish;
        if (!plan.dish.empty()) {
            source.dish = DishId{plan.dish};
        }
        source.text = plan.text;
        source.portions = Portions{8};
        formulation.tasks.push_back(source);
        std::vector<CookIndex> cooks;
        for (const std::size_t cook : plan.cooks) {
            cooks.emplace_back(cook);
        }
        schedule.cooks.push_back(cooks);
        schedule.starts.push_back(plan.start);
        formulation.taskById.emplace(task.id, TaskIndex{formulation.problem.tasks.size()});
        return formulation.problem.tasks.push_back(task);
    }

    LagIndex tie(TaskPoint from, TaskPoint to, LagSource source)
    {
        Lag lag;
        lag.id = "lag-" + std::to_string(formulation.lags.size());
        lag.from = from;
        lag.to = to;
        lag.min = source.least;
        lag.max = source.most;
        formulation.problem.lags.push_back(lag);
        return formulation.lags.push_back(std::move(source));
    }

    OvenDemandIndex bake(TaskIndex task, int celsius, OvenIndex oven = OvenIndex{0})
    {
        OvenDemand demand;
        demand.id = "bake-" + formulation.problem.tasks[task].id;
        demand.from = {task, Edge::Start};
        demand.to = {task, Edge::End};
        demand.acceptLow = celsius - 10;
        demand.acceptHigh = celsius + 10;
        demand.prefer = celsius;
        DemandSource source;
        source.dishName = formulation.tasks[task].dishName;
        source.dish = formulation.tasks[task].dish;
        source.thing = "oven";
        formulation.ovenDemands.push_back(source);
        schedule.ovens.push_back(oven);
        return formulation.problem.ovenDemands.push_back(demand);
    }

    /// Room in a count, from one point to another.
    DemandIndex hold(CountIndex count, TaskPoint from, TaskPoint to, std::int64_t amount)
    {
        Demand demand;
        demand.id = "hold-" + std::to_string(formulation.demands.size());
        demand.from = from;
        demand.to = to;
        demand.count = count;
        demand.amount = amount;
        DemandSource source;
        source.dish = formulation.tasks[from.task].dish;
        source.dishName = formulation.tasks[from.task].dishName;
        source.thing = formulation.counts[count].name;
        source.isKeep = true;
        formulation.demands.push_back(source);
        schedule.units.push_back(std::nullopt);
        return formulation.problem.demands.push_back(demand);
    }

    CountIndex addCold(const std::string& name, ResourceKind kind, std::int64_t tenthsOfALitre)
    {
        formulation.counts.push_back({kind, name, {}, 10});
        return formulation.problem.counts.push_back({name, tenthsOfALitre});
    }

    PoolIndex addPool(const std::string& name, ResourceKind kind, std::size_t units)
    {
        Pool pool;
        pool.id = name;
        ResourceSource source{kind, name, {}, 1};
        for (std::size_t unit = 0; unit < units; ++unit) {
            pool.units.push_back({name + std::to_string(unit), 0});
            source.unitNames.push_back(name + " " + std::to_string(unit + 1));
        }
        formulation.pools.push_back(source);
        return formulation.problem.pools.push_back(pool);
    }

    CourseId serve(const std::string& name, PlanTime when)
    {
        const CourseId id{name};
        Course course;
        course.id = id;
        course.name = name;
        course.serving = formulation.calendar.civil(when);
        occasion.courses.push_back(course);
        const TaskIndex event = add({"", "Serve " + name, when, 0, unattended}, TaskRole::Serving);
        formulation.tasks[event].course = id;
        formulation.servings.emplace(id, event);
        return id;
    }

    [[nodiscard]] PlanPtr plan(std::vector<Clash> clashes = {}) const
    {
        Plan plan;
        plan.formulation = std::make_shared<const Formulation>(formulation);
        plan.schedule = schedule;
        plan.clashes = std::move(clashes);
        return std::make_shared<const Plan>(std::move(plan));
    }

    Formulation formulation;
    Schedule schedule;
    Occasion occasion;
};

} // namespace suppertide::test
