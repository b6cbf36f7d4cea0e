// What the demo's evening costs on the interface thread: opening it, one move of a dragged step,
// a variant over another course, and the paint that follows.
#include <QApplication>

#include <benchmark/benchmark.h>

#include <algorithm>

#include "core/plan/live_plan.h"
#include "tests/bench/window_bench.h"
#include "tests/support/demo_evening.h"
#include "ui/models/clash_items.h"
#include "ui/models/layout_edits.h"
#include "ui/models/repertoire.h"
#include "ui/timeline/timeline_view.h"

using namespace suppertide;           // NOLINT(google-build-using-namespace): a program
using namespace suppertide::ui;       // NOLINT(google-build-using-namespace)
using namespace suppertide::ui::test; // NOLINT(google-build-using-namespace)

namespace {

constexpr const char* draggedStep = "roots";

/// The last step of the roots that stands in an oven or with a cook.
TaskIndex dragged(const LaidOut& evening)
{
    const Formulation& formulation = *evening.plan->formulation;
    TaskIndex last{0};
    for (const TaskIndex task : formulation.problem.tasks.indices()) {
        const auto when = evening.plan->interval(task);
        const bool isStep = formulation.tasks[task].role == TaskRole::Step &&
                            formulation.tasks[task].dish == DishId{draggedStep};
        if (isStep && when && when->end > when->start) {
            last = task;
        }
    }
    return last;
}

void formulateLayOutAndJudge(benchmark::State& state)
{
    const LaidOut evening(demoLibrary());
    const PlanInput input = evening.input();
    for (auto step : state) {
        benchmark::DoNotOptimize(laidOutPlan(input, 0));
    }
}
BENCHMARK(formulateLayOutAndJudge)->Unit(benchmark::kMillisecond);

void previewOfAMove(benchmark::State& state)
{
    const LaidOut evening(demoLibrary());
    const PlanInput input = evening.input();
    const TaskIndex task = dragged(evening);
    const PlanTime start = evening.plan->interval(task)->start - 15_min;
    LivePlan live(evening.plan, input);
    for (auto step : state) {
        live.move(task, start);
        benchmark::DoNotOptimize(live.plan());
    }
}
BENCHMARK(previewOfAMove)->Unit(benchmark::kMillisecond);

void scene(benchmark::State& state)
{
    const LaidOut evening(demoLibrary());
    const SceneSource source = evening.source();
    for (auto step : state) {
        benchmark::DoNotOptimize(sceneOfPlan(source));
    }
}
BENCHMARK(scene)->Unit(benchmark::kMillisecond);

void marksOfADrag(benchmark::State& state)
{
    const LaidOut evening(demoLibrary());
    const SceneSource source = evening.source();
    const Scene plain = sceneOfPlan(source);
    const TaskIndex task = dragged(evening);
    for (auto step : state) {
        Scene marked = plain;
        addDragMarks(marked, source, task);
        benchmark::DoNotOptimize(marked);
    }
}
BENCHMARK(marksOfADrag)->Unit(benchmark::kMillisecond);

void slackOfAChosenStep(benchmark::State& state)
{
    const LaidOut evening(demoLibrary());
    const SceneSource source = evening.source();
    const Scene plain = sceneOfPlan(source);
    const TaskIndex task = dragged(evening);
    for (auto step : state) {
        Scene chosen = plain;
        addSlack(chosen, source, task);
        benchmark::DoNotOptimize(chosen);
    }
}
BENCHMARK(slackOfAChosenStep)->Unit(benchmark::kMillisecond);

void variantOverACourse(benchmark::State& state)
{
    const LaidOut evening(demoLibrary());
    for (auto step : state) {
        const auto drop = variantDrop(evening.library, {"braised-fennel", {}}, 3);
        const LaidOut after(drop->next);
        benchmark::DoNotOptimize(ghostScene(after.source(), *evening.plan, *drop));
    }
}
BENCHMARK(variantOverACourse)->Unit(benchmark::kMillisecond);

void listOfClashes(benchmark::State& state)
{
    const LaidOut first(demoLibrary("midsummer-supper-first-idea"));
    for (auto step : state) {
        benchmark::DoNotOptimize(clashRows(*first.plan, first.occasion(), {}));
    }
}
BENCHMARK(listOfClashes)->Unit(benchmark::kMillisecond);

void cardsOfTheRepertoire(benchmark::State& state)
{
    const LaidOut evening(demoLibrary());
    Repertoire repertoire;
    for (auto step : state) {
        benchmark::DoNotOptimize(
            repertoire.cards(evening.library, evening.looks, RepertoireSearch::parse("no nuts")));
    }
}
BENCHMARK(cardsOfTheRepertoire)->Unit(benchmark::kMillisecond);

/// All that happens between a move of the pointer and the picture that answers it.
void wholeMoveWithPaint(benchmark::State& state)
{
    const LaidOut evening(demoLibrary());
    const PlanInput input = evening.input();
    const TaskIndex task = dragged(evening);
    const PlanTime start = evening.plan->interval(task)->start;
    TimelineView view(makeTheme(Appearance::Light));
    view.resize(1334, 803); // the timeline of a window of 1920 × 1080
    view.setScene(sceneOfPlan(evening.source()));
    view.show();
    view.showTime({start - 4_h, start + 4_h});
    QCoreApplication::processEvents();
    LivePlan live(evening.plan, input);
    bool isEarlier = false;
    for (auto step : state) {
        isEarlier = !isEarlier;
        SceneSource source = evening.source();
        live.move(task, isEarlier ? start - 15_min : start);
        source.plan = live.plan();
        Scene moved = sceneOfPlan(source);
        addDragMarks(moved, source, task);
        view.setScene(std::move(moved));
        QCoreApplication::processEvents();
    }
}
BENCHMARK(wholeMoveWithPaint)->Unit(benchmark::kMillisecond);

void wholeRepaint(benchmark::State& state)
{
    const LaidOut evening(demoLibrary());
    TimelineView view(makeTheme(Appearance::Light));
    view.resize(1334, 803);
    view.setScene(sceneOfPlan(evening.source()));
    view.show();
    QCoreApplication::processEvents();
    for (auto step : state) {
        view.repaint();
    }
}
BENCHMARK(wholeRepaint)->Unit(benchmark::kMillisecond);

} // namespace

int main(int argc, char** argv)
{
    return suppertide::bench::runInWindow(argc, argv);
}
