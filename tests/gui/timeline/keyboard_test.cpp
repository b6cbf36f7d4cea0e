#include "tests/gui/timeline/timeline_window.h"
#include "ui/timeline/overview_strip.h"

namespace suppertide::ui {
namespace {

using test::at;
using test::Day;
using test::timeIn;

class Keyboard : public test::TimelineWindow
{
protected:
    void SetUp() override { ASSERT_TRUE(becomesActive()); }

    void press(Qt::Key key, Qt::KeyboardModifiers keys = Qt::NoModifier)
    {
        QTest::keyClick(&view_, key, keys);
    }
    [[nodiscard]] Target focused() const { return view_.state().marks().focused; }
    [[nodiscard]] static Target block(const std::string& id, const std::string& lane)
    {
        return BlockTarget{id, lane};
    }

    QSignalSpy dropped_{&view_, &TimelineView::dropped};
};

TEST_F(Keyboard, BeginsAtTheFirstBlockInView)
{
    EXPECT_TRUE(std::holds_alternative<BlockTarget>(focused()));
    EXPECT_TRUE(view_.state().marks().hasKeyboard);
}

TEST_F(Keyboard, MovesTheFocusByArrows)
{
    view_.focusTarget(block("sear", "b1"));
    press(Qt::Key_Right);
    EXPECT_EQ(focused(), block("sauce", "b1"));
    press(Qt::Key_Left);
    EXPECT_EQ(focused(), block("sear", "b1"));
    press(Qt::Key_Up);
    EXPECT_EQ(std::get<BlockTarget>(focused()).lane, "grill");
    press(Qt::Key_End);
    EXPECT_EQ(focused(), block("dress", "maren"));
    press(Qt::Key_Home);
    EXPECT_EQ(focused(), block("order-fish", "maren"));
}

TEST_F(Keyboard, BringsWhatHasTheFocusIntoView)
{
    press(Qt::Key_Home);
    const Box box = boxOf(focused());
    EXPECT_GE(box.left, view_.state().geometry().timeLeft());
    EXPECT_LE(box.right, view_.state().geometry().timeRight());
}

TEST_F(Keyboard, MovesTheStepByAltAndArrow)
{
    view_.focusTarget(block("peel", "jory"));
    press(Qt::Key_Right, Qt::AltModifier);
    ASSERT_EQ(dropped_.count(), 1);
    EXPECT_EQ(dropped_.last().first().toString(), "peel");
    EXPECT_EQ(timeIn(dropped_.last(), 1), at(Day::Saturday, 17, 25));
    press(Qt::Key_Left, Qt::AltModifier);
    EXPECT_EQ(timeIn(dropped_.last(), 1), at(Day::Saturday, 17, 15));
    EXPECT_EQ(focused(), block("peel", "jory"));
}

TEST_F(Keyboard, MovesACourseByAltAndArrow)
{
    QSignalSpy served{&view_, &TimelineView::servingDropped};
    view_.focusTarget(FlagTarget{2});
    press(Qt::Key_Left, Qt::AltModifier);
    ASSERT_EQ(served.count(), 1);
    EXPECT_EQ(served.first().at(0).toInt(), 2);
    EXPECT_EQ(timeIn(served.first(), 1), at(Day::Saturday, 19, 50));
}

TEST_F(Keyboard, PinsByP)
{
    QSignalSpy pinned{&view_, &TimelineView::pinRequested};
    view_.focusTarget(block("peel", "jory"));
    press(Qt::Key_P);
    ASSERT_EQ(pinned.count(), 1);
    EXPECT_EQ(pinned.first().first().toString(), "peel");
}

TEST_F(Keyboard, SelectsByEnterAndOpensByEnterAgain)
{
    QSignalSpy selected{&view_, &TimelineView::selectionChanged};
    QSignalSpy opened{&view_, &TimelineView::activated};
    view_.focusTarget(block("peel", "jory"));
    press(Qt::Key_Return);
    EXPECT_EQ(selected.count(), 1);
    EXPECT_EQ(view_.selected(), "peel");
    EXPECT_EQ(opened.count(), 0);
    press(Qt::Key_Return);
    ASSERT_EQ(opened.count(), 1);
    EXPECT_EQ(opened.first().first().toString(), "peel");
}

TEST_F(Keyboard, UnselectsByEsc)
{
    view_.select(QStringLiteral("peel"));
    press(Qt::Key_Escape);
    EXPECT_TRUE(view_.selected().isEmpty());
}

TEST_F(Keyboard, OpensAndClosesAPleatByEnter)
{
    const auto& pieces = view_.state().geometry().axis().pieces();
    const PlanTime fold =
        std::find_if(pieces.begin(), pieces.end(), [](const TimeAxis::Piece& piece) {
            return piece.isFolded;
        })->when.start;
    view_.focusTarget(PleatTarget{fold});
    press(Qt::Key_Enter);
    EXPECT_FALSE(view_.state().geometry().axis().isFolded(fold));
    press(Qt::Key_Enter);
    EXPECT_TRUE(view_.state().geometry().axis().isFolded(fold));
}

TEST_F(Keyboard, AsksToRemoveByDelete)
{
    QSignalSpy removed{&view_, &TimelineView::removeRequested};
    view_.focusTarget(block("peel", "jory"));
    press(Qt::Key_Delete);
    ASSERT_EQ(removed.count(), 1);
    EXPECT_EQ(removed.first().first().toString(), "peel");
}

TEST_F(Keyboard, ZoomsByControlPlusMinusAndNought)
{
    QSignalSpy zoomed{&view_, &TimelineView::zoomChanged};
    const double before = view_.state().viewport().pixelsPerHour;
    press(Qt::Key_Plus, Qt::ControlModifier);
    EXPECT_NEAR(view_.state().viewport().pixelsPerHour, before * zoomStep, 1e-9);
    EXPECT_GE(zoomed.count(), 1);
    press(Qt::Key_Minus, Qt::ControlModifier);
    press(Qt::Key_Minus, Qt::ControlModifier);
    EXPECT_NEAR(view_.state().viewport().pixelsPerHour, before / zoomStep, 1e-9);
    press(Qt::Key_0, Qt::ControlModifier);
    EXPECT_DOUBLE_EQ(view_.state().viewport().pixelsPerHour, pixelsPerHourAt(ZoomStop::Hours));
}

TEST_F(Keyboard, TurnsPages)
{
    view_.showTime({at(Day::Wednesday, 0), at(Day::Wednesday, 1)});
    const double before = view_.state().viewport().scrollX;
    press(Qt::Key_PageDown);
    EXPECT_GT(view_.state().viewport().scrollX, before);
    press(Qt::Key_PageUp);
    EXPECT_DOUBLE_EQ(view_.state().viewport().scrollX, before);
}

TEST_F(Keyboard, CallsTheMenuBesideWhatHasTheFocus)
{
    QSignalSpy menu{&view_, &TimelineView::menuRequested};
    view_.focusTarget(block("peel", "jory"));
    QContextMenuEvent event{QContextMenuEvent::Keyboard, view_.rect().center(),
                            view_.mapToGlobal(view_.rect().center())};
    QCoreApplication::sendEvent(&view_, &event);
    ASSERT_EQ(menu.count(), 1);
    EXPECT_EQ(menu.first().at(0).value<Target>(), block("peel", "jory"));
    EXPECT_EQ(timeIn(menu.first(), 1), at(Day::Saturday, 17, 20));
    const QPoint place = view_.mapFromGlobal(menu.first().at(2).toPoint());
    const Box box = boxOf(block("peel", "jory"));
    EXPECT_NEAR(place.x(), box.left, 1);
    EXPECT_NEAR(place.y(), box.bottom, 1);
}

TEST_F(Keyboard, LeavesTheFocusWhereItWasWhenItComesBack)
{
    view_.focusTarget(block("peel", "jory"));
    view_.clearFocus();
    EXPECT_FALSE(view_.state().marks().hasKeyboard);
    ASSERT_TRUE(becomesActive());
    EXPECT_EQ(focused(), block("peel", "jory"));
}

TEST_F(Keyboard, MovesTheViewFromTheOverview)
{
    auto* overview = view_.findChild<OverviewStrip*>(QStringLiteral("timelineOverview"));
    ASSERT_NE(overview, nullptr);
    QTest::keyClick(overview, Qt::Key_Home);
    EXPECT_DOUBLE_EQ(view_.state().viewport().scrollX, 0);
    QTest::keyClick(overview, Qt::Key_End);
    EXPECT_GT(view_.state().viewport().scrollX, 0);
}

} // namespace
} // namespace suppertide::ui
