#include <QPushButton>
#include <QToolTip>

#include "tests/gui/timeline/timeline_window.h"
#include "ui/timeline/overview_strip.h"

namespace suppertide::ui {
namespace {

using test::at;
using test::Day;
using test::timeIn;

class Pointing : public test::TimelineWindow
{
protected:
    void click(const QPoint& at) { QTest::mouseClick(&view_, Qt::LeftButton, {}, at); }
    void wheel(const QPoint& at, int notches, Qt::KeyboardModifiers keys = Qt::NoModifier)
    {
        QWheelEvent event{QPointF{at},       view_.mapToGlobal(QPointF{at}),
                          QPoint{},          QPoint{0, 120 * notches},
                          Qt::NoButton,      keys,
                          Qt::NoScrollPhase, false};
        QCoreApplication::sendEvent(&view_, &event);
    }
    void hover(const QPoint& at)
    {
        QMouseEvent event{QEvent::MouseMove, at,           view_.mapToGlobal(at),
                          Qt::NoButton,      Qt::NoButton, {}};
        QCoreApplication::sendEvent(&view_, &event);
    }
};

TEST_F(Pointing, SelectsABlockByAClickAndNothingByAClickBesideIt)
{
    QSignalSpy selected{&view_, &TimelineView::selectionChanged};
    click(on("braise", "oven"));
    EXPECT_EQ(view_.selected(), "braise");
    ASSERT_EQ(selected.count(), 1);
    EXPECT_EQ(selected.first().first().toString(), "braise");
    click({20, 100});
    EXPECT_TRUE(view_.selected().isEmpty());
    EXPECT_EQ(selected.count(), 2);
}

TEST_F(Pointing, OpensABlockByADoubleClick)
{
    QSignalSpy opened{&view_, &TimelineView::activated};
    QTest::mouseDClick(&view_, Qt::LeftButton, {}, on("braise", "oven"));
    ASSERT_EQ(opened.count(), 1);
    EXPECT_EQ(opened.first().first().toString(), "braise");
}

TEST_F(Pointing, OpensAPleatByAClick)
{
    const auto& pieces = view_.state().geometry().axis().pieces();
    const auto fold = std::find_if(pieces.begin(), pieces.end(), [&](const TimeAxis::Piece& piece) {
        return piece.isFolded && piece.when.contains(at(Day::Saturday, 13));
    });
    ASSERT_NE(fold, pieces.end());
    const PlanTime start = fold->when.start;
    const Box box = boxOf(PleatTarget{start});
    click(QPointF{(box.left + box.right) / 2, 50}.toPoint());
    EXPECT_FALSE(view_.state().geometry().axis().isFolded(start));
}

TEST_F(Pointing, NamesTheClashWhoseTagIsClicked)
{
    QSignalSpy clash{&view_, &TimelineView::clashActivated};
    click(middleOf(TagTarget{1}));
    ASSERT_EQ(clash.count(), 1);
    EXPECT_EQ(clash.first().first().toInt(), 1);
}

TEST_F(Pointing, ZoomsByControlAndWheelAroundThePointer)
{
    const QPoint pointer{600, 300};
    const PlanTime pointed = view_.state().geometry().timeAt(pointer.x());
    const double before = view_.state().viewport().pixelsPerHour;
    wheel(pointer, 1, Qt::ControlModifier);
    EXPECT_NEAR(view_.state().viewport().pixelsPerHour, before * zoomStep, 1e-9);
    EXPECT_NEAR(view_.state().geometry().x(pointed), pointer.x(), 2);
    wheel(pointer, -1, Qt::ControlModifier);
    EXPECT_NEAR(view_.state().viewport().pixelsPerHour, before, 1e-9);
}

TEST_F(Pointing, MovesThroughTimeByTheWheelWhereLanesNeedNoScrolling)
{
    ASSERT_LE(view_.state().geometry().lanes().scrollRange, 0);
    const double before = view_.state().viewport().scrollX;
    wheel({600, 300}, 1);
    EXPECT_DOUBLE_EQ(view_.state().viewport().scrollX,
                     before - view_.state().viewport().pixelsPerHour);
}

TEST_F(Pointing, ScrollsLanesByTheWheelWhereTheyDoNotFit)
{
    view_.resize(840, 400);
    ASSERT_TRUE(QTest::qWaitFor([&] { return view_.width() == 840; }));
    ASSERT_GT(view_.state().geometry().lanes().scrollRange, 0);
    const double before = view_.state().viewport().scrollX;
    wheel({500, 200}, -1);
    EXPECT_GT(view_.state().viewport().scrollY, 0);
    EXPECT_DOUBLE_EQ(view_.state().viewport().scrollX, before);
    wheel({500, 200}, 1, Qt::ShiftModifier);
    EXPECT_LT(view_.state().viewport().scrollX, before);
}

TEST_F(Pointing, AsksForAMenuAtWhatIsUnderThePointer)
{
    QSignalSpy menu{&view_, &TimelineView::menuRequested};
    const QPoint place = on("braise", "oven");
    QContextMenuEvent event{QContextMenuEvent::Mouse, place, view_.mapToGlobal(place)};
    QCoreApplication::sendEvent(&view_, &event);
    ASSERT_EQ(menu.count(), 1);
    EXPECT_EQ(menu.first().at(0).value<Target>(), (Target{BlockTarget{"braise", "oven"}}));
    EXPECT_EQ(timeIn(menu.first(), 1), view_.state().geometry().timeAt(place.x()));
    EXPECT_EQ(menu.first().at(2).toPoint(), view_.mapToGlobal(place));
}

TEST_F(Pointing, ShowsACardOnABlockAfterAWhile)
{
    hover(on("braise", "oven"));
    EXPECT_EQ(view_.state().marks().hovered, (Target{BlockTarget{"braise", "oven"}}));
    EXPECT_FALSE(QToolTip::isVisible());
    ASSERT_TRUE(QTest::qWaitFor([] { return QToolTip::isVisible(); }, 3000));
    EXPECT_TRUE(QToolTip::text().contains(QStringLiteral("Braise shoulder")));
    EXPECT_TRUE(QToolTip::text().contains(QStringLiteral("15:55")));
    QToolTip::hideText();
}

TEST_F(Pointing, ForgetsWhatWasUnderThePointerWhenItLeaves)
{
    hover(on("braise", "oven"));
    QEvent leave{QEvent::Leave};
    QCoreApplication::sendEvent(&view_, &leave);
    EXPECT_EQ(view_.state().marks().hovered, Target{});
}

TEST_F(Pointing, ShowsByTheCursorWhatCanBeTaken)
{
    hover(on("braise", "oven"));
    EXPECT_EQ(view_.cursor().shape(), Qt::OpenHandCursor);
    hover(onFlag(1));
    EXPECT_EQ(view_.cursor().shape(), Qt::OpenHandCursor);
    hover(middleOf(TagTarget{1}));
    EXPECT_EQ(view_.cursor().shape(), Qt::PointingHandCursor);
    hover({20, 300});
    EXPECT_EQ(view_.cursor().shape(), Qt::ArrowCursor);
}

TEST_F(Pointing, MovesTheViewByTheOverviewsFrame)
{
    auto* overview = view_.findChild<OverviewStrip*>(QStringLiteral("timelineOverview"));
    ASSERT_NE(overview, nullptr);
    QTest::mouseClick(overview, Qt::LeftButton, {}, {150, 15}); // Wednesday morning
    EXPECT_TRUE(view_.state().geometry().visibleTime().contains(at(Day::Wednesday, 18)));
}

TEST_F(Pointing, SaysOnlyOnAnEmptyTimelineWhatToDoFirst)
{
    view_.setEmptyNote(QStringLiteral("Drag a variant here"), QStringLiteral("Choose dishes"));
    auto* note = view_.findChild<QWidget*>(QStringLiteral("timelineEmptyNote"));
    ASSERT_NE(note, nullptr);
    EXPECT_FALSE(note->isVisible());
    view_.setScene(test::emptyScene());
    EXPECT_TRUE(note->isVisible());
    QSignalSpy pressed{&view_, &TimelineView::emptyNoteTriggered};
    auto* button = view_.findChild<QPushButton*>(QStringLiteral("timelineEmptyButton"));
    ASSERT_NE(button, nullptr);
    QTest::mouseClick(button, Qt::LeftButton);
    EXPECT_EQ(pressed.count(), 1);
}

} // namespace
} // namespace suppertide::ui
