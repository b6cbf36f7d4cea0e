// Ways out in the window: a clash is gone to, ways out come beside it, one is taken and undone; an
// evening that cannot be cooked says why; a step says why it is where it is.
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QTableView>
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

    /// Butter among what these recipes are made with, and Ivo must not have milk.
    void butterInto(const std::vector<std::string>& recipes)
    {
        LibraryState next = withOccasion(document_->library(), [](Occasion& occasion) {
            occasion.guests[0].allergies = {Substance::Milk};
        });
        for (const std::string& id : recipes) {
            Recipe recipe = *next.recipes.at(RecipeId{id});
            IngredientLine butter = recipe.common.lines.front();
            butter.id = LineId{"butter"};
            butter.ingredient = "butter";
            butter.contains.reset();
            recipe.common.lines.push_back(butter);
            next = withRecipe(next, recipe);
        }
        document_->apply(std::move(next), QStringLiteral("Butter"));
    }
    void openPlaces() const
    {
        if (!part<QWidget>(QStringLiteral("placesPage")).isVisible()) {
            QTest::keyClick(window_.get(), Qt::Key_T, Qt::ControlModifier | Qt::ShiftModifier);
        }
    }
    void shareOut() const
    {
        openPlaces();
        press(QStringLiteral("shareOut"));
    }
    /// What the place table says that a guest gets of the only course.
    [[nodiscard]] QString placeOf(const char* guest) const
    {
        openPlaces();
        const QAbstractItemModel& places = *part<QTableView>(QStringLiteral("placeTable")).model();
        for (int row = 0; row < places.rowCount(); ++row) {
            if (places.headerData(row, Qt::Vertical).toString().contains(QLatin1String(guest))) {
                return places.index(row, 0).data().toString();
            }
        }
        return QStringLiteral("no such guest");
    }
    [[nodiscard]] int clashesWith(const char* words) const
    {
        return static_cast<int>(clashes().filter(QLatin1String(words)).size());
    }
    void click(QListView& list, int row) const
    {
        const QModelIndex index = list.model()->index(row, 0);
        list.scrollTo(index);
        const QPoint middle =
            list.viewport()->mapTo(window_.get(), list.visualRect(index).center());
        QTest::mouseClick(window_->windowHandle(), Qt::LeftButton, {}, middle);
    }
    void clickClash(const char* words) const
    {
        auto& list = part<QListView>(QStringLiteral("clashes"));
        for (int row = 0; row < list.model()->rowCount(); ++row) {
            if (list.model()->index(row, 0).data().toString().contains(QLatin1String(words))) {
                click(list, row);
                return;
            }
        }
        FAIL() << "no clash says " << words;
    }
    /// Waits for the way out that begins so, clicks it, and the button that takes it.
    void clickWay(const char* words)
    {
        const auto rowOf = [&] {
            const auto& rows = ways().rows();
            const auto row = std::find_if(rows.begin(), rows.end(), [&](const WayRow& each) {
                return each.isWay &&
                       each.change.contains(QLatin1String(words), Qt::CaseInsensitive);
            });
            return row == rows.end() ? -1 : static_cast<int>(row - rows.begin());
        };
        ASSERT_TRUE(
            QTest::qWaitFor([&] { return rowOf() >= 0 && !ways().isSearching(); }, longEnough));
        click(part<QListView>(QStringLiteral("ways")), rowOf());
        auto& take = part<QPushButton>(QStringLiteral("takeWay"));
        ASSERT_TRUE(take.isEnabled());
        QTest::mouseClick(window_->windowHandle(), Qt::LeftButton, {},
                          take.mapTo(window_.get(), take.rect().center()));
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

/// Ivo must not have milk; of a course whose every dish is made with butter he is given nothing.
/// The dish that is made free of it for him is one click, and one undo takes it back.
TEST_F(WaysOutInWindow, FeedAGuestForWhomNoDishOfACourseIsSafe)
{
    offerRoots();
    butterInto({"gratin", "roots"});
    shareOut();
    ASSERT_TRUE(placeOf("Ivo").contains(QStringLiteral("nothing")));
    ASSERT_EQ(clashesWith("Ivo"), 1) << clashes().join(u'\n').toStdString();
    const LibraryState before = document_->library();
    const int changes = document_->undoStack().count();

    clickClash("Ivo");
    clickWay("make a portion of");
    ASSERT_TRUE(QTest::qWaitFor([&] { return clashes().isEmpty(); }))
        << clashes().join(u'\n').toStdString();
    EXPECT_EQ(document_->undoStack().count(), changes + 1);
    EXPECT_TRUE(placeOf("Ivo").contains(QStringLiteral("olive oil for butter")))
        << placeOf("Ivo").toStdString();
    EXPECT_FALSE(placeOf("Una").contains(QStringLiteral("olive oil")));

    document_->undoStack().undo();
    EXPECT_EQ(document_->library(), before);
    EXPECT_TRUE(placeOf("Ivo").contains(QStringLiteral("nothing")));
    EXPECT_TRUE(QTest::qWaitFor([&] { return clashesWith("Ivo") == 1; }));
}

/// The gratin has butter, the roots have none: Ivo, who has gratin, is given roots.
TEST_F(WaysOutInWindow, GiveAGuestAnotherDishOfTheCourse)
{
    offerRoots();
    butterInto({"gratin"});
    ASSERT_TRUE(QTest::qWaitFor([&] { return clashesWith("Ivo") == 1; }));
    ASSERT_TRUE(placeOf("Ivo").contains(QStringLiteral("Potato gratin")));
    const LibraryState before = document_->library();
    const int changes = document_->undoStack().count();

    clickClash("Ivo");
    clickWay("give Ivo");
    ASSERT_TRUE(QTest::qWaitFor([&] { return clashesWith("Ivo") == 0; }))
        << clashes().join(u'\n').toStdString();
    EXPECT_EQ(document_->undoStack().count(), changes + 1);
    EXPECT_TRUE(placeOf("Ivo").contains(QStringLiteral("Roast roots")));
    EXPECT_TRUE(placeOf("Una").contains(QStringLiteral("Potato gratin")));
    EXPECT_EQ(portions(0), Portions{3});
    EXPECT_EQ(portions(1), Portions{1});

    document_->undoStack().undo();
    EXPECT_EQ(document_->library(), before);
    EXPECT_TRUE(placeOf("Ivo").contains(QStringLiteral("Potato gratin")));
    EXPECT_TRUE(QTest::qWaitFor([&] { return clashesWith("Ivo") == 1; }));
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
