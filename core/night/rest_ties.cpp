// Ties, what is held, table time and costs of the rest.
#include <algorithm>

#include "core/night/rest_writer.h"

namespace suppertide {

namespace {

/// Least change on the night, in cost units: for another start than planned, and for each minute of
/// it. A minute late for serving costs 6,000 (core/plan), so that a course on time is worth moving
/// steps for; a change of the oven 2,400 and a session 1,200, for which none moves.
constexpr std::int64_t movedOnTheNight = 3600;
constexpr std::int64_t minuteOnTheNight = 12;
/// Cost units a minute that a course whose time was fixed is late.
constexpr std::int64_t lateMinute = 6000;

} // namespace

void RestWriter::addLags()
{
    for (const LagIndex index : from_.lags.indices()) {
        const Lag& lag = from_.lags[index];
        const RestPoint from = see(lag.from);
        const RestPoint to = see(lag.to);
        if (from.isGone || to.isGone || (from.past && to.past) ||
            options_.givenUp.contains("lag:" + lag.id)) {
            continue;
        }
        if (from.past) {
            addLag(index, {nowEvent_, Edge::Start}, to.point,
                   lag.min ? std::optional(*lag.min + *from.past) : std::nullopt,
                   lag.max ? std::optional(*lag.max + *from.past) : std::nullopt);
        } else if (to.past) {
            addLag(index, from.point, {nowEvent_, Edge::Start},
                   lag.min ? std::optional(*lag.min - *to.past) : std::nullopt,
                   lag.max ? std::optional(*lag.max - *to.past) : std::nullopt);
        } else {
            addLag(index, from.point, to.point, lag.min, lag.max);
        }
    }
    if (options_.servingLater > Minutes{0}) {
        for (const auto& [course, event] : whole_.servings) {
            if (const auto added = rest_.inRest[event]) {
                addServingLoss(event, *added);
            }
        }
    }
}

/// A course that nothing else keeps to its time.
void RestWriter::addServingLoss(TaskIndex serving, TaskIndex added)
{
    const Interval& set = from_.tasks[serving].window;
    if (set.start != set.end) {
        return;
    }
    Lag late;
    late.id = "late/" + from_.tasks[serving].id;
    late.from = {nowEvent_, Edge::Start};
    late.to = {added, Edge::Start};
    late.min = std::max(Minutes{0}, shifted(set.start) - planTime(0));
    late.loss = lateMinute;
    LagSource source;
    source.rule = Rule::Serving;
    made_.problem.lags.push_back(std::move(late));
    made_.lags.push_back(std::move(source));
}

/// A bound that nothing to come can meet is left out; of one that says nothing there is no need.
void RestWriter::addLag(LagIndex index, TaskPoint from, TaskPoint to, std::optional<Minutes> min,
                        std::optional<Minutes> max)
{
    const Task& first = made_.problem.tasks[from.task];
    const Task& last = made_.problem.tasks[to.task];
    const bool isFromFixed = first.window.length() == first.duration;
    const bool isToFixed = last.window.length() == last.duration;
    if (max && isFromFixed && earliest(to) > earliest(from) + *max) {
        rest_.passed.push_back({PassedKind::Wait, from_.lags[index].to.task, index});
        max.reset();
    }
    if (min && isToFixed && earliest(from) + *min > earliest(to)) {
        min.reset();
    }
    const std::int64_t loss = min ? from_.lags[index].loss : 0;
    const bool saysNothing =
        isFromFixed && !max && loss == 0 && (!min || earliest(from) + *min <= earliest(to));
    if ((!min && !max) || saysNothing) {
        return;
    }
    Lag lag = from_.lags[index];
    lag.from = from;
    lag.to = to;
    lag.min = min;
    lag.max = max;
    lag.loss = loss;
    made_.problem.lags.push_back(std::move(lag));
    made_.lags.push_back(whole_.lags[index]);
}

void RestWriter::addDemands()
{
    // What is held now comes first: the rest makes do with what that leaves.
    for (const bool isHeldNow : {true, false}) {
        for (const DemandIndex index : from_.demands.indices()) {
            Demand demand = from_.demands[index];
            const RestPoint from = see(demand.from);
            const RestPoint to = see(demand.to);
            if (from.isGone || to.isGone || to.past || from.past.has_value() != isHeldNow) {
                continue;
            }
            demand.from = from.past ? TaskPoint{nowEvent_, Edge::Start} : from.point;
            demand.to = to.point;
            if (!isHeldNow) {
                letGoOfTaken(demand);
            }
            if (!isHeldNow || holdNow(demand, index)) {
                made_.problem.demands.push_back(std::move(demand));
                made_.demands.push_back(whole_.demands[index]);
            }
        }
    }
}

/// What was to be done in a thing that something else is in now may be done in any.
void RestWriter::letGoOfTaken(Demand& demand) const
{
    if (demand.pool && demand.units && std::ranges::all_of(*demand.units, [&](UnitIndex unit) {
            return unitsTaken_.contains(std::pair{*demand.pool, unit});
        })) {
        demand.units.reset();
    }
}

/// What is in use is in use, whatever there is of it. False: there is none left to hold.
bool RestWriter::holdNow(Demand& demand, DemandIndex index)
{
    if (demand.pool) {
        return takeUnit(demand, index);
    }
    std::int64_t& taken = amountsTaken_[*demand.count];
    demand.amount = std::min(demand.amount, from_.counts[*demand.count].capacity - taken);
    taken += std::max<std::int64_t>(demand.amount, 0);
    return demand.amount > 0;
}

bool RestWriter::takeUnit(Demand& demand, DemandIndex index)
{
    const Pool& pool = from_.pools[*demand.pool];
    std::vector<UnitIndex> wanted;
    if (const StepReport* report = reportOf(from_.demands[index].from.task)) {
        const auto said = report->units.find(demand.id);
        for (const UnitIndex unit : pool.units.indices()) {
            if (said != report->units.end() && pool.units[unit].id == said->second) {
                wanted.push_back(unit);
            }
        }
    }
    if (rest_.planned.units[index]) {
        wanted.push_back(*rest_.planned.units[index]);
    }
    for (const UnitIndex unit : pool.units.indices()) {
        if (pool.units[unit].size >= demand.minSize) {
            wanted.push_back(unit);
        }
    }
    for (const UnitIndex unit : wanted) {
        if (unitsTaken_.emplace(std::pair{*demand.pool, unit}, true).second) {
            demand.units = std::vector{unit};
            demand.minSize = std::min(demand.minSize, pool.units[unit].size);
            return true;
        }
    }
    return false;
}

void RestWriter::addOvenDemands()
{
    for (const OvenDemandIndex index : from_.ovenDemands.indices()) {
        keepGroup(index);
    }
    for (const bool isHeldNow : {true, false}) {
        for (const OvenDemandIndex index : from_.ovenDemands.indices()) {
            OvenDemand demand = from_.ovenDemands[index];
            const RestPoint from = see(demand.from);
            const RestPoint to = see(demand.to);
            if (from.isGone || to.isGone || to.past || from.past.has_value() != isHeldNow) {
                continue;
            }
            demand.from = from.past ? TaskPoint{nowEvent_, Edge::Start} : from.point;
            demand.to = to.point;
            if (isHeldNow) {
                holdNow(demand, index);
            } else if (demand.group && groupOvens_.contains(*demand.group)) {
                demand.ovens = std::vector{groupOvens_.at(*demand.group)};
            }
            made_.problem.ovenDemands.push_back(std::move(demand));
            made_.ovenDemands.push_back(whole_.ovenDemands[index]);
        }
    }
}

/// One of the group is in an oven, or was: the others follow it there.
void RestWriter::keepGroup(OvenDemandIndex index)
{
    const OvenDemand& demand = from_.ovenDemands[index];
    const RestPoint from = see(demand.from);
    const auto oven = rest_.planned.ovens[index];
    if (demand.group && !from.isGone && from.past && oven) {
        groupOvens_.emplace(*demand.group, *oven);
    }
}

/// It stays in its oven, and stands what that has now.
void RestWriter::holdNow(OvenDemand& demand, OvenDemandIndex index)
{
    std::optional<OvenIndex> oven = rest_.planned.ovens[index];
    if (const StepReport* report = reportOf(from_.ovenDemands[index].from.task)) {
        const auto said = report->ovens.find(demand.id);
        for (const OvenIndex each : from_.ovens.indices()) {
            if (said != report->ovens.end() && from_.ovens[each].id == said->second) {
                oven = each;
            }
        }
    }
    if (demand.group && groupOvens_.contains(*demand.group)) {
        oven = groupOvens_.at(*demand.group);
    }
    if (!oven) {
        oven = OvenIndex{0};
    }
    demand.ovens = std::vector{*oven};
    demand.acceptLow = std::min(demand.acceptLow, degrees_[*oven]);
    demand.acceptHigh = std::max(demand.acceptHigh, degrees_[*oven]);
    std::int64_t& taken = shelvesTaken_[*oven];
    demand.shelves =
        std::max<std::int64_t>(0, std::min(demand.shelves, from_.ovens[*oven].shelves - taken));
    taken += demand.shelves;
    if (demand.mode) {
        const auto known = modes_.emplace(*oven, *demand.mode).first;
        if (known->second != *demand.mode) {
            demand.mode.reset();
        }
    }
}

void RestWriter::addCosts()
{
    Costs costs = from_.costs;
    costs.quiet.clear();
    for (Quiet quiet : from_.costs.quiet) {
        if (quiet.before) {
            const auto left = rest_.inRest[*quiet.before];
            if (!left) {
                continue;
            }
            quiet.before = *left;
        } else {
            quiet.when = shifted(quiet.when);
            if (quiet.when.empty()) {
                continue;
            }
        }
        costs.quiet.push_back(quiet);
    }
    costs.before.clear();
    for (const TaskIndex index : from_.tasks.indices()) {
        const auto left = rest_.inRest[index];
        const auto laid = rest_.layout.starts.find(from_.tasks[index].id);
        if (!left || laid == rest_.layout.starts.end() ||
            rest_.facts.steps[index].state != StepState::ToCome ||
            from_.tasks[index].duration == Minutes{0}) {
            continue;
        }
        const Task& task = made_.problem.tasks[*left];
        const PlanTime start = std::max(made_.calendar.planTime(laid->second), task.window.start);
        costs.before.push_back({*left, std::min(start, made_.problem.horizon - task.duration)});
    }
    costs.beforeRate = std::max(costs.beforeRate, minuteOnTheNight);
    costs.beforeMoved = std::max(costs.beforeMoved, movedOnTheNight);
    made_.problem.costs = std::move(costs);
    for (const CookIndex index : from_.cooks.indices()) {
        Cook& cook = made_.problem.cooks[index];
        for (const TableAfter& after : from_.cooks[index].tableAfter) {
            const RestPoint event = see({after.event, Edge::Start});
            if (event.past && *event.past + after.minutes > Minutes{0}) {
                cook.table = withJoined(cook.table,
                                        {planTime(0), planTime(0) + *event.past + after.minutes});
            } else if (!event.isGone && !event.past) {
                cook.tableAfter.push_back({event.point.task, after.minutes});
            }
        }
    }
}

} // namespace suppertide
