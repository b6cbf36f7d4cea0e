// Formulates, lays out, judges and plans an occasion from exchange files and says how long each
// took: plan_evening [--seconds S] [--problem OUT.json] OCCASION FILE…
#include <fmt/format.h>

#include <chrono>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <span>
#include <string>

#include "core/exchange/exchange.h"
#include "core/exchange/problem_json.h"
#include "core/plan/lay_out.h"
#include "core/propose/make_plan.h"
#include "core/wording/wording.h"
#include "tests/bench/bench_input.h"

namespace suppertide {

namespace {

using SteadyClock = std::chrono::steady_clock;

template <typename Body>
auto timed(const char* what, Body body)
{
    const auto begin = SteadyClock::now();
    auto result = body();
    const auto took = std::chrono::duration<double, std::milli>(SteadyClock::now() - begin).count();
    std::cout << fmt::format("{}: {:.2f} ms\n", what, took);
    return result;
}

struct Wanted
{
    std::string occasion;
    std::string problemFile;
    int seconds = 5;
    std::vector<std::string> files;
};

Wanted wantedFrom(std::span<char*> words)
{
    Wanted wanted;
    for (std::size_t i = 1; i < words.size(); ++i) {
        const std::string word = words[i];
        if (word == "--seconds" && i + 1 < words.size()) {
            wanted.seconds = std::atoi(words[++i]);
        } else if (word == "--problem" && i + 1 < words.size()) {
            wanted.problemFile = words[++i];
        } else if (wanted.occasion.empty()) {
            wanted.occasion = word;
        } else {
            wanted.files.push_back(word);
        }
    }
    return wanted;
}

void show(const char* title, const Plan& plan, const Occasion& occasion)
{
    std::cout << "== " << title << ": " << plan.clashes.size() << " clashes, cost "
              << plan.figures.cost.total() << ", sessions " << plan.figures.sessions
              << ", oven changes " << plan.figures.ovenChanges << ", last hour "
              << plan.figures.handsOnLastHour.count() << " min, at table "
              << plan.figures.handsOnAtTable.count() << " min\n";
    for (const Clash& clash : plan.clashes) {
        std::cout << "  " << sentence(plan, occasion, clash) << "\n";
        for (const std::string& name : clash.broken) {
            std::cout << "      " << name << "\n";
        }
    }
}

void showTasks(const Plan& plan)
{
    std::vector<TaskIndex> order;
    for (const TaskIndex task : plan.formulation->problem.tasks.indices()) {
        if (plan.interval(task) && plan.formulation->problem.tasks[task].duration.count() > 0 &&
            plan.formulation->tasks[task].role != TaskRole::Watch) {
            order.push_back(task);
        }
    }
    std::stable_sort(order.begin(), order.end(), [&](TaskIndex a, TaskIndex b) {
        return plan.interval(a)->start < plan.interval(b)->start;
    });
    for (const TaskIndex task : order) {
        const PlanCalendar& calendar = plan.formulation->calendar;
        std::cout << fmt::format("{}  {:4}  {}\n",
                                 toIso(calendar.civil(plan.interval(task)->start)),
                                 plan.formulation->problem.tasks[task].duration.count(),
                                 plan.formulation->problem.tasks[task].id);
    }
}

int run(const Wanted& wanted)
{
    const auto state = bench::stateFrom(wanted.files);
    if (!state) {
        std::cerr << state.error().forCook << "\n";
        return 2;
    }
    const PlanInput input = bench::inputFrom(*state, wanted.occasion);
    const auto formulation = timed("formulate", [&] { return formulate(input); });
    if (!formulation) {
        std::cerr << formulation.error().forCook << "\n";
        return 2;
    }
    const Problem& problem = (*formulation)->problem;
    std::cout << fmt::format("{} tasks, {} lags, {} demands, {} oven demands, {} choices\n",
                             problem.tasks.size(), problem.lags.size(), problem.demands.size(),
                             problem.ovenDemands.size(), problem.choices.size());
    if (!wanted.problemFile.empty()) {
        std::ofstream(wanted.problemFile) << writeProblem(problem);
    }
    const Schedule laid = timed("layOut", [&] { return layOut(**formulation, *input.layout); });
    const PlanPtr byHand = timed("judgePlan", [&] { return judgePlan(*formulation, input, laid); });
    show("laid out", *byHand, *input.occasion);
    PlanRequest request{input, {}, 0};
    request.limits.wallClock = std::chrono::seconds(wanted.seconds);
    const auto begin = SteadyClock::now();
    const auto outcome = makePlan(request, {}, [&](const PlanProgress& progress) {
        if (progress.better) {
            std::cout << fmt::format(
                "  {:.2f} s: cost {}\n",
                std::chrono::duration<double>(SteadyClock::now() - begin).count(),
                progress.better->figures.cost.total());
        }
    });
    if (const auto* found = std::get_if<PlanFound>(&*outcome)) {
        show("planned", *found->plan, *input.occasion);
        showTasks(*found->plan);
        return 0;
    }
    if (const auto* none = std::get_if<NoPlan>(&*outcome)) {
        std::cout << "no plan, proven " << none->isProven << "\n";
        for (const std::string& name : none->conflict) {
            std::cout << "  " << name << "\n";
        }
        for (const Unplaced& unplaced : none->unplaced) {
            std::cout << "  "
                      << unplacedSentence(*none->formulation, unplaced.task, unplaced.because)
                      << " [" << problem.tasks[unplaced.task].id;
            for (const std::string& why : unplaced.because) {
                std::cout << " " << why;
            }
            std::cout << "]\n";
        }
    }
    return 1;
}

} // namespace

} // namespace suppertide

int main(int argc, char** argv)
{
    return suppertide::run(suppertide::wantedFrom(std::span(argv, static_cast<std::size_t>(argc))));
}
