// A timeline in a window of its own, with the example evening in it: what the tests of its events
// start from.
#pragma once

#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "tests/support/timeline/example_scene.h"
#include "ui/timeline/target_box.h"
#include "ui/timeline/timeline_view.h"

namespace suppertide::ui::test {

class TimelineWindow : public testing::Test
{
protected:
    TimelineWindow()
    {
        view_.resize(1068, 606);
        view_.setScene(exampleScene());
        view_.show();
        view_.showTime({at(Day::Saturday, 15, 20), at(Day::Saturday, 21, 40)});
    }

    [[nodiscard]] bool becomesActive()
    {
        view_.activateWindow();
        view_.setFocus(Qt::TabFocusReason);
        return QTest::qWaitFor([&] { return view_.hasFocus(); });
    }

    /// A point on the block, clear of its edges.
    [[nodiscard]] QPoint on(const std::string& task, const std::string& lane) const
    {
        return middleOf(BlockTarget{task, lane});
    }
    /// On the flag's black field, which lies left of its mast.
    [[nodiscard]] QPoint onFlag(int course) const
    {
        const Box box = boxOf(FlagTarget{course});
        const bool isUpper = course % 2 == 1;
        return QPointF{box.right - 7, box.top + (isUpper ? 10 : 30)}.toPoint();
    }
    [[nodiscard]] QPoint middleOf(const Target& target) const
    {
        const Box box = boxOf(target);
        return QPointF{(box.left + box.right) / 2, (box.top + box.bottom) / 2}.toPoint();
    }
    [[nodiscard]] Box boxOf(const Target& target) const
    {
        const auto box = boxOfTarget(view_.state().scene(), view_.state().geometry(), target);
        EXPECT_TRUE(box.has_value());
        return box.value_or(Box{});
    }
    /// How many pixels so many minutes are where nothing is folded.
    [[nodiscard]] int pixels(Minutes minutes) const
    {
        const double hour = view_.state().viewport().pixelsPerHour;
        return static_cast<int>(std::lround(static_cast<double>(minutes.count()) * hour / 60));
    }
    /// From `from` by `by`, in a few moves, with the button still held at the end.
    void drag(const QPoint& from, const QPoint& by, Qt::KeyboardModifiers keys = Qt::NoModifier)
    {
        constexpr int moves = 6;
        QTest::mousePress(&view_, Qt::LeftButton, keys, from);
        for (int i = 1; i <= moves; ++i) {
            moveTo(from + by * i / moves, keys);
        }
    }
    void moveTo(const QPoint& at, Qt::KeyboardModifiers keys)
    {
        // QTest::mouseMove tells of neither buttons nor keys.
        QMouseEvent move{QEvent::MouseMove, at,  view_.mapToGlobal(at), Qt::NoButton,
                         Qt::LeftButton,    keys};
        QCoreApplication::sendEvent(&view_, &move);
    }
    void release(const QPoint& at, Qt::KeyboardModifiers keys = Qt::NoModifier)
    {
        QTest::mouseRelease(&view_, Qt::LeftButton, keys, at);
    }

    TimelineView view_{makeTheme(Appearance::Light)};
};

[[nodiscard]] inline PlanTime timeIn(const QList<QVariant>& signal, int argument)
{
    return signal.at(argument).value<PlanTime>();
}

} // namespace suppertide::ui::test
