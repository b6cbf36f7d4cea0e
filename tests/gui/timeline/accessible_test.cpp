#include <QAccessible>
#include <QAccessibleInterface>

#include <set>

#include "tests/gui/timeline/timeline_window.h"

namespace suppertide::ui {
namespace {

using test::at;
using test::Day;
using test::timeIn;

class ForScreenReaders : public test::TimelineWindow
{
protected:
    [[nodiscard]] QAccessibleInterface& list()
    {
        QAccessibleInterface* found = QAccessible::queryAccessibleInterface(&view_);
        EXPECT_NE(found, nullptr);
        return *found;
    }
    /// The item whose name begins with `words`.
    [[nodiscard]] QAccessibleInterface* item(const QString& words)
    {
        for (int i = 0; i < list().childCount(); ++i) {
            QAccessibleInterface* child = list().child(i);
            if (child != nullptr && child->text(QAccessible::Name).startsWith(words)) {
                return child;
            }
        }
        return nullptr;
    }
};

TEST_F(ForScreenReaders, TheTimelineIsAListWithAnItemForEachStep)
{
    EXPECT_EQ(list().role(), QAccessible::List);
    EXPECT_EQ(list().text(QAccessible::Name), "Timeline");
    EXPECT_EQ(list().childCount(), static_cast<int>(view_.state().scene().blocks.size()));
    for (int i = 0; i < list().childCount(); ++i) {
        QAccessibleInterface* child = list().child(i);
        ASSERT_NE(child, nullptr);
        EXPECT_TRUE(child->isValid());
        EXPECT_EQ(child->role(), QAccessible::ListItem);
        EXPECT_EQ(child->parent(), &list());
        EXPECT_EQ(list().indexOfChild(child), i);
    }
    EXPECT_EQ(list().child(list().childCount()), nullptr);
}

TEST_F(ForScreenReaders, AStepsNameIsASentence)
{
    QAccessibleInterface* meringue = item(QStringLiteral("Bake meringue"));
    ASSERT_NE(meringue, nullptr);
    EXPECT_EQ(meringue->text(QAccessible::Name),
              "Bake meringue, 20:50 to 22:05 (1 h 15), Oven; pinned");
    QAccessibleInterface* gratin = item(QStringLiteral("Bake gratin"));
    ASSERT_NE(gratin, nullptr);
    EXPECT_TRUE(
        gratin->text(QAccessible::Name).contains(QStringLiteral("clash 1: Gratin wants 150°")));
}

TEST_F(ForScreenReaders, StepsOfFoldedLanesAreListedToo)
{
    view_.resize(840, 400);
    view_.zoomTo(ZoomStop::QuarterHours);
    view_.showTime({at(Day::Saturday, 17), at(Day::Saturday, 18)});
    const auto& boxes = view_.state().geometry().lanes().boxes;
    ASSERT_TRUE(std::any_of(boxes.begin(), boxes.end(),
                            [](const LaneBox& box) { return box.isFolded || box.isShared(); }));
    EXPECT_EQ(list().childCount(), static_cast<int>(view_.state().scene().blocks.size()));
}

TEST_F(ForScreenReaders, AnItemLiesWhereItsBlockIsDrawn)
{
    QAccessibleInterface* braise = item(QStringLiteral("Braise"));
    ASSERT_NE(braise, nullptr);
    const QPoint place = view_.mapToGlobal(on("braise", "oven"));
    EXPECT_TRUE(braise->rect().contains(place));
    EXPECT_EQ(list().childAt(place.x(), place.y()), braise);
}

TEST_F(ForScreenReaders, TheFocusIsTheItemThatHasIt)
{
    ASSERT_TRUE(becomesActive());
    view_.focusTarget(BlockTarget{"braise", "oven"});
    QAccessibleInterface* braise = item(QStringLiteral("Braise"));
    EXPECT_EQ(list().focusChild(), braise);
    EXPECT_TRUE(braise->state().focused);
    EXPECT_FALSE(braise->state().selected);
    view_.select(QStringLiteral("braise"));
    EXPECT_TRUE(braise->state().selected);
}

TEST_F(ForScreenReaders, AnItemCanBeSelectedAndMoved)
{
    QSignalSpy dropped{&view_, &TimelineView::dropped};
    QSignalSpy selected{&view_, &TimelineView::selectionChanged};
    QAccessibleInterface* peel = item(QStringLiteral("Peel"));
    ASSERT_NE(peel, nullptr);
    QAccessibleActionInterface* actions = peel->actionInterface();
    ASSERT_NE(actions, nullptr);
    actions->doAction(QAccessibleActionInterface::pressAction());
    ASSERT_EQ(selected.count(), 1);
    EXPECT_EQ(selected.first().first().toString(), "peel");
    actions->doAction(QAccessibleActionInterface::increaseAction());
    ASSERT_EQ(dropped.count(), 1);
    EXPECT_EQ(timeIn(dropped.first(), 1), at(Day::Saturday, 17, 25));
    actions->doAction(QAccessibleActionInterface::decreaseAction());
    EXPECT_EQ(timeIn(dropped.last(), 1), at(Day::Saturday, 17, 15));
}

TEST_F(ForScreenReaders, AnItemLivesOnWithItsStepAndIsInvalidAfterIt)
{
    QAccessibleInterface* peel = item(QStringLiteral("Peel"));
    ASSERT_NE(peel, nullptr);
    view_.setScene(view_.state().withBlockAt("peel", at(Day::Saturday, 18)));
    EXPECT_EQ(item(QStringLiteral("Peel")), peel);
    EXPECT_TRUE(peel->text(QAccessible::Name).contains(QStringLiteral("18:00")));
    view_.setScene(test::emptyScene());
    EXPECT_FALSE(peel->isValid());
    EXPECT_TRUE(peel->text(QAccessible::Name).isEmpty());
    EXPECT_EQ(list().childCount(), 0);
}

} // namespace
} // namespace suppertide::ui
