// Ways out in the window: a clash is gone to, ways out come beside it, one is taken and undone; an
// evening that cannot be cooked says why; a step says why it is where it is.
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QTest>

#include "tests/gui/window/open_window.h"
#include "ui/clashes/ways_panel.h"
#include "ui/models/drag_scene.h"
#include "ui/models/edit.h"

namespace suppertide::ui {
namespace {

using test::OpenWindow;

constexpr int longEnough = 60'000; // ms

class WaysOutInWindow : public OpenWindow
{
protected:
    void addRoots()
    {
        auto drop =
            variantDrop(document_->library(),
                        DraggedVariant{QStringLiteral("roots"), QStringLiteral("with-thyme")}, 1);
        ASSERT_TRUE(drop);
        document_->apply(std::move(drop->next), drop->text);
        ASSERT_TRUE(QTest::qWaitFor([&] { return !clashes().isEmpty(); }));
    }
    [[nodiscard]] WaysPanel& ways() const { return part<WaysPanel>(QStringLiteral("waysOut")); }
    [[nodiscard]] bool hasAWay() const
    {
        const auto& rows = ways().rows();
        return std::any_of(rows.begin(), rows.end(), [](const WayRow& row) { return row.isWay; });
    }
    void goToFirstClash() const
    {
        auto& list = part<QListView>(QStringLiteral("clashes"));
        list.setFocus();
        list.setCurrentIndex(list.model()->index(0, 0));
        QTest::keyClick(&list, Qt::Key_Return);
    }
    void takeFirstWay() const
    {
        auto& list = part<QListView>(QStringLiteral("ways"));
        list.setFocus();
        for (int row = 0; row < list.model()->rowCount(); ++row) {
            if (ways().rows()[static_cast<std::size_t>(row)].isWay) {
                list.setCurrentIndex(list.model()->index(row, 0));
                break;
            }
        }
        QTest::keyClick(&list, Qt::Key_Return);
    }
};

TEST_F(WaysOutInWindow, ComeBesideTheClashAndOneIsTakenAndUndone)
{
    addRoots();
    const int changes = document_->undoStack().count();
    const LibraryState before = document_->library();
    EXPECT_FALSE(ways().isVisible());
    goToFirstClash();
    EXPECT_TRUE(ways().isVisible());
    ASSERT_TRUE(QTest::qWaitFor([&] { return hasAWay(); }, longEnough));

    takeFirstWay();
    EXPECT_EQ(document_->undoStack().count(), changes + 1);
    ASSERT_TRUE(QTest::qWaitFor([&] { return clashes().isEmpty(); }));
    EXPECT_FALSE(ways().isVisible());
    document_->undoStack().undo();
    EXPECT_EQ(document_->library(), before);
}

/// Ivo must not have milk, and the gratin is made with butter: the portion is made with oil. The
/// recipe with its new variant and who gets it are one change.
TEST_F(WaysOutInWindow, MakeAPortionWithASubstituteAndTakeItBack)
{
    Recipe gratin = *document_->library().recipes.at(RecipeId{"gratin"});
    IngredientLine butter = gratin.common.lines.front();
    butter.id = LineId{"butter"};
    butter.ingredient = "butter";
    butter.contains.reset();
    gratin.common.lines.push_back(butter);
    LibraryState next = withRecipe(document_->library(), gratin);
    next = withOccasion(
        next, [](Occasion& occasion) { occasion.guests[0].allergies = {Substance::Milk}; });
    document_->apply(std::move(next), QStringLiteral("Butter"));
    ASSERT_TRUE(QTest::qWaitFor([&] { return clashes().size() == 1; }));
    const LibraryState before = document_->library();
    goToFirstClash();
    ASSERT_TRUE(QTest::qWaitFor([&] { return hasAWay(); }, longEnough));
    takeFirstWay();
    ASSERT_TRUE(QTest::qWaitFor([&] { return clashes().isEmpty(); }));
    const Recipe& with = *document_->library().recipes.at(RecipeId{"gratin"});
    ASSERT_EQ(with.variants.size(), 2U);
    EXPECT_EQ(with.variants.back().name, "plain, olive oil for butter");
    const Dish& dish = occasion().courses.front().dishes.front();
    ASSERT_EQ(dish.mix.size(), 2U);
    EXPECT_EQ(dish.mix.back().variant, with.variants.back().id);
    EXPECT_EQ(dish.mix.back().guests, std::vector<GuestId>{occasion().guests.front().id});
    document_->undoStack().undo();
    EXPECT_EQ(document_->library(), before);
}

TEST_F(WaysOutInWindow, LeaveWhatWasReportedOnTheNight)
{
    addRoots();
    OccasionRecord record = *openOccasion(document_->library());
    record.progress.cooks["roots/*/roast"] = {"maren"};
    document_->apply(withRecord(document_->library(), record), QStringLiteral("Report"));
    ASSERT_TRUE(QTest::qWaitFor([&] { return !clashes().isEmpty(); }));
    goToFirstClash();
    ASSERT_TRUE(QTest::qWaitFor([&] { return hasAWay(); }, longEnough));
    takeFirstWay();
    ASSERT_TRUE(QTest::qWaitFor([&] { return clashes().isEmpty(); }));
    EXPECT_EQ(openOccasion(document_->library())->progress, record.progress);
}

TEST_F(WaysOutInWindow, StopAndGoAwayWithEscape)
{
    addRoots();
    goToFirstClash();
    ASSERT_TRUE(ways().isSearching());
    auto& list = part<QListView>(QStringLiteral("ways"));
    list.setFocus();
    QTest::keyClick(&list, Qt::Key_Escape);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !ways().isSearching(); }, longEnough));
    QTest::keyClick(&list, Qt::Key_Escape);
    EXPECT_FALSE(ways().isVisible());
}

TEST_F(WaysOutInWindow, GoAwayWhenTheEveningChanges)
{
    addRoots();
    goToFirstClash();
    ASSERT_TRUE(ways().isVisible());
    document_->undoStack().undo();
    EXPECT_FALSE(ways().isVisible());
    EXPECT_FALSE(hasAWay());
}

TEST_F(WaysOutInWindow, SayWhyAnEveningCannotBeCooked)
{
    const KitchenPtr kitchen = openKitchen(document_->library());
    ASSERT_TRUE(kitchen);
    Kitchen bare = *kitchen;
    bare.ovens.clear();
    document_->apply(withKitchen(document_->library(), bare), QStringLiteral("No oven"));
    QTest::keyClick(window_.get(), Qt::Key_M, Qt::ControlModifier);
    ASSERT_TRUE(QTest::qWaitFor([&] { return ways().isVisible(); }, longEnough));
    const auto& rows = ways().rows();
    EXPECT_TRUE(std::any_of(rows.begin(), rows.end(), [](const WayRow& row) {
        return !row.isWay && row.change == QStringLiteral("The kitchen has no oven.");
    }));
    ASSERT_TRUE(QTest::qWaitFor([&] { return hasAWay(); }, longEnough));
}

TEST_F(WaysOutInWindow, AStepSaysWhyItIsHere)
{
    TimelineView& view = timeline();
    view.setFocus();
    view.showTask(QStringLiteral("job/sweep"));
    QTest::keyClick(&view, Qt::Key_W);
    auto* card = window_->findChild<QWidget*>(QStringLiteral("whyHere"));
    ASSERT_NE(card, nullptr);
    EXPECT_TRUE(card->isVisible());
    auto* said = card->findChild<QLabel*>(QStringLiteral("whyHereSaid"));
    ASSERT_NE(said, nullptr);
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return said->text().contains(QStringLiteral("It cannot start earlier")); },
        longEnough));
    EXPECT_TRUE(said->text().contains(QStringLiteral("It cannot start later")));
    EXPECT_FALSE(said->accessibleName().isEmpty());
    QTest::keyClick(said, Qt::Key_Escape);
    EXPECT_FALSE(window_->findChild<QWidget*>(QStringLiteral("whyHere")) &&
                 window_->findChild<QWidget*>(QStringLiteral("whyHere"))->isVisible());
}

} // namespace
} // namespace suppertide::ui
