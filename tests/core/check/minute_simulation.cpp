#include "tests/core/check/minute_simulation.h"

#include <algorithm>
#include <map>
#include <optional>
#include <vector>

namespace suppertide::test {

namespace {

using Minute = std::int64_t;

// Some starts lie before 0 or run over the horizon: the simulation looks that far too.
constexpr Minute margin = 200;

/// One evening played minute by minute.
class Evening
{
public:
    Evening(const Problem& problem, const Schedule& schedule) : p_(problem), s_(schedule)
    {
        for (const TaskIndex task : p_.tasks.indices()) {
            bool named = false;
            bool chosen = false;
            for (const ChoiceIndex choice : p_.choices.indices()) {
                for (const OptionIndex option : p_.choices[choice].options.indices()) {
                    const auto& tasks = p_.choices[choice].options[option].tasks;
                    if (std::find(tasks.begin(), tasks.end(), task) != tasks.end()) {
                        named = true;
                        chosen = chosen || s_.options[choice] == option;
                    }
                }
            }
            present_.push_back(!named || chosen);
        }
        for (const OvenIndex oven : p_.ovens.indices()) {
            playOven(oven);
        }
    }

    [[nodiscard]] bool present(TaskIndex task) const { return present_[task.value()]; }
    [[nodiscard]] bool placed(TaskIndex task) const
    {
        return present(task) && s_.starts[task].has_value();
    }
    [[nodiscard]] Minute start(TaskIndex task) const { return minuteOf(*s_.starts[task]); }
    [[nodiscard]] Minute end(TaskIndex task) const
    {
        return start(task) + p_.tasks[task].duration.count();
    }
    [[nodiscard]] bool bothPlaced(const TaskPoint& a, const TaskPoint& b) const
    {
        return placed(a.task) && placed(b.task);
    }
    [[nodiscard]] Minute at(const TaskPoint& point) const
    {
        return point.edge == Edge::Start ? start(point.task) : end(point.task);
    }
    template <typename D>
    [[nodiscard]] bool holds(const D& demand, Minute minute) const
    {
        return bothPlaced(demand.from, demand.to) && at(demand.from) <= minute &&
               minute < at(demand.to);
    }
    template <typename D>
    [[nodiscard]] bool holdsSomething(const D& demand) const
    {
        return bothPlaced(demand.from, demand.to) && at(demand.from) < at(demand.to);
    }
    [[nodiscard]] Minute first() const { return -margin; }
    [[nodiscard]] Minute last() const { return minuteOf(p_.horizon) + margin; }

    [[nodiscard]] bool atTable(const Cook& cook, Minute minute) const
    {
        for (const Interval& each : cook.table) {
            if (each.contains(planTime(minute))) {
                return true;
            }
        }
        return std::any_of(cook.tableAfter.begin(), cook.tableAfter.end(),
                           [&](const TableAfter& each) {
                               return placed(each.event) && start(each.event) <= minute &&
                                      minute < start(each.event) + each.minutes.count();
                           });
    }
    [[nodiscard]] std::optional<int> setting(OvenIndex oven, Minute minute) const
    {
        std::optional<int> result;
        for (const ProgramEntry& entry : s_.programs[oven]) {
            if (minuteOf(entry.at) <= minute) {
                result = entry.setC;
            }
        }
        return result;
    }
    /// Thousandths of a °C at the beginning of a minute.
    [[nodiscard]] std::int64_t temperature(OvenIndex oven, Minute minute) const
    {
        // Before minute 0 it stands at its start temperature.
        return minute <= 0 ? p_.ovens[oven].startC * 1000LL : curve_.at(oven.value()).at(minute);
    }

private:
    void playOven(OvenIndex index)
    {
        const Oven& oven = p_.ovens[index];
        std::int64_t now = oven.startC * 1000LL;
        for (Minute minute = 0; minute <= last(); ++minute) {
            curve_[index.value()][minute] = now;
            const std::int64_t target = setting(index, minute).value_or(oven.ambientC) * 1000LL;
            now = target > now ? std::min(target, now + oven.heatMilliCPerMin)
                               : std::max(target, now - oven.coolMilliCPerMin);
        }
    }

    const Problem& p_;
    const Schedule& s_;
    std::vector<bool> present_;
    std::map<std::size_t, std::map<Minute, std::int64_t>> curve_;
};

using Names = std::set<std::string>;

void playTasks(const Problem& p, const Schedule& s, const Evening& e, Names& broken)
{
    for (const ChoiceIndex choice : p.choices.indices()) {
        if (!s.options[choice]) {
            broken.insert("choice:" + p.choices[choice].id);
        }
    }
    for (const TaskIndex task : p.tasks.indices()) {
        if (e.present(task) != s.starts[task].has_value()) {
            broken.insert("start:" + p.tasks[task].id);
        }
        if (e.placed(task) && (e.start(task) < minuteOf(p.tasks[task].window.start) ||
                               e.end(task) > minuteOf(p.tasks[task].window.end))) {
            broken.insert("window:" + p.tasks[task].id);
        }
    }
    for (const Lag& lag : p.lags) {
        if (e.bothPlaced(lag.from, lag.to)) {
            const Minute gap = e.at(lag.to) - e.at(lag.from);
            if ((lag.min && gap < lag.min->count()) || (lag.max && gap > lag.max->count())) {
                broken.insert("lag:" + lag.id);
            }
        }
    }
}

void playDemands(const Problem& p, const Schedule& s, const Evening& e, Names& broken)
{
    for (Minute minute = e.first(); minute <= e.last(); ++minute) {
        std::map<std::size_t, std::int64_t> used;
        std::map<std::string, int> serving;
        for (const DemandIndex index : p.demands.indices()) {
            const Demand& demand = p.demands[index];
            if (!e.holds(demand, minute)) {
                continue;
            }
            if (demand.count) {
                used[demand.count->value()] += demand.amount;
            } else if (s.units[index]) {
                const Pool& pool = p.pools[*demand.pool];
                ++serving[pool.id + "/" + pool.units[*s.units[index]].id];
            }
        }
        for (const auto& [count, amount] : used) {
            if (amount > p.counts[CountIndex{count}].capacity) {
                broken.insert("count:" + p.counts[CountIndex{count}].id);
            }
        }
        for (const auto& [unit, times] : serving) {
            if (times > 1) {
                broken.insert("unit:" + unit);
            }
        }
    }
    for (const DemandIndex index : p.demands.indices()) {
        const Demand& demand = p.demands[index];
        const bool present = e.present(demand.from.task) && e.present(demand.to.task);
        if (!demand.pool) {
            continue;
        }
        const auto unit = s.units[index];
        bool bad = unit && !present;
        if (e.holdsSomething(demand)) {
            bad = bad || !unit || p.pools[*demand.pool].units[*unit].size < demand.minSize ||
                  (demand.units && std::find(demand.units->begin(), demand.units->end(), *unit) ==
                                       demand.units->end());
        }
        if (bad) {
            broken.insert("demand:" + demand.id);
        }
    }
}

bool handsBroken(const Problem& p, const Schedule& s, const Evening& e, TaskIndex task)
{
    const Task& t = p.tasks[task];
    const auto& cooks = s.cooks[task];
    if (!e.present(task)) {
        return !cooks.empty();
    }
    if (!e.placed(task)) {
        return false;
    }
    if (!t.needsCooks()) {
        return !cooks.empty();
    }
    if (cooks.size() != static_cast<std::size_t>(t.hands->cooks)) {
        return true;
    }
    for (const CookIndex index : cooks) {
        const Cook& cook = p.cooks[index];
        if (t.hands->skill && std::find(cook.skills.begin(), cook.skills.end(), *t.hands->skill) ==
                                  cook.skills.end()) {
            return true;
        }
        const bool free =
            std::any_of(cook.free.begin(), cook.free.end(), [&](const Interval& each) {
                return minuteOf(each.start) <= e.start(task) && e.end(task) <= minuteOf(each.end);
            });
        if (!free) {
            return true;
        }
        for (Minute minute = e.start(task); minute < e.end(task); ++minute) {
            if (!t.atTable && e.atTable(cook, minute)) {
                return true;
            }
        }
    }
    return false;
}

void playHands(const Problem& p, const Schedule& s, const Evening& e, Names& broken)
{
    for (const TaskIndex task : p.tasks.indices()) {
        if (handsBroken(p, s, e, task)) {
            broken.insert("hands:" + p.tasks[task].id);
        }
    }
    for (Minute minute = e.first(); minute <= e.last(); ++minute) {
        for (const CookIndex cook : p.cooks.indices()) {
            int attention = 0;
            for (const TaskIndex task : p.tasks.indices()) {
                const auto& cooks = s.cooks[task];
                if (e.placed(task) && p.tasks[task].needsCooks() && e.start(task) <= minute &&
                    minute < e.end(task) &&
                    std::find(cooks.begin(), cooks.end(), cook) != cooks.end()) {
                    attention += p.tasks[task].hands->attention.percent();
                }
            }
            if (attention > 100) {
                broken.insert("cook:" + p.cooks[cook].id);
            }
        }
    }
}

bool ovenDemandBroken(const Problem& p, const Schedule& s, const Evening& e, OvenDemandIndex index)
{
    const OvenDemand& demand = p.ovenDemands[index];
    const auto oven = s.ovens[index];
    if (oven && !(e.present(demand.from.task) && e.present(demand.to.task))) {
        return true;
    }
    if (!e.holdsSomething(demand)) {
        return false;
    }
    if (!oven || (demand.ovens && std::find(demand.ovens->begin(), demand.ovens->end(), *oven) ==
                                      demand.ovens->end())) {
        return true;
    }
    for (Minute minute = e.at(demand.from); minute <= e.at(demand.to); ++minute) {
        const std::int64_t now = e.temperature(*oven, minute);
        if (now < demand.acceptLow * 1000LL || now > demand.acceptHigh * 1000LL) {
            return true;
        }
        if (minute < e.at(demand.to) && demand.mode == modeOff && e.setting(*oven, minute)) {
            return true;
        }
    }
    // Unlike the first of its group that is in an oven, or of another mode than one before it.
    bool groupSeen = false;
    for (const OvenDemandIndex other : p.ovenDemands.indices()) {
        const OvenDemand& before = p.ovenDemands[other];
        if (!(other < index) || !e.holdsSomething(before) || !s.ovens[other]) {
            continue;
        }
        if (demand.group && before.group == demand.group && !groupSeen) {
            groupSeen = true;
            if (*s.ovens[other] != *oven) {
                return true;
            }
        }
        if (demand.mode && before.mode && *demand.mode != *before.mode &&
            *s.ovens[other] == *oven) {
            for (Minute minute = e.at(demand.from); minute < e.at(demand.to); ++minute) {
                if (e.holds(before, minute)) {
                    return true;
                }
            }
        }
    }
    return false;
}

void playOvens(const Problem& p, const Schedule& s, const Evening& e, Names& broken)
{
    for (const OvenIndex oven : p.ovens.indices()) {
        for (const ProgramEntry& entry : s.programs[oven]) {
            if (entry.setC &&
                (*entry.setC < p.ovens[oven].minC || *entry.setC > p.ovens[oven].maxC)) {
                broken.insert("program:" + p.ovens[oven].id);
            }
        }
        for (Minute minute = e.first(); minute <= e.last(); ++minute) {
            std::int64_t shelves = 0;
            for (const OvenDemandIndex index : p.ovenDemands.indices()) {
                if (s.ovens[index] == oven && e.holds(p.ovenDemands[index], minute)) {
                    shelves += p.ovenDemands[index].shelves;
                }
            }
            if (shelves > p.ovens[oven].shelves) {
                broken.insert("shelves:" + p.ovens[oven].id);
            }
        }
    }
    for (const OvenDemandIndex index : p.ovenDemands.indices()) {
        if (ovenDemandBroken(p, s, e, index)) {
            broken.insert("oven:" + p.ovenDemands[index].id);
        }
    }
}

std::int64_t quietCost(const Problem& p, const Evening& e)
{
    std::int64_t cost = 0;
    for (const TaskIndex task : p.tasks.indices()) {
        if (!e.placed(task) || !p.tasks[task].hands) {
            continue;
        }
        const Hands& hands = *p.tasks[task].hands;
        for (Minute minute = e.start(task); minute < e.end(task); ++minute) {
            for (const Quiet& quiet : p.costs.quiet) {
                bool inside = !quiet.before && quiet.when.contains(planTime(minute));
                if (quiet.before && e.placed(*quiet.before)) {
                    const Minute to = e.start(*quiet.before);
                    inside = to - quiet.minutes.count() <= minute && minute < to;
                }
                cost += inside ? quiet.rate * hands.attention.percent() * hands.cooks : 0;
            }
        }
    }
    return cost;
}

std::int64_t ovenCost(const Problem& p, const Schedule& s, const Evening& e)
{
    std::int64_t cost = 0;
    for (const OvenIndex oven : p.ovens.indices()) {
        std::optional<int> last;
        for (const ProgramEntry& entry : s.programs[oven]) {
            cost += entry.setC && last && *last != *entry.setC ? p.costs.ovenChange : 0;
            last = entry.setC ? entry.setC : last;
        }
        for (const ProgramEntry& entry : s.programs[oven]) {
            const Minute at = minuteOf(entry.at);
            const bool wasOn = at > 0 && e.setting(oven, at - 1);
            if (!entry.setC || wasOn) {
                continue;
            }
            bool within = false;
            for (const OvenDemandIndex index : p.ovenDemands.indices()) {
                const OvenDemand& demand = p.ovenDemands[index];
                within = within || (e.holdsSomething(demand) && s.ovens[index] == oven &&
                                    e.at(demand.from) < at && at < e.at(demand.to));
            }
            cost += p.costs.ovenSwitchOn + (within ? p.costs.ovenSwitchOnWithin : 0);
        }
        for (Minute minute = 0; minute < minuteOf(p.horizon); ++minute) {
            cost += e.setting(oven, minute) ? p.costs.ovenOnMinute : 0;
        }
    }
    for (const OvenDemandIndex index : p.ovenDemands.indices()) {
        const OvenDemand& demand = p.ovenDemands[index];
        if (e.holdsSomething(demand) && s.ovens[index] && demand.prefer) {
            const int inForce = e.setting(*s.ovens[index], e.at(demand.from))
                                    .value_or(p.ovens[*s.ovens[index]].ambientC);
            cost += p.costs.preferC * std::abs(inForce - *demand.prefer);
        }
    }
    return cost;
}

std::int64_t sessionCost(const Problem& p, const Schedule& s, const Evening& e)
{
    std::int64_t sessions = 0;
    for (const CookIndex cook : p.cooks.indices()) {
        // Minutes since the cook's last task ended; a session begins where that is above the gap.
        std::optional<Minute> latestEnd;
        for (Minute minute = e.first(); minute <= e.last(); ++minute) {
            Minute end = minute;
            bool starts = false;
            for (const TaskIndex task : p.tasks.indices()) {
                const auto& cooks = s.cooks[task];
                if (e.placed(task) && p.tasks[task].needsCooks() && e.start(task) == minute &&
                    std::find(cooks.begin(), cooks.end(), cook) != cooks.end()) {
                    starts = true;
                    end = std::max(end, e.end(task));
                }
            }
            if (starts) {
                sessions += !latestEnd || minute > *latestEnd + p.costs.sessionGap.count() ? 1 : 0;
                latestEnd = std::max(latestEnd.value_or(end), end);
            }
        }
    }
    return sessions * p.costs.session;
}

} // namespace

std::set<std::string> brokenByMinutes(const Problem& problem, const Schedule& schedule)
{
    const Evening evening(problem, schedule);
    Names broken;
    playTasks(problem, schedule, evening, broken);
    playDemands(problem, schedule, evening, broken);
    playHands(problem, schedule, evening, broken);
    playOvens(problem, schedule, evening, broken);
    return broken;
}

std::int64_t costByMinutes(const Problem& problem, const Schedule& schedule)
{
    const Evening e(problem, schedule);
    std::int64_t cost =
        quietCost(problem, e) + ovenCost(problem, schedule, e) + sessionCost(problem, schedule, e);
    for (const Lag& lag : problem.lags) {
        if (e.bothPlaced(lag.from, lag.to) && lag.min) {
            cost += lag.loss * (e.at(lag.to) - e.at(lag.from) - lag.min->count());
        }
    }
    for (const ChoiceIndex choice : problem.choices.indices()) {
        if (schedule.options[choice]) {
            cost += problem.choices[choice].options[*schedule.options[choice]].cost;
        }
    }
    for (const BeforeStart& before : problem.costs.before) {
        if (e.placed(before.task) && *schedule.starts[before.task] != before.start) {
            cost +=
                problem.costs.beforeMoved +
                problem.costs.beforeRate * std::abs(e.start(before.task) - minuteOf(before.start));
        }
    }
    return cost;
}

} // namespace suppertide::test
