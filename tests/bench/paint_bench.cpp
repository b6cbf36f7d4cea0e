// What the timeline costs on the interface thread: a frame of a drag, and whole repaints, at 250
// blocks and at sizes around it. All in memory, by the raster painter that the screen uses.
#include <QApplication>
#include <QImage>
#include <QMouseEvent>
#include <QPainter>

#include <benchmark/benchmark.h>

#include "tests/bench/window_bench.h"
#include "tests/support/timeline/example_scene.h"
#include "ui/timeline/painter.h"
#include "ui/timeline/pleats.h"
#include "ui/timeline/timeline_view.h"

using namespace suppertide;           // NOLINT(google-build-using-namespace): a program
using namespace suppertide::ui;       // NOLINT(google-build-using-namespace)
using namespace suppertide::ui::test; // NOLINT(google-build-using-namespace)

namespace {

constexpr QSize large{1334, 803}; // the timeline of a window of 1920 × 1080

const Interval evening{at(Day::Saturday, 14), at(Day::Saturday, 22)};

/// One block under the pointer, moved five minutes on and back.
class DraggedTimeline
{
public:
    explicit DraggedTimeline(int blocks) : view_(makeTheme(Appearance::Light))
    {
        view_.resize(large);
        view_.setScene(crowdedScene(blocks));
        view_.show();
        view_.showTime(evening);
        const Geometry& geometry = view_.state().geometry();
        for (const BlockShape& shape : geometry.blocks()) {
            const SceneBlock& block = view_.state().scene().blocks[shape.block];
            if (block.id == "peel") {
                at_ = QPointF{shape.left + 20, (shape.top + shape.bottom) / 2}.toPoint();
            }
        }
        send(QEvent::MouseButtonPress, at_);
        send(QEvent::MouseMove, at_ + QPoint{30, 0});
        settle();
    }
    ~DraggedTimeline() { send(QEvent::MouseButtonRelease, at_); }
    DraggedTimeline(const DraggedTimeline&) = delete;
    DraggedTimeline& operator=(const DraggedTimeline&) = delete;
    DraggedTimeline(DraggedTimeline&&) = delete;
    DraggedTimeline& operator=(DraggedTimeline&&) = delete;

    /// A move of the pointer, the answer of the owner, and the paint that follows.
    void frame()
    {
        isFurther_ = !isFurther_;
        send(QEvent::MouseMove, at_ + QPoint{isFurther_ ? 60 : 30, 0});
        settle();
    }
    TimelineView& view() { return view_; }

private:
    void send(QEvent::Type type, const QPoint& place)
    {
        const bool isMove = type == QEvent::MouseMove;
        QMouseEvent event{type,
                          place,
                          view_.mapToGlobal(place),
                          isMove ? Qt::NoButton : Qt::LeftButton,
                          type == QEvent::MouseButtonRelease ? Qt::NoButton : Qt::LeftButton,
                          Qt::NoModifier};
        QCoreApplication::sendEvent(&view_, &event);
    }
    static void settle()
    {
        QCoreApplication::sendPostedEvents();
        QCoreApplication::processEvents();
    }

    TimelineView view_;
    QPoint at_;
    bool isFurther_ = false;
};

void dragFrame(benchmark::State& state)
{
    DraggedTimeline timeline{static_cast<int>(state.range(0))};
    for (auto step : state) {
        timeline.frame();
    }
}
BENCHMARK(dragFrame)->Arg(100)->Arg(250)->Arg(1000)->Unit(benchmark::kMillisecond);

/// As dragFrame, the owner answering each move with a scene of its own, made from the plan anew.
void dragFrameWithAnswer(benchmark::State& state)
{
    DraggedTimeline timeline{static_cast<int>(state.range(0))};
    TimelineView& view = timeline.view();
    QObject::connect(&view, &TimelineView::dragMoved, &view,
                     [&](const QString& id, PlanTime start) {
                         view.setScene(view.state().withBlockAt(id.toStdString(), start));
                     });
    for (auto step : state) {
        timeline.frame();
    }
}
BENCHMARK(dragFrameWithAnswer)->Arg(250)->Unit(benchmark::kMillisecond);

struct WholeTimeline
{
    explicit WholeTimeline(int blocks, double scale)
        : scene(crowdedScene(blocks)), theme(makeTheme(Appearance::Light)),
          image(large * scale, QImage::Format_RGB32)
    {
        image.setDevicePixelRatio(scale);
        Viewport viewport;
        viewport.width = large.width();
        viewport.height = large.height() - 40;
        viewport.longestName = longestLaneName(scene, theme, texts);
        const auto pleats = pleatsOf(scene);
        geometry = Geometry{scene, showing(scene, viewport, pleats, evening), pleats};
        flags = flagsOf(scene, geometry, theme, texts);
    }
    void paint()
    {
        QPainter painter{&image};
        paintTimeline(painter, {scene, geometry, theme, marks, flags}, texts,
                      QRectF{QPointF{}, QSizeF{large}});
    }

    Scene scene;
    Theme theme;
    QImage image;
    TextCache texts;
    Geometry geometry;
    Marks marks;
    std::vector<Flag> flags;
};

void wholeRepaint(benchmark::State& state)
{
    WholeTimeline timeline{static_cast<int>(state.range(0)), static_cast<double>(state.range(1))};
    for (auto step : state) {
        timeline.paint();
    }
}
BENCHMARK(wholeRepaint)
    ->ArgNames({"blocks", "scale"})
    ->Args({250, 1})
    ->Args({250, 2})
    ->Args({1000, 1})
    ->Unit(benchmark::kMillisecond);

void geometryOfScene(benchmark::State& state)
{
    const Scene scene = crowdedScene(static_cast<int>(state.range(0)));
    Viewport viewport;
    viewport.width = large.width();
    viewport.height = large.height();
    const auto pleats = pleatsOf(scene);
    for (auto step : state) {
        benchmark::DoNotOptimize(Geometry{scene, viewport, pleats});
    }
}
BENCHMARK(geometryOfScene)->Arg(250)->Arg(1000)->Unit(benchmark::kMillisecond);

} // namespace

int main(int argc, char** argv)
{
    return suppertide::bench::runInWindow(argc, argv);
}
