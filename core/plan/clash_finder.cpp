#include "core/plan/clash_finder.h"

#include <algorithm>
#include <set>

#include "core/plan/presence.h"

namespace suppertide {

namespace {

ClashKind kindOfThing(ResourceKind kind)
{
    switch (kind) {
    case ResourceKind::Oven:
        return ClashKind::Utensils;
    case ResourceKind::Burner:
        return ClashKind::Burner;
    case ResourceKind::Appliance:
        return ClashKind::Appliance;
    case ResourceKind::Vessel:
        return ClashKind::Vessel;
    case ResourceKind::Fridge:
    case ResourceKind::Freezer:
        return ClashKind::ColdSpace;
    case ResourceKind::Watch:
        return ClashKind::Unwatched;
    case ResourceKind::Cook:
        return ClashKind::Hands;
    }
    return ClashKind::Utensils;
}

/// Events that only tie others say nothing to a cook.
bool meansSomething(TaskRole role)
{
    switch (role) {
    case TaskRole::KeepFrom:
    case TaskRole::KeepTo:
    case TaskRole::TakeFrom:
    case TaskRole::Mark:
    case TaskRole::Watch:
    case TaskRole::Target:
        return false;
    case TaskRole::Step:
    case TaskRole::OvenIn:
    case TaskRole::OvenOut:
    case TaskRole::Turn:
    case TaskRole::Washing:
    case TaskRole::Serving:
    case TaskRole::HouseJob:
    case TaskRole::Trip:
    case TaskRole::OvenSetting:
        return true;
    }
    return true;
}

} // namespace

/// The clashes of one schedule as they are found.
class ClashList
{
public:
    ClashList(const ClashFinder& finder, const Schedule& schedule)
        : finder_(finder), formulation_(finder.formulation_), problem_(formulation_.problem),
          schedule_(schedule), times_(problem_, schedule)
    {}

    std::vector<Clash> find(const std::vector<Broken>& broken)
    {
        std::vector<Broken> inOvens;
        for (const Broken& each : broken) {
            if (each.kind == BrokenKind::Oven || each.kind == BrokenKind::Program) {
                inOvens.push_back(each);
            } else {
                add(each);
            }
        }
        for (Clash& clash : ovenClashes(formulation_, schedule_, times_, inOvens)) {
            clashes_.push_back(std::move(clash));
        }
        for (Clash& clash : clashes_) {
            tidyTasks(clash);
        }
        std::vector<Clash> result = mergedClashes(formulation_, std::move(clashes_));
        sortClashes(result);
        return result;
    }

private:
    void add(const Broken& broken)
    {
        switch (broken.kind) {
        case BrokenKind::Choice:
        case BrokenKind::Start:
            put(ClashKind::NothingChosen, broken);
            return;
        case BrokenKind::Window:
            addWindow(broken);
            return;
        case BrokenKind::Lag:
            addLag(broken, finder_.lags_.at(broken.id));
            return;
        case BrokenKind::Count:
            addCount(broken, finder_.counts_.at(broken.id));
            return;
        case BrokenKind::Demand:
            addDemand(broken, finder_.demands_.at(broken.id));
            return;
        case BrokenKind::Unit:
            addUnit(broken);
            return;
        case BrokenKind::Hands:
            addHands(broken);
            return;
        case BrokenKind::Cook:
            put(ClashKind::Hands, broken);
            return;
        case BrokenKind::Shelves:
            put(ClashKind::OvenSpace, broken);
            return;
        case BrokenKind::Program:
        case BrokenKind::Oven:
            return; // ovenClashes
        }
    }

    Clash& put(ClashKind kind, const Broken& broken)
    {
        Clash& clash = clashes_.emplace_back();
        clash.kind = kind;
        clash.severity = severityOf(kind);
        clash.tasks = broken.tasks;
        clash.when = broken.when;
        clash.asked = broken.asked;
        clash.allowed = broken.allowed;
        clash.oven = broken.oven;
        clash.cook = broken.cook;
        clash.broken = {broken.name()};
        if (!broken.tasks.empty()) {
            const TaskSource& first = formulation_.tasks[broken.tasks.front()];
            clash.dish = first.dish;
            clash.course = first.course;
        }
        return clash;
    }

    void addHands(const Broken& broken)
    {
        Clash& clash = put(ClashKind::CookNotFree, broken);
        if (broken.how == BrokenHow::NoSkill) {
            clash.cook.reset(); // whoever has it is not to blame
        }
        if (broken.how == BrokenHow::NotFree && broken.cook && broken.when) {
            const auto away = gapsIn(*broken.when, problem_.cooks[*broken.cook].free);
            if (!away.empty()) {
                clash.when = Interval{away.front().start, away.back().end};
            }
        }
    }

    void addWindow(const Broken& broken)
    {
        const TaskSource& source = formulation_.tasks[broken.tasks.front()];
        const bool isLate = source.role == TaskRole::Serving && broken.how == BrokenHow::TooLate;
        put(isLate ? ClashKind::LateForServing : ClashKind::OutsideWindow, broken);
    }

    void addLag(const Broken& broken, LagIndex index)
    {
        const Lag& lag = problem_.lags[index];
        const LagSource& source = formulation_.lags[index];
        const bool isForbidden = lag.min && lag.max && *lag.min > *lag.max;
        if (isForbidden) {
            put(ClashKind::NothingChosen, broken);
            return;
        }
        const TaskSource& to = formulation_.tasks[lag.to.task];
        const bool isLate = to.role == TaskRole::Serving && broken.how == BrokenHow::BelowMin &&
                            broken.asked < 0 &&
                            formulation_.tasks[lag.from.task].role != TaskRole::Serving;
        if (isLate) {
            Clash& clash = put(ClashKind::LateForServing, broken);
            clash.asked = -broken.asked;
            clash.allowed = 0;
            clash.course = to.course;
            clash.dish = source.dish;
            clash.lag = index;
            clash.tasks = {lag.from.task};
            return;
        }
        Clash& clash = put(broken.how == BrokenHow::BelowMin ? ClashKind::WaitTooShort
                                                             : ClashKind::WaitTooLong,
                           broken);
        clash.lag = wholeWait(index);
        clash.dish = source.dish;
        clash.tasks = {lag.from.task, problem_.lags[*clash.lag].to.task};
    }

    /// A wait with a choice of place has a part for each place; the wait as the cook knows it goes
    /// from step to step.
    [[nodiscard]] LagIndex wholeWait(LagIndex part) const
    {
        const Lag& lag = problem_.lags[part];
        const LagSource& source = formulation_.lags[part];
        const TaskRole role = formulation_.tasks[lag.to.task].role;
        if (!source.wait || role != TaskRole::KeepTo) {
            return part;
        }
        for (const LagIndex index : problem_.lags.indices()) {
            const TaskRole ends = formulation_.tasks[problem_.lags[index].to.task].role;
            if (problem_.lags[index].from == lag.from &&
                formulation_.lags[index].wait == source.wait && ends != TaskRole::KeepTo &&
                times_.time(problem_.lags[index].to) == times_.time(lag.to)) {
                return index;
            }
        }
        return part;
    }

    void addCount(const Broken& broken, CountIndex count)
    {
        const ResourceSource& source = formulation_.counts[count];
        const bool isCold =
            source.kind == ResourceKind::Fridge || source.kind == ResourceKind::Freezer;
        std::int64_t mostAtOnce = 0;
        for (const DemandIndex index : problem_.demands.indices()) {
            const Demand& demand = problem_.demands[index];
            const auto held = times_.held(demand.from, demand.to);
            if (demand.count == count && held && held->overlaps(*broken.when)) {
                mostAtOnce = std::max(mostAtOnce, demand.amount);
            }
        }
        const bool isNeverEnough =
            !isCold && source.kind != ResourceKind::Watch && mostAtOnce > broken.allowed;
        Clash& clash = put(isNeverEnough ? ClashKind::Utensils : kindOfThing(source.kind), broken);
        clash.count = count;
        clash.tasks = holdersOfCount(count, *broken.when);
        if (isNeverEnough) {
            clash.asked = mostAtOnce;
        }
        if (source.kind == ResourceKind::Watch) {
            clash.asked = 0;
            clash.allowed = 0;
        }
    }

    [[nodiscard]] std::vector<TaskIndex> holdersOfCount(CountIndex count,
                                                        const Interval& when) const
    {
        std::vector<TaskIndex> tasks;
        for (const DemandIndex index : problem_.demands.indices()) {
            const Demand& demand = problem_.demands[index];
            const auto held = times_.held(demand.from, demand.to);
            if (demand.count == count && held && held->overlaps(when)) {
                tasks.push_back(holderOf(demand));
            }
        }
        return tasks;
    }

    /// Who holds a thing: the task that takes it, or, if that is a mere event, the one that ends
    /// the holding.
    [[nodiscard]] TaskIndex holderOf(const Demand& demand) const
    {
        return meansSomething(formulation_.tasks[demand.from.task].role) ? demand.from.task
                                                                         : demand.to.task;
    }

    void addDemand(const Broken& broken, DemandIndex index)
    {
        if (broken.how == BrokenHow::NotPresent) {
            put(ClashKind::NothingChosen, broken);
            return;
        }
        const Demand& demand = problem_.demands[index];
        Clash& clash = put(kindOfThing(formulation_.pools[*demand.pool].kind), broken);
        clash.pool = demand.pool;
        clash.tasks = {holderOf(demand)};
        clash.asked = 1;
        clash.allowed = 1; // there is one, but it does not do
    }

    void addUnit(const Broken& broken)
    {
        const std::string id = broken.id.substr(0, broken.id.rfind('/'));
        const PoolIndex pool = finder_.pools_.at(id);
        std::vector<const Demand*> holders;
        for (const DemandIndex index : problem_.demands.indices()) {
            const Demand& demand = problem_.demands[index];
            const auto held = times_.held(demand.from, demand.to);
            if (demand.pool == pool && held && held->overlaps(*broken.when)) {
                holders.push_back(&demand);
            }
        }
        const auto units = static_cast<std::int64_t>(problem_.pools[pool].units.size());
        std::int64_t byOne = 0;
        for (const Demand* demand : holders) {
            byOne = std::max<std::int64_t>(byOne,
                                           std::ranges::count_if(holders, [&](const Demand* other) {
                                               return other->from == demand->from;
                                           }));
        }
        const bool isNeverEnough = byOne > units;
        Clash& clash =
            put(isNeverEnough ? ClashKind::Utensils : kindOfThing(formulation_.pools[pool].kind),
                broken);
        clash.pool = pool;
        const auto all = static_cast<std::int64_t>(holders.size());
        clash.asked = isNeverEnough ? byOne : std::max<std::int64_t>(all, 2);
        clash.allowed = all > units ? units : 1;
        if (all > units) {
            clash.tasks.clear();
            for (const Demand* demand : holders) {
                clash.tasks.push_back(holderOf(*demand));
            }
        }
    }

    /// Each once, in order of start, without what says nothing to a cook.
    void tidyTasks(Clash& clash) const
    {
        std::vector<TaskIndex> tasks = clash.tasks;
        std::erase_if(
            tasks, [&](TaskIndex task) { return !meansSomething(formulation_.tasks[task].role); });
        if (tasks.empty()) {
            tasks = clash.tasks;
        }
        std::ranges::sort(tasks);
        const auto twice = std::ranges::unique(tasks);
        tasks.erase(twice.begin(), twice.end());
        std::ranges::stable_sort(tasks, {}, [&](TaskIndex task) {
            return schedule_.starts[task].value_or(PlanTime::max());
        });
        clash.tasks = std::move(tasks);
    }

    const ClashFinder& finder_;
    const Formulation& formulation_;
    const Problem& problem_;
    const Schedule& schedule_;
    Timetable times_;
    std::vector<Clash> clashes_;
};

ClashFinder::ClashFinder(const Formulation& formulation) : formulation_(formulation)
{
    const Problem& problem = formulation.problem;
    for (const LagIndex lag : problem.lags.indices()) {
        lags_.emplace(problem.lags[lag].id, lag);
    }
    for (const DemandIndex demand : problem.demands.indices()) {
        demands_.emplace(problem.demands[demand].id, demand);
    }
    for (const CountIndex count : problem.counts.indices()) {
        counts_.emplace(problem.counts[count].id, count);
    }
    for (const PoolIndex pool : problem.pools.indices()) {
        pools_.emplace(problem.pools[pool].id, pool);
    }
}

std::vector<Clash> ClashFinder::clashes(const Schedule& schedule,
                                        const std::vector<Broken>& broken) const
{
    return ClashList(*this, schedule).find(broken);
}

Severity severityOf(ClashKind kind)
{
    switch (kind) {
    case ClashKind::OvenTemperature:
    case ClashKind::OvenSpace:
    case ClashKind::OvenRamp:
    case ClashKind::Burner:
    case ClashKind::Appliance:
    case ClashKind::Vessel:
    case ClashKind::ColdSpace:
    case ClashKind::Hands:
    case ClashKind::CookNotFree:
    case ClashKind::WaitTooShort:
    case ClashKind::NothingChosen:
    case ClashKind::Utensils:
        return Severity::Impossible;
    case ClashKind::Allergen:
    case ClashKind::ContentsUnknown:
    case ClashKind::Unwatched:
    case ClashKind::FoodSafety:
    case ClashKind::UnwashedTool:
        return Severity::Unsafe;
    case ClashKind::WaitTooLong:
    case ClashKind::LateForServing:
    case ClashKind::OutsideWindow:
    case ClashKind::GuestLeftOut:
        return Severity::Undesirable;
    }
    return Severity::Impossible;
}

} // namespace suppertide
