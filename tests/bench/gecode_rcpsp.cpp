// Another solver on the same files, to compare with: plans problems of tasks, lags and counts
// alone.
//     gecode_rcpsp PROBLEM.json --seconds S [--tuning 1|2] [--seed N] [--threads N] [--trace]
// is called and answers as solve_problem does. Tuning 1: the task that can begin first, as early as
// it can, with edge-finding. Tuning 2: the task that failed most for its choices (accumulated
// failure count by domain size), with time-tabling, restarts and no-goods.
// Built only where Gecode is installed; nothing else needs it.
// Source: C. Schulte, G. Tack, M. Lagerkvist, Modeling and Programming with Gecode (2019).
#include <gecode/int.hh>
#include <gecode/minimodel.hh>
#include <gecode/search.hh>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "core/exchange/problem_json.h"

namespace suppertide {

namespace {

using Clock = std::chrono::steady_clock;

struct Request
{
    std::string file;
    double seconds = 0;
    int tuning = 1;
    unsigned seed = 1;
    int threads = 1;
    bool trace = false;
};

std::optional<Request> parsed(std::span<char*> arguments)
{
    Request request;
    for (std::size_t i = 1; i < arguments.size(); ++i) {
        const std::string_view name = arguments[i];
        const bool hasValue = i + 1 < arguments.size();
        if (name == "--trace") {
            request.trace = true;
        } else if (name == "--seconds" && hasValue) {
            request.seconds = std::strtod(arguments[++i], nullptr);
        } else if (name == "--tuning" && hasValue) {
            request.tuning = std::atoi(arguments[++i]);
        } else if (name == "--seed" && hasValue) {
            request.seed = static_cast<unsigned>(std::atoi(arguments[++i]));
        } else if (name == "--threads" && hasValue) {
            request.threads = std::atoi(arguments[++i]);
        } else if (!name.starts_with("--") && request.file.empty()) {
            request.file = name;
        } else {
            return std::nullopt;
        }
    }
    return request.seconds > 0 && !request.file.empty() ? std::optional{request} : std::nullopt;
}

int small(std::int64_t number)
{
    if (number > 1'000'000 || number < -1'000'000) {
        throw std::runtime_error("too large a number for this comparison");
    }
    return static_cast<int>(number);
}

void expectOnlyLagsAndCounts(const Problem& problem)
{
    bool plain = problem.pools.empty() && problem.cooks.empty() && problem.ovenDemands.empty() &&
                 problem.choices.empty() && problem.costs.before.empty();
    for (const Demand& demand : problem.demands) {
        plain = plain && demand.from == TaskPoint{demand.to.task, Edge::Start} &&
                demand.to.edge == Edge::End;
    }
    if (!plain) {
        throw std::runtime_error("only tasks, lags and counts of whole tasks can be compared");
    }
}

class Project : public Gecode::IntMinimizeSpace
{
public:
    Project(const Problem& problem, const Request& request)
        : starts_(*this, static_cast<int>(problem.tasks.size()), 0,
                  small(minuteOf(problem.horizon))),
          cost_(*this, 0, 10'000'000)
    {
        for (const TaskIndex index : problem.tasks.indices()) {
            const Task& task = problem.tasks[index];
            Gecode::dom(*this, start(index), small(minuteOf(task.window.start)),
                        small(minuteOf(task.window.end) - task.duration.count()));
        }
        addLags(problem);
        addCounts(problem, request.tuning);
        if (request.tuning == 1) {
            Gecode::branch(*this, starts_, Gecode::INT_VAR_MIN_MIN(), Gecode::INT_VAL_MIN());
        } else {
            Gecode::Rnd dice(request.seed);
            Gecode::branch(
                *this, starts_,
                Gecode::tiebreak(Gecode::INT_VAR_AFC_SIZE_MAX(0.99), Gecode::INT_VAR_RND(dice)),
                Gecode::INT_VAL_MIN());
        }
    }
    Project(Project& other) : IntMinimizeSpace(other)
    {
        starts_.update(*this, other.starts_);
        cost_.update(*this, other.cost_);
    }
    Gecode::Space* copy() override { return new Project(*this); }
    [[nodiscard]] Gecode::IntVar cost() const override { return cost_; }
    [[nodiscard]] int startOf(std::size_t task) const
    {
        return starts_[static_cast<int>(task)].val();
    }

private:
    Gecode::IntVar start(TaskIndex task) { return starts_[static_cast<int>(task.value())]; }
    /// time(to) − time(from) = start(to) − start(from) + this.
    static int offset(const Problem& problem, const Lag& lag)
    {
        const auto of = [&](const TaskPoint& point) {
            return point.edge == Edge::End ? problem.tasks[point.task].duration.count() : 0;
        };
        return small(of(lag.to) - of(lag.from));
    }
    void addLags(const Problem& problem)
    {
        std::vector<std::int64_t> weights(problem.tasks.size(), 0);
        std::int64_t fixed = 0;
        for (const Lag& lag : problem.lags) {
            const Gecode::IntVarArgs both{start(lag.to.task), start(lag.from.task)};
            const Gecode::IntArgs difference{1, -1};
            const int plus = offset(problem, lag);
            if (lag.min) {
                const int least = small(lag.min->count());
                Gecode::linear(*this, difference, both, Gecode::IRT_GQ, least - plus);
                weights[lag.to.task.value()] += lag.loss;
                weights[lag.from.task.value()] -= lag.loss;
                fixed += lag.loss * (plus - least);
            }
            if (lag.max) {
                Gecode::linear(*this, difference, both, Gecode::IRT_LQ,
                               small(lag.max->count()) - plus);
            }
        }
        Gecode::IntArgs factors{-1};
        Gecode::IntVarArgs sum{cost_};
        for (const TaskIndex task : problem.tasks.indices()) {
            factors << small(weights[task.value()]);
            sum << start(task);
        }
        Gecode::linear(*this, factors, sum, Gecode::IRT_EQ, small(-fixed));
    }
    void addCounts(const Problem& problem, int tuning)
    {
        for (const CountIndex count : problem.counts.indices()) {
            Gecode::IntVarArgs starts;
            Gecode::IntArgs lengths;
            Gecode::IntArgs amounts;
            for (const Demand& demand : problem.demands) {
                const std::int64_t duration = problem.tasks[demand.from.task].duration.count();
                if (demand.count == count && demand.amount > 0 && duration > 0) {
                    starts << start(demand.from.task);
                    lengths << small(duration);
                    amounts << small(demand.amount);
                }
            }
            Gecode::cumulative(*this, small(problem.counts[count].capacity), starts, lengths,
                               amounts,
                               tuning == 1 ? Gecode::IPL_BASIC_ADVANCED : Gecode::IPL_BASIC);
        }
    }

    Gecode::IntVarArray starts_;
    Gecode::IntVar cost_;
};

template <typename Engine>
Schedule searched(const Problem& problem, const Request& request, Engine& engine,
                  Clock::time_point started)
{
    Schedule best = emptyScheduleFor(problem);
    while (Project* found = engine.next()) {
        best.status = ScheduleStatus::Feasible;
        best.cost = found->cost().val();
        for (const TaskIndex task : problem.tasks.indices()) {
            best.starts[task] = planTime(found->startOf(task.value()));
        }
        delete found; // NOLINT(cppcoreguidelines-owning-memory): as Gecode hands it over
        if (request.trace) {
            const std::chrono::duration<double, std::milli> passed = Clock::now() - started;
            std::fprintf(stderr, "%.1f %lld\n", passed.count(), static_cast<long long>(*best.cost));
        }
    }
    if (!engine.stopped()) {
        best.status = best.cost ? ScheduleStatus::Optimal : ScheduleStatus::Infeasible;
        best.bound = best.cost;
    }
    return best;
}

int run(std::span<char*> arguments)
{
    const auto request = parsed(arguments);
    if (!request) {
        std::fputs("usage: gecode_rcpsp PROBLEM.json --seconds S [--tuning 1|2]\n", stderr);
        return 2;
    }
    const auto problem = loadProblem(request->file);
    if (!problem) {
        std::fprintf(stderr, "%s\n", problem.error().forCook.c_str());
        return 2;
    }
    expectOnlyLagsAndCounts(*problem);
    const auto started = Clock::now();
    Gecode::Search::Options options;
    Gecode::Search::TimeStop stop(static_cast<unsigned long>(request->seconds * 1000));
    options.stop = &stop;
    options.threads = request->threads;
    Project project(*problem, *request);
    Schedule schedule;
    if (request->tuning == 1) {
        Gecode::BAB<Project> engine(&project, options);
        schedule = searched(*problem, *request, engine, started);
    } else {
        options.cutoff = Gecode::Search::Cutoff::luby(100);
        options.nogoods_limit = 128;
        Gecode::RBS<Project, Gecode::BAB> engine(&project, options);
        schedule = searched(*problem, *request, engine, started);
    }
    std::fputs(writeSchedule(schedule, *problem).c_str(), stdout);
    return 0;
}

} // namespace

} // namespace suppertide

int main(int argc, char** argv)
{
    try {
        return suppertide::run({argv, static_cast<std::size_t>(argc)});
    } catch (const std::exception& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return 1;
    }
}
