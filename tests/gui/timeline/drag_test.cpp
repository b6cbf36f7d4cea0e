#include "tests/gui/timeline/timeline_window.h"
#include "ui/timeline/pleats.h"

namespace suppertide::ui {
namespace {

using test::at;
using test::Day;
using test::timeIn;

class Dragging : public test::TimelineWindow
{
protected:
    QSignalSpy started_{&view_, &TimelineView::dragStarted};
    QSignalSpy moved_{&view_, &TimelineView::dragMoved};
    QSignalSpy dropped_{&view_, &TimelineView::dropped};
    QSignalSpy cancelled_{&view_, &TimelineView::dragCancelled};
};

TEST_F(Dragging, TellsOfItsStartOfEveryMoveAndOfTheDrop)
{
    const QPoint from = on("peel", "jory");
    const QPoint by{pixels(30_min), 0};
    drag(from, by);
    ASSERT_EQ(started_.count(), 1);
    EXPECT_EQ(started_.first().first().toString(), "peel");
    EXPECT_GE(moved_.count(), 3);
    EXPECT_EQ(dropped_.count(), 0);
    release(from + by);
    ASSERT_EQ(dropped_.count(), 1);
    EXPECT_EQ(dropped_.first().first().toString(), "peel");
    EXPECT_EQ(timeIn(dropped_.first(), 1), at(Day::Saturday, 17, 50));
    EXPECT_EQ(cancelled_.count(), 0);
}

TEST_F(Dragging, ShowsTheBlockWhereItIsDraggedThoughNobodyAnswers)
{
    drag(on("peel", "jory"), {pixels(30_min), 0});
    EXPECT_EQ(findBlock(view_.state().scene(), "peel")->start, at(Day::Saturday, 17, 50));
}

TEST_F(Dragging, ShowsThePreviewThatTheOwnerAnswersWith)
{
    QObject::connect(&view_, &TimelineView::dragMoved, &view_,
                     [this](const QString& id, PlanTime start) {
                         Scene preview = view_.state().withBlockAt(id.toStdString(), start);
                         preview.clashes.clear();
                         view_.setScene(preview);
                     });
    drag(on("peel", "jory"), {pixels(30_min), 0});
    EXPECT_TRUE(view_.state().scene().clashes.empty());
}

TEST_F(Dragging, LeavesThePlanAsItWasAfterEsc)
{
    const Scene before = view_.state().scene();
    const QPoint from = on("peel", "jory");
    drag(from, {pixels(30_min), 0});
    QTest::keyClick(&view_, Qt::Key_Escape);
    EXPECT_EQ(cancelled_.count(), 1);
    EXPECT_EQ(view_.state().scene(), before);
    release(from + QPoint{pixels(30_min), 0});
    EXPECT_EQ(dropped_.count(), 0);
}

TEST_F(Dragging, DropsNothingWhereItWasPickedUp)
{
    const Scene before = view_.state().scene();
    const QPoint from = on("peel", "jory");
    drag(from, {pixels(30_min), 0});
    moveTo(from, Qt::NoModifier);
    release(from);
    EXPECT_EQ(dropped_.count(), 0);
    EXPECT_EQ(cancelled_.count(), 1);
    EXPECT_EQ(view_.state().scene(), before);
}

TEST_F(Dragging, SnapsToFiveMinutesAndWithAltToOne)
{
    view_.zoomTo(ZoomStop::QuarterHours);
    view_.showTime({at(Day::Saturday, 17), at(Day::Saturday, 18)});
    const QPoint from = on("peel", "jory");
    drag(from, {pixels(13_min), 0});
    EXPECT_EQ(timeIn(moved_.last(), 1), at(Day::Saturday, 17, 35));
    moveTo(from + QPoint{pixels(13_min), 0}, Qt::AltModifier);
    EXPECT_EQ(timeIn(moved_.last(), 1), at(Day::Saturday, 17, 33));
}

TEST_F(Dragging, BeginsOnlyAfterSomePixels)
{
    const QPoint from = on("peel", "jory");
    drag(from, {2, 0});
    release(from + QPoint{2, 0});
    EXPECT_EQ(started_.count(), 0);
    EXPECT_EQ(view_.selected(), "peel"); // it was a click
}

TEST_F(Dragging, MovesACoursesFlag)
{
    QSignalSpy started{&view_, &TimelineView::servingDragStarted};
    QSignalSpy moved{&view_, &TimelineView::servingDragMoved};
    QSignalSpy dropped{&view_, &TimelineView::servingDropped};
    const QPoint from = onFlag(3);
    const QPoint by{-pixels(15_min), 0};
    drag(from, by);
    ASSERT_EQ(started.count(), 1);
    EXPECT_EQ(started.first().first().toInt(), 3);
    EXPECT_GT(moved.count(), 0);
    EXPECT_EQ(findServing(view_.state().scene(), 3)->time, at(Day::Saturday, 20, 15));
    release(from + by);
    ASSERT_EQ(dropped.count(), 1);
    EXPECT_EQ(dropped.first().first().toInt(), 3);
    EXPECT_EQ(timeIn(dropped.first(), 1), at(Day::Saturday, 20, 15));
    EXPECT_EQ(started_.count(), 0);
}

TEST_F(Dragging, LeavesACourseWhereItWasAfterEsc)
{
    QSignalSpy cancelled{&view_, &TimelineView::servingDragCancelled};
    drag(onFlag(1), {-pixels(30_min), 0});
    QTest::keyClick(&view_, Qt::Key_Escape);
    EXPECT_EQ(cancelled.count(), 1);
    EXPECT_EQ(findServing(view_.state().scene(), 1)->time, at(Day::Saturday, 19, 30));
}

TEST_F(Dragging, OpensAPleatUnderThePointerAfterAWhile)
{
    const auto pleats = pleatsOf(view_.state().scene());
    const auto pleat = std::find_if(pleats.begin(), pleats.end(), [](const Interval& fold) {
        return fold.contains(at(Day::Saturday, 13));
    });
    ASSERT_NE(pleat, pleats.end());
    const QPoint from = on("sear", "b1");
    const Box fold = boxOf(PleatTarget{pleat->start});
    const QPoint over{static_cast<int>((fold.left + fold.right) / 2), from.y() + 60};
    drag(from, over - from);
    EXPECT_TRUE(view_.state().geometry().axis().isFolded(pleat->start));
    EXPECT_TRUE(QTest::qWaitFor(
        [&] { return !view_.state().geometry().axis().isFolded(pleat->start); }, 3000));
}

TEST_F(Dragging, ScrollsByTheHourAtTheViewsEdge)
{
    const double before = view_.state().viewport().scrollX;
    const QPoint from = on("peel", "jory");
    const QPoint edge{static_cast<int>(view_.state().geometry().timeLeft()) + 5, from.y()};
    drag(from, edge - from);
    ASSERT_TRUE(QTest::qWaitFor([&] { return view_.state().viewport().scrollX < before; }, 3000));
    const double hour = view_.state().viewport().pixelsPerHour;
    const double scrolled = before - view_.state().viewport().scrollX;
    EXPECT_NEAR(scrolled, hour * std::max(1.0, std::round(scrolled / hour)), 1e-6);
}

TEST_F(Dragging, MovesTheViewWithTheMiddleButton)
{
    const double before = view_.state().viewport().scrollX;
    const QPoint from{600, 300};
    QTest::mousePress(&view_, Qt::MiddleButton, {}, from);
    moveTo(from + QPoint{80, 0}, Qt::NoModifier);
    QTest::mouseRelease(&view_, Qt::MiddleButton, {}, from + QPoint{80, 0});
    EXPECT_DOUBLE_EQ(view_.state().viewport().scrollX, before - 80);
    EXPECT_EQ(started_.count(), 0);
}

TEST_F(Dragging, LeavesGhostsAlone)
{
    view_.setScene(test::exampleScene(true));
    const QPoint from = on("g-bake", "grill");
    drag(from, {60, 0});
    release(from + QPoint{60, 0});
    EXPECT_EQ(started_.count(), 0);
    EXPECT_EQ(view_.state().scene(), test::exampleScene(true));
}

} // namespace
} // namespace suppertide::ui
