#include "core/assign/live_assign.h"

#include <algorithm>
#include <deque>
#include <utility>

#include "core/assign/cook_sweep.h"
#include "core/assign/oven_choice.h"
#include "core/assign/oven_program.h"
#include "core/assign/unit_sweep.h"
#include "core/problem/timetable.h"

namespace suppertide {

namespace {

/// The last few questions and their answers.
template <typename Question, typename Answer>
class Recent
{
public:
    template <typename Make>
    const Answer& find(Question question, const Make& make)
    {
        for (const auto& known : entries_) {
            if (known.first == question) {
                return known.second;
            }
        }
        if (entries_.size() == mostKept) {
            entries_.pop_front();
        }
        Answer answer = make(question);
        entries_.emplace_back(std::move(question), std::move(answer));
        return entries_.back().second;
    }

private:
    static constexpr std::size_t mostKept = 16;
    std::deque<std::pair<Question, Answer>> entries_;
};

template <typename Index>
std::vector<std::size_t> pinnedTo(const IndexedVector<Index, std::optional<UnitIndex>>& pins,
                                  Index index)
{
    return pins.contains(index) && pins[index] ? std::vector{pins[index]->value()}
                                               : std::vector<std::size_t>{};
}

bool hasSkill(const Cook& cook, const Hands& hands)
{
    return !hands.skill ||
           std::find(cook.skills.begin(), cook.skills.end(), *hands.skill) != cook.skills.end();
}

bool isFree(const Cook& cook, const Interval& during)
{
    return std::any_of(cook.free.begin(), cook.free.end(),
                       [&](const Interval& free) { return free.contains(during); });
}

bool overlapsAny(const std::vector<Interval>& intervals, const Interval& during)
{
    return std::any_of(intervals.begin(), intervals.end(),
                       [&](const Interval& other) { return other.overlaps(during); });
}

} // namespace

class LiveAssign::Parts
{
public:
    explicit Parts(const Problem& problem) : problem_(problem) {}

    void assignCooks(const Timetable& times, const AssignmentPins& pins, Schedule& schedule);
    void assignUnits(const Timetable& times, const AssignmentPins& pins, Schedule& schedule);
    void assignOvens(const Timetable& times, const AssignmentPins& pins, Schedule& schedule);
    void program(const Timetable& times, Schedule& schedule);

    [[nodiscard]] const Problem& problem() const { return problem_; }

private:
    struct Item
    {
        TaskIndex task;
        CookWork work;
    };
    [[nodiscard]] std::vector<Item> cookWork(const Timetable& times,
                                             const AssignmentPins& pins) const;

    const Problem& problem_;
    Recent<std::vector<CookWork>, CookSweepResult> cooks_;
    Recent<std::pair<PoolIndex, std::vector<UnitWork>>, UnitSweepResult> units_;
    Recent<std::vector<OvenWork>, OvenChoiceResult> ovens_;
    Recent<std::pair<OvenIndex, std::vector<OvenStay>>, OvenProgram> programs_;
};

std::vector<LiveAssign::Parts::Item> LiveAssign::Parts::cookWork(const Timetable& times,
                                                                 const AssignmentPins& pins) const
{
    std::vector<std::vector<Interval>> table;
    for (const Cook& cook : problem_.cooks) {
        table.push_back(times.atTable(cook));
    }
    std::vector<Item> result;
    for (const TaskIndex index : problem_.tasks.indices()) {
        const Task& task = problem_.tasks[index];
        const auto during = times.interval(index);
        if (!during || !task.needsCooks()) {
            continue;
        }
        Item item{index, {*during, task.hands->attention.percent(), task.hands->cooks, {}, {}, {}}};
        for (const CookIndex cook : problem_.cooks.indices()) {
            const bool seated = !task.atTable && overlapsAny(table[cook.value()], *during);
            const bool able = hasSkill(problem_.cooks[cook], *task.hands);
            item.work.unable.push_back(!able);
            item.work.faults.push_back((able ? 0 : 1) +
                                       (isFree(problem_.cooks[cook], *during) ? 0 : 1) +
                                       (seated ? 1 : 0));
        }
        if (pins.cooks.contains(index)) {
            for (const CookIndex cook : pins.cooks[index]) {
                item.work.pinned.push_back(cook.value());
            }
        }
        result.push_back(std::move(item));
    }
    std::stable_sort(result.begin(), result.end(), [](const Item& a, const Item& b) {
        return a.work.during.start < b.work.during.start;
    });
    return result;
}

/// Work is cut where all is done and the next begins a new session for anybody: such pieces have
/// nothing to do with each other.
void LiveAssign::Parts::assignCooks(const Timetable& times, const AssignmentPins& pins,
                                    Schedule& schedule)
{
    const std::vector<Item> items = cookWork(times, pins);
    for (std::size_t first = 0; first < items.size();) {
        std::vector<CookWork> piece;
        PlanTime end = items[first].work.during.end;
        std::size_t last = first;
        while (last < items.size() &&
               items[last].work.during.start <= end + problem_.costs.sessionGap) {
            end = std::max(end, items[last].work.during.end);
            piece.push_back(items[last].work);
            ++last;
        }
        const CookSweepResult& found =
            cooks_.find(std::move(piece), [&](const std::vector<CookWork>& work) {
                return sweepCooks(work, problem_.cooks.size(), problem_.costs.sessionGap);
            });
        for (std::size_t i = first; i < last; ++i) {
            for (const std::size_t cook : found.cooks[i - first]) {
                schedule.cooks[items[i].task].emplace_back(cook);
            }
        }
        first = last;
    }
}

void LiveAssign::Parts::assignUnits(const Timetable& times, const AssignmentPins& pins,
                                    Schedule& schedule)
{
    for (const PoolIndex pool : problem_.pools.indices()) {
        std::vector<std::int64_t> sizes;
        for (const PoolUnit& unit : problem_.pools[pool].units) {
            sizes.push_back(unit.size);
        }
        std::vector<DemandIndex> demands;
        std::vector<UnitWork> work;
        for (const DemandIndex index : problem_.demands.indices()) {
            const Demand& demand = problem_.demands[index];
            const auto held = times.held(demand.from, demand.to);
            if (demand.pool != pool || !held || sizes.empty()) {
                continue;
            }
            UnitWork item{*held, std::vector<bool>(sizes.size(), !demand.units.has_value()), {}};
            for (const UnitIndex unit : demand.units.value_or(std::vector<UnitIndex>{})) {
                item.allowed[unit.value()] = true;
            }
            for (std::size_t unit = 0; unit < sizes.size(); ++unit) {
                item.allowed[unit] = item.allowed[unit] && sizes[unit] >= demand.minSize;
            }
            item.pinned = pinnedTo(pins.units, index);
            demands.push_back(index);
            work.push_back(std::move(item));
        }
        if (work.empty()) {
            continue;
        }
        const UnitSweepResult& found =
            units_.find({pool, std::move(work)},
                        [&](const auto& question) { return sweepUnits(question.second, sizes); });
        for (std::size_t i = 0; i < demands.size(); ++i) {
            schedule.units[demands[i]] = UnitIndex{found.units[i]};
        }
    }
}

void LiveAssign::Parts::assignOvens(const Timetable& times, const AssignmentPins& pins,
                                    Schedule& schedule)
{
    std::vector<OvenDemandIndex> demands;
    std::vector<OvenWork> work;
    for (const OvenDemandIndex index : problem_.ovenDemands.indices()) {
        const OvenDemand& demand = problem_.ovenDemands[index];
        const auto held = times.held(demand.from, demand.to);
        if (!held || problem_.ovens.empty()) {
            continue;
        }
        OvenWork item{ovenStay(demand, *held), demand.shelves, demand.mode, demand.group, {}, {}};
        item.allowed.assign(problem_.ovens.size(), !demand.ovens.has_value());
        for (const OvenIndex oven : demand.ovens.value_or(std::vector<OvenIndex>{})) {
            item.allowed[oven.value()] = true;
        }
        if (pins.ovens.contains(index) && pins.ovens[index]) {
            item.pinned = {pins.ovens[index]->value()};
        }
        demands.push_back(index);
        work.push_back(std::move(item));
    }
    const OvenChoiceResult& found =
        ovens_.find(std::move(work), [&](const std::vector<OvenWork>& question) {
            return question.empty() ? OvenChoiceResult{} : chooseOvens(problem_.ovens, question);
        });
    for (std::size_t i = 0; i < demands.size(); ++i) {
        schedule.ovens[demands[i]] = OvenIndex{found.ovens[i]};
    }
}

void LiveAssign::Parts::program(const Timetable& times, Schedule& schedule)
{
    for (const OvenIndex oven : problem_.ovens.indices()) {
        std::vector<OvenStay> stays;
        for (const OvenDemandIndex index : problem_.ovenDemands.indices()) {
            const OvenDemand& demand = problem_.ovenDemands[index];
            const auto held = times.held(demand.from, demand.to);
            if (held && schedule.ovens[index] == oven) {
                stays.push_back(ovenStay(demand, *held));
            }
        }
        schedule.programs[oven] =
            programs_.find({oven, std::move(stays)}, [&](const auto& question) {
                return ovenProgramFor(problem_.ovens[oven], question.second,
                                      ovenProgramStyle(problem_.costs, false))
                    .program;
            });
    }
}

LiveAssign::LiveAssign(const Problem& problem) : parts_(std::make_unique<Parts>(problem)) {}
LiveAssign::~LiveAssign() = default;
LiveAssign::LiveAssign(LiveAssign&&) noexcept = default;
LiveAssign& LiveAssign::operator=(LiveAssign&&) noexcept = default;

Schedule LiveAssign::assign(Schedule laidOut, const AssignmentPins& pins)
{
    const Problem& problem = parts_->problem();
    laidOut.cooks.assign(problem.tasks.size(), {});
    laidOut.units.assign(problem.demands.size(), std::nullopt);
    laidOut.ovens.assign(problem.ovenDemands.size(), std::nullopt);
    laidOut.programs.assign(problem.ovens.size(), {});
    const Schedule starts = laidOut;
    const Timetable times(problem, starts);
    parts_->assignCooks(times, pins, laidOut);
    parts_->assignUnits(times, pins, laidOut);
    parts_->assignOvens(times, pins, laidOut);
    parts_->program(times, laidOut);
    return laidOut;
}

} // namespace suppertide
