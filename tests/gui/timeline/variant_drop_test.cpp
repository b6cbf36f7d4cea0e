#include <QMimeData>

#include "tests/gui/timeline/timeline_window.h"

namespace suppertide::ui {
namespace {

using test::at;
using test::Day;

class DroppingAVariant : public test::TimelineWindow
{
protected:
    DroppingAVariant() { data_.setData(variantMimeType(), toMimeBytes(squash_)); }

    [[nodiscard]] QPoint atTime(PlanTime time) const
    {
        return QPointF{view_.state().geometry().x(time), 300}.toPoint();
    }
    bool enter(const QPoint& at, const QMimeData& data)
    {
        QDragEnterEvent event{at, Qt::CopyAction, &data, Qt::LeftButton, {}};
        QCoreApplication::sendEvent(&view_, &event);
        return event.isAccepted();
    }
    bool move(const QPoint& at)
    {
        QDragMoveEvent event{at, Qt::CopyAction, &data_, Qt::LeftButton, {}};
        QCoreApplication::sendEvent(&view_, &event);
        return event.isAccepted();
    }
    bool drop(const QPoint& at)
    {
        QDropEvent event{QPointF{at}, Qt::CopyAction, &data_, Qt::LeftButton, {}};
        QCoreApplication::sendEvent(&view_, &event);
        return event.isAccepted();
    }

    const DraggedVariant squash_{QStringLiteral("stuffed-squash"), QStringLiteral("vegetarian")};
    QMimeData data_;
    QSignalSpy entered_{&view_, &TimelineView::variantEntered};
    QSignalSpy moved_{&view_, &TimelineView::variantMoved};
    QSignalSpy dropped_{&view_, &TimelineView::variantDropped};
    QSignalSpy left_{&view_, &TimelineView::variantLeft};
};

TEST_F(DroppingAVariant, NamesTheVariantAndTheCourseNearestToThePointer)
{
    ASSERT_TRUE(enter(atTime(at(Day::Saturday, 18)), data_));
    ASSERT_EQ(entered_.count(), 1);
    EXPECT_EQ(entered_.first().at(0).value<DraggedVariant>(), squash_);
    EXPECT_EQ(entered_.first().at(1).toInt(), 1);
    ASSERT_TRUE(move(atTime(at(Day::Saturday, 20, 35))));
    EXPECT_EQ(moved_.first().at(1).toInt(), 3);
    ASSERT_TRUE(drop(atTime(at(Day::Saturday, 21, 15))));
    ASSERT_EQ(dropped_.count(), 1);
    EXPECT_EQ(dropped_.first().at(0).value<DraggedVariant>(), squash_);
    EXPECT_EQ(dropped_.first().at(1).toInt(), 4);
    EXPECT_EQ(left_.count(), 0);
}

TEST_F(DroppingAVariant, SaysWhenItWasTakenAwayAgain)
{
    ASSERT_TRUE(enter(atTime(at(Day::Saturday, 18)), data_));
    QDragLeaveEvent leave;
    QCoreApplication::sendEvent(&view_, &leave);
    EXPECT_EQ(left_.count(), 1);
    EXPECT_FALSE(drop(atTime(at(Day::Saturday, 18))));
    EXPECT_EQ(dropped_.count(), 0);
}

TEST_F(DroppingAVariant, RefusesAnythingElse)
{
    QMimeData text;
    text.setText(QStringLiteral("squash"));
    EXPECT_FALSE(enter(atTime(at(Day::Saturday, 18)), text));
    EXPECT_EQ(entered_.count(), 0);
}

TEST_F(DroppingAVariant, HasNowhereToGoWithoutCourses)
{
    Scene scene = test::emptyScene();
    scene.servings.clear();
    view_.setScene(scene);
    EXPECT_FALSE(enter({500, 300}, data_));
}

TEST_F(DroppingAVariant, LeavesTheFoldsAsTheyAreUnderThePointer)
{
    const TimeAxis before = view_.state().geometry().axis();
    ASSERT_TRUE(enter(atTime(at(Day::Saturday, 18)), data_));
    Scene preview = test::exampleScene(true);
    preview.blocks.back().start = at(Day::Saturday, 3);
    preview.blocks.back().attention = handsOn;
    view_.setScene(preview);
    EXPECT_EQ(view_.state().geometry().axis(), before);
}

} // namespace
} // namespace suppertide::ui
