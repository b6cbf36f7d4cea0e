// What a schedule costs, term by term as the format page lists them. Sums are taken in 128 bits
// and capped, so that no input makes them wrap around.
#include <algorithm>
#include <limits>

#include "core/check/check.h"
#include "core/problem/oven_curve.h"
#include "core/problem/timetable.h"

namespace suppertide {

namespace {

__extension__ using Wide = __int128;

std::int64_t capped(Wide value)
{
    constexpr Wide most = std::numeric_limits<std::int64_t>::max();
    return static_cast<std::int64_t>(std::clamp(value, -most, most));
}

class Reckoning
{
public:
    Reckoning(const Problem& problem, const Schedule& schedule)
        : problem_(&problem), schedule_(&schedule), times_(problem, schedule)
    {
        for (const OvenIndex oven : problem.ovens.indices()) {
            curves_.push_back(OvenCurve(problem.ovens[oven], schedule.programs[oven]));
        }
    }

    [[nodiscard]] std::int64_t loss() const
    {
        Wide sum = 0;
        for (const Lag& lag : problem_->lags) {
            const auto from = times_.time(lag.from);
            const auto to = times_.time(lag.to);
            if (from && to && lag.min) {
                sum += Wide{lag.loss} * (*to - *from - *lag.min).count();
            }
        }
        return capped(sum);
    }

    [[nodiscard]] std::int64_t quiet() const
    {
        Wide sum = 0;
        for (const Quiet& quiet : problem_->costs.quiet) {
            const auto hours = quietTime(quiet);
            if (!hours) {
                continue;
            }
            for (const TaskIndex task : problem_->tasks.indices()) {
                const auto when = times_.interval(task);
                const auto& hands = problem_->tasks[task].hands;
                if (when && hands) {
                    sum += Wide{quiet.rate} * hands->attention.percent() *
                           when->common(*hours).length().count() * hands->cooks;
                }
            }
        }
        return capped(sum);
    }

    [[nodiscard]] std::int64_t ovenChange() const
    {
        Wide sum = 0;
        for (const OvenCurve& curve : curves_) {
            sum += Wide{problem_->costs.ovenChange} * curve.changes();
        }
        return capped(sum);
    }

    [[nodiscard]] std::int64_t ovenOn() const
    {
        Wide sum = 0;
        for (const OvenCurve& curve : curves_) {
            sum += Wide{problem_->costs.ovenOnMinute} * curve.onBefore(problem_->horizon).count();
        }
        return capped(sum);
    }

    [[nodiscard]] std::int64_t ovenSwitchOn() const
    {
        Wide sum = 0;
        for (const OvenIndex oven : problem_->ovens.indices()) {
            for (const PlanTime at : curves_[oven].switchedOn()) {
                sum += Wide{problem_->costs.ovenSwitchOn} +
                       (isWithinDemand(oven, at) ? problem_->costs.ovenSwitchOnWithin : 0);
            }
        }
        return capped(sum);
    }

    /// Whether something has been in this oven before and stays in.
    [[nodiscard]] bool isWithinDemand(OvenIndex oven, PlanTime at) const
    {
        for (const OvenDemandIndex index : problem_->ovenDemands.indices()) {
            const OvenDemand& demand = problem_->ovenDemands[index];
            const auto held = times_.held(demand.from, demand.to);
            if (held && schedule_->ovens[index] == oven && held->start < at && at < held->end) {
                return true;
            }
        }
        return false;
    }

    [[nodiscard]] std::int64_t prefer() const
    {
        Wide sum = 0;
        for (const OvenDemandIndex index : problem_->ovenDemands.indices()) {
            const OvenDemand& demand = problem_->ovenDemands[index];
            const auto held = times_.held(demand.from, demand.to);
            const auto& oven = schedule_->ovens[index];
            if (held && oven && demand.prefer) {
                const int set =
                    curves_[*oven].setting(held->start).value_or(problem_->ovens[*oven].ambientC);
                const Wide away = Wide{set} - *demand.prefer;
                sum += Wide{problem_->costs.preferC} * (away < 0 ? -away : away);
            }
        }
        return capped(sum);
    }

    [[nodiscard]] std::int64_t session() const
    {
        Wide sum = 0;
        for (const CookIndex cook : problem_->cooks.indices()) {
            sum += Wide{problem_->costs.session} * sessionsOf(cook);
        }
        return capped(sum);
    }

    [[nodiscard]] std::int64_t option() const
    {
        Wide sum = 0;
        for (const ChoiceIndex choice : problem_->choices.indices()) {
            if (const auto& chosen = schedule_->options[choice]) {
                sum += problem_->choices[choice].options[*chosen].cost;
            }
        }
        return capped(sum);
    }

    [[nodiscard]] std::int64_t before() const
    {
        Wide sum = 0;
        for (const BeforeStart& was : problem_->costs.before) {
            const auto start = times_.time({was.task, Edge::Start});
            if (start && *start != was.start) {
                sum += Wide{problem_->costs.beforeRate} *
                           std::chrono::abs(*start - was.start).count() +
                       problem_->costs.beforeMoved;
            }
        }
        return capped(sum);
    }

private:
    /// Absent if it leads up to a task that does not take place.
    [[nodiscard]] std::optional<Interval> quietTime(const Quiet& quiet) const
    {
        if (!quiet.before) {
            return quiet.when;
        }
        const auto start = times_.time({*quiet.before, Edge::Start});
        return start ? std::optional{Interval{*start - quiet.minutes, *start}} : std::nullopt;
    }

    [[nodiscard]] int sessionsOf(CookIndex cook) const
    {
        std::vector<Interval> work;
        for (const TaskIndex task : problem_->tasks.indices()) {
            const auto& cooks = schedule_->cooks[task];
            const auto when = times_.interval(task);
            if (when && problem_->tasks[task].needsCooks() &&
                std::ranges::find(cooks, cook) != cooks.end()) {
                work.push_back(*when);
            }
        }
        std::ranges::sort(work);
        int sessions = 0;
        std::optional<PlanTime> latest;
        for (const Interval& each : work) {
            sessions += !latest || each.start > *latest + problem_->costs.sessionGap ? 1 : 0;
            latest = std::max(latest.value_or(each.end), each.end);
        }
        return sessions;
    }

    const Problem* problem_;
    const Schedule* schedule_;
    Timetable times_;
    IndexedVector<OvenIndex, OvenCurve> curves_;
};

} // namespace

std::int64_t CostParts::total() const
{
    return capped(Wide{loss} + quiet + ovenChange + ovenOn + ovenSwitchOn + prefer + session +
                  option + before);
}

CostParts costOf(const Problem& problem, const Schedule& schedule)
{
    const Reckoning reckoning(problem, schedule);
    return {reckoning.loss(),    reckoning.quiet(),        reckoning.ovenChange(),
            reckoning.ovenOn(),  reckoning.ovenSwitchOn(), reckoning.prefer(),
            reckoning.session(), reckoning.option(),       reckoning.before()};
}

} // namespace suppertide
