// Plans a problem from a file and writes the schedule:
//     solve_problem PROBLEM.json --seconds S [--seed N] [--threads N] [--steps N]
//         [--trace] [--first]
// The schedule goes to stdout and nothing else does. --trace writes one line to stderr for each
// better schedule: milliseconds, cost; and for each better bound: "bound", milliseconds, bound.
// --first stops at the first schedule.
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <optional>
#include <span>
#include <stop_token>
#include <string>
#include <string_view>

#include "core/exchange/problem_json.h"
#include "core/planner/planner.h"

namespace suppertide {

namespace {

struct Request
{
    std::string file;
    PlannerLimits limits;
    bool trace = false;
    bool first = false;
};

std::optional<Request> parsed(std::span<char*> arguments)
{
    Request request;
    bool timed = false;
    for (std::size_t i = 1; i < arguments.size(); ++i) {
        const std::string_view name = arguments[i];
        const bool hasValue = i + 1 < arguments.size();
        if (name == "--trace") {
            request.trace = true;
        } else if (name == "--first") {
            request.first = true;
        } else if (name == "--seconds" && hasValue) {
            const double seconds = std::strtod(arguments[++i], nullptr);
            request.limits.wallClock =
                std::chrono::milliseconds{static_cast<std::int64_t>(seconds * 1000)};
            timed = true;
        } else if (name == "--steps" && hasValue) {
            request.limits.steps = std::strtoll(arguments[++i], nullptr, 10);
        } else if (name == "--seed" && hasValue) {
            request.limits.seed = std::strtoull(arguments[++i], nullptr, 10);
        } else if (name == "--threads" && hasValue) {
            request.limits.threads = static_cast<int>(std::strtol(arguments[++i], nullptr, 10));
        } else if (!name.starts_with("--") && request.file.empty()) {
            request.file = name;
        } else {
            return std::nullopt;
        }
    }
    return timed && !request.file.empty() ? std::optional{request} : std::nullopt;
}

int run(std::span<char*> arguments)
{
    const auto request = parsed(arguments);
    if (!request) {
        std::fputs("usage: solve_problem PROBLEM.json --seconds S [--seed N] [--threads N]\n",
                   stderr);
        return 2;
    }
    const auto problem = loadProblem(request->file);
    if (!problem) {
        std::fprintf(stderr, "%s\n", problem.error().forCook.c_str());
        return 2;
    }
    std::stop_source stop;
    std::optional<std::int64_t> bound;
    const auto started = std::chrono::steady_clock::now();
    const auto trace = [&](const PlannerProgress& progress) {
        const std::chrono::duration<double, std::milli> passed =
            std::chrono::steady_clock::now() - started;
        if (progress.better && request->trace) {
            std::fprintf(stderr, "%.1f %lld\n", passed.count(),
                         static_cast<long long>(*progress.better->cost));
        }
        if (progress.bound && progress.bound != bound && request->trace) {
            bound = progress.bound;
            std::fprintf(stderr, "bound %.1f %lld\n", passed.count(),
                         static_cast<long long>(*bound));
        }
        if (progress.better && request->first) {
            stop.request_stop();
        }
    };
    const PlannerOutcome outcome = solve(*problem, request->limits, stop.get_token(), trace);
    std::fputs(writeSchedule(outcome.schedule, *problem).c_str(), stdout);
    if (request->trace) {
        for (const Unplaced& unplaced : outcome.unplaced) {
            std::fprintf(stderr, "unplaced %s", problem->tasks[unplaced.task].id.c_str());
            for (const std::string& because : unplaced.because) {
                std::fprintf(stderr, " %s", because.c_str());
            }
            std::fputs("\n", stderr);
        }
        std::fprintf(stderr, "steps %lld\n", static_cast<long long>(outcome.stepsTaken));
    }
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
