#include <algorithm>
#include <mutex>
#include <thread>
#include <utility>

#include "core/planner/planner.h"
#include "core/planner/quick_start/proof.h"
#include "core/planner/quick_start/quick_start.h"

namespace suppertide {

namespace {

using quick_start::Budget;
using quick_start::QuickStart;

/// The best schedule of all threads; the one place where they meet.
class Incumbent
{
public:
    Incumbent(std::int64_t bound, const ProgressSink& progress)
        : bound_(bound), progress_(&progress)
    {}

    /// Whether to go on searching.
    bool offer(Schedule schedule, std::int64_t stepsTaken)
    {
        const std::lock_guard lock(mutex_);
        if (best_ && *best_->cost <= *schedule.cost) {
            return *best_->cost > bound_;
        }
        schedule.bound = bound_;
        schedule.status =
            *schedule.cost == bound_ ? ScheduleStatus::Optimal : ScheduleStatus::Feasible;
        best_ = std::move(schedule);
        if (*progress_) {
            (*progress_)({best_, bound_, stepsTaken});
        }
        return *best_->cost > bound_;
    }
    [[nodiscard]] std::optional<Schedule> take() { return std::exchange(best_, std::nullopt); }

private:
    std::int64_t bound_;
    const ProgressSink* progress_;
    std::mutex mutex_;
    std::optional<Schedule> best_;
};

struct SearchResult
{
    std::vector<Unplaced> unplaced;
    std::int64_t stepsTaken = 0;
    bool over = false;
};

SearchResult search(const Problem& problem, const PlannerLimits& limits,
                    const std::stop_token& stop, Budget::Clock::time_point started,
                    Incumbent& incumbent)
{
    Budget budget(limits, stop, started);
    QuickStart quickStart(problem, budget, limits.seed, [&](const Schedule& schedule) {
        return incumbent.offer(schedule, budget.taken());
    });
    if (budget.spend(0)) {
        quickStart.run();
    }
    return {quickStart.unplaced(), budget.taken(), budget.isOver()};
}

/// One search a thread, each with a seed of its own.
std::vector<SearchResult> searchAll(const Problem& problem, const PlannerLimits& limits,
                                    const std::stop_token& stop, Budget::Clock::time_point started,
                                    Incumbent& incumbent)
{
    std::vector<SearchResult> results(static_cast<std::size_t>(std::max(1, limits.threads)));
    {
        std::vector<std::jthread> others;
        for (std::size_t i = 1; i < results.size(); ++i) {
            PlannerLimits own = limits;
            own.seed += i * 0x51ed2701U;
            others.emplace_back([&problem, &stop, &incumbent, &results, own, started, i] {
                results[i] = search(problem, own, stop, started, incumbent);
            });
        }
        results[0] = search(problem, limits, stop, started, incumbent);
    }
    return results;
}

} // namespace

PlannerOutcome solve(const Problem& problem, const PlannerLimits& limits, std::stop_token stop,
                     const ProgressSink& progress)
{
    const auto started = Budget::Clock::now();
    PlannerOutcome outcome;
    outcome.schedule = emptyScheduleFor(problem);
    if (stop.stop_requested()) {
        outcome.stopped = true;
        return outcome;
    }
    if (auto conflict = quick_start::provenConflict(problem)) {
        outcome.schedule.status = ScheduleStatus::Infeasible;
        outcome.schedule.conflict = *std::move(conflict);
        return outcome;
    }
    Incumbent incumbent(quick_start::provenBound(problem), progress);
    const auto results = searchAll(problem, limits, stop, started, incumbent);
    for (const SearchResult& result : results) {
        outcome.stepsTaken += result.stepsTaken;
        outcome.stopped = outcome.stopped || result.over;
    }
    if (auto best = incumbent.take()) {
        outcome.schedule = *std::move(best);
        outcome.stopped = outcome.stopped && outcome.schedule.status != ScheduleStatus::Optimal;
    } else {
        outcome.unplaced = results[0].unplaced;
    }
    return outcome;
}

} // namespace suppertide
