#include <algorithm>
#include <functional>
#include <limits>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <utility>

#include "core/planner/exact/conflict.h"
#include "core/planner/exact/exact.h"
#include "core/planner/exact/kept_starts.h"
#include "core/planner/exact/shared_clauses.h"
#include "core/planner/planner.h"
#include "core/planner/quick_start/proof.h"
#include "core/planner/quick_start/quick_start.h"

namespace suppertide {

namespace {

using exact::ExactSearch;
using quick_start::Budget;
using quick_start::QuickStart;

/// What the quick start gets, in percent of the limits: few tasks leave the engine more to gain.
constexpr std::int64_t shareOfFew = 6;
constexpr std::int64_t shareOfMany = 70;
constexpr std::size_t manyTasks = 60;
constexpr std::chrono::milliseconds longestOfFew{40};
constexpr std::chrono::milliseconds longestOfMany{1'400};
/// The quick start with many tasks ends when it has found nothing better for as long as it had
/// taken till then, but not before.
constexpr std::chrono::milliseconds leastOfMany{100};
/// Steps within which the quick start finds a first plan where there is an easy one, and for each
/// task; after these the engine looks for one, or proves that there is none.
constexpr std::int64_t stepsToFirst = 40'000;
constexpr std::int64_t stepsToFirstOfTask = 100;
constexpr std::int64_t stepsIfPlain = 500;
/// Share of the limits after which, without a plan, the quick start takes over again.
constexpr std::int64_t shareWithoutPlan = 60;
/// More steps than this are no limit.
constexpr std::int64_t mostShared = std::numeric_limits<std::int64_t>::max() / 100;

PlannerLimits share(PlannerLimits limits, std::int64_t percent)
{
    limits.wallClock = limits.wallClock * percent / 100;
    limits.steps = limits.steps > mostShared ? limits.steps : limits.steps * percent / 100;
    return limits;
}

/// The best schedule and the best bound of all threads; the one place where they meet.
class Incumbent
{
public:
    Incumbent(std::int64_t bound, const ProgressSink& progress)
        : bound_(bound), progress_(&progress)
    {}

    /// Is called once, on the thread that finds the first schedule.
    void whenFound(std::function<void()> found) { found_ = std::move(found); }

    /// Whether to go on searching.
    bool offer(Schedule schedule, std::int64_t stepsTaken)
    {
        const std::lock_guard lock(mutex_);
        if (best_ && *best_->cost <= *schedule.cost) {
            return *best_->cost > bound_;
        }
        if (!best_ && found_) {
            found_();
        }
        best_ = std::move(schedule);
        report(best_, stepsTaken);
        return *best_->cost > bound_;
    }
    void prove(std::int64_t bound, std::int64_t stepsTaken)
    {
        const std::lock_guard lock(mutex_);
        if (bound > bound_) {
            bound_ = bound;
            report(std::nullopt, stepsTaken);
        }
    }
    [[nodiscard]] bool isProven()
    {
        const std::lock_guard lock(mutex_);
        return best_ && *best_->cost <= bound_;
    }
    [[nodiscard]] std::int64_t bound()
    {
        const std::lock_guard lock(mutex_);
        return bound_;
    }
    [[nodiscard]] std::optional<Schedule> cheaper(std::int64_t below)
    {
        const std::lock_guard lock(mutex_);
        return best_ && *best_->cost < below ? best_ : std::nullopt;
    }
    [[nodiscard]] std::optional<Schedule> best()
    {
        const std::lock_guard lock(mutex_);
        return best_;
    }

private:
    void report(const std::optional<Schedule>& better, std::int64_t stepsTaken)
    {
        if (best_) {
            best_->bound = std::min(bound_, *best_->cost);
            best_->status =
                *best_->cost == *best_->bound ? ScheduleStatus::Optimal : ScheduleStatus::Feasible;
        }
        if (*progress_) {
            (*progress_)({better ? best_ : std::nullopt, bound_, stepsTaken});
        }
    }

    std::int64_t bound_;
    const ProgressSink* progress_;
    std::function<void()> found_;
    std::mutex mutex_;
    std::optional<Schedule> best_;
};

struct SearchResult
{
    std::vector<Unplaced> unplaced;
    std::int64_t stepsTaken = 0;
    bool over = false;
    std::optional<std::vector<std::string>> conflict; // proven infeasible
};

struct Run
{
    const Problem& problem;
    PlannerLimits limits;
    std::stop_token stop;
    Budget::Clock::time_point started;
    Incumbent& incumbent;
    exact::SharedClauses& clauses;
    ExactSearch::Work work = ExactSearch::Work::All;
    std::size_t who = 0; // of several searches
};

/// The quick start alone, all the time.
SearchResult searchQuickly(const Run& run)
{
    Budget budget(run.limits, run.stop, run.started);
    QuickStart quickStart(run.problem, budget, run.limits.seed, [&](const Schedule& schedule) {
        return run.incumbent.offer(schedule, budget.taken());
    });
    if (budget.spend(0)) {
        quickStart.run();
    }
    return {quickStart.unplaced(), budget.taken(), budget.isOver(), std::nullopt};
}

/// Only lags and counts: there the engine needs no help.
bool isPlain(const Problem& problem)
{
    return problem.ovenDemands.empty() && problem.pools.empty() && problem.cooks.empty();
}

/// A first plan soon, if there is an easy one, and a better one within a share of the limits.
SearchResult searchFirst(const Run& run)
{
    // Where few tasks are to move the engine knows better which.
    const bool staysClose = exact::isMovingDear(run.problem.costs);
    const bool many = run.problem.tasks.size() > manyTasks && !staysClose;
    PlannerLimits own = share(run.limits, many ? shareOfMany : shareOfFew);
    // What is limited by steps must not hang on the clock, or it would not be the same each time.
    const bool isByClock = run.limits.steps > mostShared;
    if (isByClock) {
        own.wallClock = std::min(own.wallClock, many ? longestOfMany : longestOfFew);
    }
    PlannerLimits first = own;
    const bool plain = isPlain(run.problem);
    const auto tasks = static_cast<std::int64_t>(run.problem.tasks.size());
    const std::int64_t toFirst = std::max(stepsToFirst, stepsToFirstOfTask * tasks);
    first.steps = std::min(own.steps, plain ? stepsIfPlain : toFirst);
    Budget budget(first, run.stop, run.started);
    QuickStart quickStart(run.problem, budget, own.seed, [&](const Schedule& schedule) {
        if (!plain) {
            budget.allow(own.steps);
        }
        if (isByClock && many) {
            using Wait = Budget::Clock::duration;
            const Wait twice = 2 * (budget.now() - run.started);
            budget.allowUntil(run.started +
                              std::min<Wait>(own.wallClock, std::max<Wait>(leastOfMany, twice)));
        }
        return run.incumbent.offer(schedule, budget.taken()) && !staysClose;
    });
    if (budget.spend(0)) {
        quickStart.run();
    }
    return {quickStart.unplaced(), budget.taken(), budget.isOver(), std::nullopt};
}

/// The engine, from the best plan there is; without one only for a share of the limits.
SearchResult searchProvingInRoom(const Run& run, SearchResult first)
{
    const auto known = run.incumbent.best();
    const bool alone = isPlain(run.problem);
    Budget budget(known || alone ? run.limits : share(run.limits, shareWithoutPlan), run.stop,
                  run.started);
    budget.spend(first.stepsTaken);
    ExactSearch search(
        run.problem, budget, run.limits.seed,
        [&](const Schedule& schedule) {
            budget.allow(run.limits.steps);
            run.incumbent.offer(schedule, budget.taken());
        },
        [&](std::int64_t bound) { run.incumbent.prove(bound, budget.taken()); });
    if (!search.isSupported()) {
        return searchQuickly(run);
    }
    if (known) {
        search.startFrom(*known);
    }
    ExactSearch::Elsewhere elsewhere;
    if (run.work != ExactSearch::Work::All) {
        elsewhere = {
            [&](std::int64_t below) { return run.incumbent.cheaper(below); },
            [&] { return run.incumbent.bound(); },
            [&](const engine::Literals& clause) { run.clauses.tell(run.who, clause); },
            [&, heard = std::size_t{0}]() mutable { return run.clauses.hear(run.who, heard); }};
    }
    search.run(run.work, std::move(elsewhere));
    if (search.isOptimal()) {
        run.incumbent.prove(*search.best()->cost, budget.taken());
    }
    SearchResult result{std::move(first.unplaced), budget.taken(), budget.isOver(), std::nullopt};
    if (search.isInfeasible()) {
        Budget rest(run.limits, run.stop, run.started);
        rest.spend(budget.taken());
        const auto conflict = exact::findConflict(run.problem, rest);
        result.conflict = conflict ? conflict->requirements : std::vector<std::string>{};
        result.stepsTaken = rest.taken();
        result.over = conflict && !conflict->minimal;
    }
    return result;
}

/// The same; if the engine would keep more than it may, that is a limit like others.
SearchResult searchProving(const Run& run, SearchResult first)
{
    const std::int64_t stepsTaken = first.stepsTaken;
    try {
        return searchProvingInRoom(run, std::move(first));
    } catch (const engine::OutOfRoom&) {
        return {{}, stepsTaken, true, std::nullopt};
    }
}

SearchResult searchExactly(const Run& run)
{
    SearchResult first = searchFirst(run);
    const auto best = run.incumbent.best();
    if (best && best->status == ScheduleStatus::Optimal) {
        first.over = false;
        return first;
    }
    SearchResult result = searchProving(run, std::move(first));
    if (!result.conflict && !run.incumbent.best() && result.over && !isPlain(run.problem)) {
        const std::int64_t steps = result.stepsTaken;
        Run rest = run;
        rest.limits.steps -= steps;
        result = searchQuickly(rest);
        result.stepsTaken += steps;
    }
    return result;
}

/// A search that may be told to end, by whoever waits for it too.
class Ending
{
public:
    explicit Ending(const std::stop_token& outer)
        : passOn_(outer, [this] { source_.request_stop(); })
    {}
    [[nodiscard]] std::stop_token token() const { return source_.get_token(); }
    void end() { source_.request_stop(); }

private:
    std::stop_source source_;
    std::stop_callback<std::function<void()>> passOn_;
};

/// One search a thread, each with a seed of its own. Alone the first one improves and proves; where
/// there is a second one, that proves as soon as there is a plan. Whichever has proven it ends all.
std::vector<SearchResult> searchAll(const Run& run)
{
    std::vector<SearchResult> results(static_cast<std::size_t>(std::max(1, run.limits.threads)));
    Ending quick(run.stop);
    Ending all(run.stop);
    run.incumbent.whenFound([&quick] { quick.end(); });
    std::vector<std::jthread> others;
    for (std::size_t i = 1; i < results.size(); ++i) {
        Run own = run;
        own.limits.seed += i * 0x51ed2701U;
        own.who = i;
        others.emplace_back([&results, &quick, &all, own, i]() mutable {
            own.stop = i == 1 ? quick.token() : all.token();
            results[i] = searchQuickly(own);
            if (i == 1 && own.incumbent.best()) {
                own.stop = all.token();
                own.work = ExactSearch::Work::Prove;
                results[i] = searchProving(own, results[i]);
                if (own.incumbent.isProven()) {
                    all.end();
                }
            }
        });
    }
    Run own = run;
    own.stop = all.token();
    if (results.size() > 1) {
        own.work = ExactSearch::Work::Improve;
    }
    results[0] = searchExactly(own);
    // Given up with a plan, it leaves the others the time that there is.
    if (!run.incumbent.best() || run.incumbent.isProven()) {
        all.end();
        quick.end();
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
    exact::SharedClauses clauses;
    const auto results = searchAll({problem, limits, std::move(stop), started, incumbent, clauses});
    for (const SearchResult& result : results) {
        outcome.stepsTaken += result.stepsTaken;
        outcome.stopped = outcome.stopped || result.over;
    }
    if (auto best = incumbent.best()) {
        outcome.schedule = *std::move(best);
        outcome.stopped = outcome.stopped && outcome.schedule.status != ScheduleStatus::Optimal;
    } else if (outcome.unplaced = results[0].unplaced; results[0].conflict) {
        outcome.schedule.status = ScheduleStatus::Infeasible;
        outcome.schedule.conflict = *results[0].conflict;
        outcome.stopped = results[0].over;
    }
    return outcome;
}

} // namespace suppertide
