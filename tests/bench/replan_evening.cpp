// Plans an evening, then moves steps by hand as a host might and plans the rest again with the
// least change, and says how long that took:
// replan_evening [--moves N] [--limit MS] [--problems PREFIX] OCCASION FILE…
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <random>
#include <span>
#include <string>

#include "core/exchange/exchange.h"
#include "core/exchange/problem_json.h"
#include "core/plan/lay_out.h"
#include "core/plan/plan_change.h"
#include "core/plan/seen_step.h"
#include "core/propose/make_plan.h"
#include "tests/bench/bench_input.h"

namespace suppertide {

namespace {

using SteadyClock = std::chrono::steady_clock;

/// By when a first plan should be there, in ms.
constexpr double soonMs = 300;

struct Wanted
{
    std::string occasion;
    std::string problems; // where the problems of unfinished moves are written; empty: nowhere
    int moves = 12;
    int limitMs = 2000;
    std::vector<std::string> files;
};

Wanted wantedFrom(std::span<char*> words)
{
    Wanted wanted;
    for (std::size_t i = 1; i < words.size(); ++i) {
        const std::string word = words[i];
        const bool hasValue = i + 1 < words.size();
        if (word == "--moves" && hasValue) {
            wanted.moves = std::atoi(words[++i]);
        } else if (word == "--limit" && hasValue) {
            wanted.limitMs = std::atoi(words[++i]);
        } else if (word == "--problems" && hasValue) {
            wanted.problems = words[++i];
        } else if (wanted.occasion.empty()) {
            wanted.occasion = word;
        } else {
            wanted.files.push_back(word);
        }
    }
    return wanted;
}

double since(SteadyClock::time_point begin)
{
    return std::chrono::duration<double, std::milli>(SteadyClock::now() - begin).count();
}

/// Steps that a host would take hold of: those with hands or in the oven.
std::vector<TaskIndex> steps(const Plan& plan)
{
    std::vector<TaskIndex> all;
    for (const TaskIndex task : plan.formulation->problem.tasks.indices()) {
        if (plan.interval(task) && seenStepOf(plan.formulation->tasks[task])) {
            all.push_back(task);
        }
    }
    return all;
}

class Bench
{
public:
    Bench(Wanted wanted, PlanInput input) : wanted_(std::move(wanted)), input_(std::move(input)) {}

    int run()
    {
        PlanRequest request{input_, {}, 0};
        request.limits.wallClock = std::chrono::seconds(10);
        const auto outcome = makePlan(request);
        const auto* found = outcome ? std::get_if<PlanFound>(&*outcome) : nullptr;
        if (found == nullptr) {
            std::cerr << "no plan to begin with\n";
            return 1;
        }
        std::cout << fmt::format("{} tasks; plan costs {}, bound {}\n",
                                 found->plan->formulation->problem.tasks.size(),
                                 found->plan->figures.cost.total(), found->bound.value_or(-1));
        std::mt19937 random{7}; // NOLINT(bugprone-random-generator-seed): the same each time
        const std::vector<TaskIndex> all = steps(*found->plan);
        for (int move = 0; move < wanted_.moves; ++move) {
            const TaskIndex task = all[random() % all.size()];
            const Minutes by{5 * (1 + static_cast<int>(random() % 24)) * (random() % 2 ? 1 : -1)};
            moveAndReplan(*found->plan, task, by, move);
        }
        return 0;
    }

private:
    void moveAndReplan(const Plan& plan, TaskIndex task, Minutes by, int number)
    {
        const Formulation& formulation = *plan.formulation;
        const Schedule moved = moveTask(formulation, *input_.layout, plan.schedule, task,
                                        plan.interval(task)->start + by);
        const Layout layout = layoutOf(formulation, moved, *input_.layout);
        PlanRequest request{input_, {}, 0};
        request.input.layout = std::make_shared<const Layout>(layout);
        request.input.closeness = Closeness::LeastChange;
        request.input.held = {formulation.problem.tasks[task].id};
        request.limits.wallClock = std::chrono::milliseconds(wanted_.limitMs);
        const auto again = formulate(request.input);
        const PlanPtr laid = judgePlan(*again, request.input, layOut(**again, layout));
        double first = -1;
        std::string soon = "-";
        double last = -1;
        const auto begin = SteadyClock::now();
        const auto outcome = makePlan(request, {}, [&](const PlanProgress& progress) {
            if (progress.better) {
                last = since(begin);
                first = first < 0 ? last : first;
                if (last < soonMs) {
                    const PlanChange change = changeBetween(*laid, *progress.better);
                    soon =
                        fmt::format("{} move, {} other way", change.moved.size(), change.otherWay);
                }
            }
        });
        const double all = since(begin);
        std::string what = "no plan";
        if (const auto* found = std::get_if<PlanFound>(&*outcome)) {
            const PlanChange change = changeBetween(*laid, *found->plan);
            const std::int64_t cost = found->plan->figures.cost.total();
            what = fmt::format("{} move, at most {} min, {} other way; cost {}, bound {}{}",
                               change.moved.size(), change.most().count(), change.otherWay, cost,
                               found->bound.value_or(-1), found->bound == cost ? " proven" : "");
        } else if (const auto* none = std::get_if<NoPlan>(&*outcome)) {
            what = none->isProven ? "proven impossible" : "nothing found";
        }
        std::cout << fmt::format("{:2} {:40.40} {:+4} min, {} clashes: first {:6.0f} ms, last "
                                 "{:6.0f}, all {:6.0f}: at {} ms {}; {}\n",
                                 number, formulation.problem.tasks[task].id, by.count(),
                                 laid->clashes.size(), first, last, all, soonMs, soon, what);
        if (!wanted_.problems.empty() && all > soonMs) {
            std::ofstream(fmt::format("{}{}.json", wanted_.problems, number))
                << writeProblem((*again)->problem);
        }
    }

    Wanted wanted_;
    PlanInput input_;
};

} // namespace

} // namespace suppertide

int main(int argc, char** argv)
{
    using namespace suppertide;
    Wanted wanted = wantedFrom({argv, static_cast<std::size_t>(argc)});
    const auto state = bench::stateFrom(wanted.files);
    if (!state) {
        std::cerr << state.error().forCook << "\n";
        return 2;
    }
    const PlanInput input = bench::inputFrom(*state, wanted.occasion);
    return Bench(std::move(wanted), input).run();
}
