// How long it takes to judge a whole plan of the demo, and to judge it anew at each move of the
// mouse while a step is dragged: drag_bench OCCASION FILE… [--benchmark_…].
#include <benchmark/benchmark.h>

#include <cstdlib>
#include <iostream>
#include <string>
#include <vector>

#include "core/exchange/exchange.h"
#include "core/plan/lay_out.h"
#include "core/plan/live_plan.h"
#include "tests/bench/bench_input.h"

namespace suppertide {

namespace {

struct Case
{
    PlanInput input;
    FormulationPtr formulation;
    PlanPtr plan;
    TaskIndex task;
};

Case caseFrom(const LibraryState& state, const std::string& occasion)
{
    Case made;
    made.input = bench::inputFrom(state, occasion);
    made.formulation = formulate(made.input).value();
    made.plan =
        judgePlan(made.formulation, made.input, layOut(*made.formulation, *made.input.layout));
    made.task = made.formulation->taskById.at("gratin/*/bake");
    return made;
}

/// To and fro over two hours, minute by minute.
PlanTime dragged(const Case& made, std::int64_t move)
{
    constexpr std::int64_t span = 120;
    const std::int64_t at = move % (2 * span);
    return *made.plan->schedule.starts[made.task] - Minutes{at < span ? at : 2 * span - at};
}

void judgeWholePlan(benchmark::State& state, const Case& made)
{
    for ([[maybe_unused]] const auto tick : state) {
        benchmark::DoNotOptimize(judgePlan(made.formulation, made.input, made.plan->schedule));
    }
}

void dragAndJudgeAll(benchmark::State& state, const Case& made)
{
    std::int64_t move = 0;
    for ([[maybe_unused]] const auto tick : state) {
        benchmark::DoNotOptimize(
            judgePlan(made.formulation, made.input,
                      moveTask(*made.formulation, *made.input.layout, made.plan->schedule,
                               made.task, dragged(made, ++move))));
    }
}

void dragLive(benchmark::State& state, const Case& made)
{
    LivePlan live(made.plan, made.input);
    std::int64_t move = 0;
    for ([[maybe_unused]] const auto tick : state) {
        benchmark::DoNotOptimize(live.move(made.task, dragged(made, ++move)));
    }
}

int run(int argc, char** argv)
{
    benchmark::Initialize(&argc, argv);
    if (argc < 3) {
        std::cerr << "drag_bench OCCASION FILE…\n";
        return 2;
    }
    const Result<LibraryState> state = bench::stateFrom({argv + 2, argv + argc});
    if (!state) {
        std::cerr << state.error().forCook << "\n";
        return 2;
    }
    const Case made = caseFrom(*state, argv[1]);
    benchmark::RegisterBenchmark("judge a whole plan", judgeWholePlan, made);
    benchmark::RegisterBenchmark("drag, judged as a whole", dragAndJudgeAll, made);
    benchmark::RegisterBenchmark("drag, judged live", dragLive, made);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}

} // namespace

} // namespace suppertide

int main(int argc, char** argv)
{
    return suppertide::run(argc, argv);
}
