// What the page of menus knows, on the demo's supper: points, words, what is out of date, and the
// table.
#include <QAbstractItemModelTester>

#include <gtest/gtest.h>

#include "tests/support/demo_evening.h"
#include "ui/models/figure_scale.h"
#include "ui/models/menu_table_model.h"
#include "ui/models/place_model.h"

namespace suppertide::ui {
namespace {

using namespace Qt::StringLiterals;
using menus::Cookable;
using menus::Figure;

PlanInput inputOf(const LibraryState& library)
{
    PlanInput input = *planInputOf(library);
    input.recipes = library.recipes;
    return input;
}

MenuComparison compared(const LibraryState& library)
{
    const PlanInput input = inputOf(library);
    auto table = std::make_shared<const menus::MenuTable>(menus::MenuTable::make(input).value());
    std::vector<menus::ComparedMenu> all;
    for (std::size_t i = 0; i < table->size(); ++i) {
        all.push_back(table->unplanned(i));
    }
    return {input, table, all};
}

menus::ComparedMenu known(const MenuComparison& comparison, std::size_t number, int handsOn,
                          int lastHour)
{
    menus::ComparedMenu menu = comparison.menus()[number];
    menu.cookable = Cookable::Yes;
    menu.evening = menus::EveningFigures{};
    menu.evening->handsOn = Minutes{handsOn};
    menu.evening->lastHour = Minutes{lastHour};
    return menu;
}

const LibraryState& library()
{
    static const LibraryState demo = test::demoLibrary("midsummer-supper");
    return demo;
}

TEST(MenuComparison, DrawsMenusOfWhichBothFiguresAreKnownAndTellsWhichNothingBeats)
{
    MenuComparison comparison = compared(library());
    EXPECT_TRUE(comparison.points().empty());
    comparison.update(known(comparison, 3, 500, 40));
    comparison.update(known(comparison, 4, 480, 50));
    comparison.update(known(comparison, 5, 510, 60));
    const auto& points = comparison.points();
    ASSERT_EQ(points.size(), 3U);
    EXPECT_EQ(points[0], (MenuPoint{4, 480, 50, true}));
    EXPECT_EQ(points[1], (MenuPoint{3, 500, 40, true}));
    EXPECT_FALSE(points[2].isUnbeaten);
    EXPECT_EQ(comparison.counts(), u"81 menus: 3 can be cooked here, 0 cannot, 78 not settled."_s);
    EXPECT_TRUE(comparison.summary().contains(comparison.nameOf(4)));
}

TEST(MenuComparison, KnowsTheMenuThatIsCookedNow)
{
    const MenuComparison comparison = compared(library());
    const auto now = comparison.menuNow(openOccasion(library())->occasion);
    ASSERT_TRUE(now);
    EXPECT_EQ(comparison.nameOf(*now),
              u"Chilled beetroot soup, Smoked trout, Braised shoulder, Rhubarb pavlova"_s);
}

TEST(MenuComparison, IsOutOfDateWhenGuestsChangeButNotWhenPortionsDo)
{
    const MenuComparison comparison = compared(library());
    EXPECT_FALSE(comparison.isStale(library()));
    const auto portions = withOccasion(library(), [](Occasion& occasion) {
        occasion.courses.front().dishes.front().mix.front().portions = Portions{7};
    });
    EXPECT_FALSE(comparison.isStale(portions));
    const auto guests = withOccasion(library(), [](Occasion& occasion) {
        occasion.guests.front().allergies.push_back(Substance::Milk);
    });
    EXPECT_TRUE(comparison.isStale(guests));
    EXPECT_FALSE(comparison.take(guests, 0));
}

TEST(MenuComparison, TakenIsOneChangeOfTheMenu)
{
    const MenuComparison comparison = compared(library());
    const auto edit = comparison.take(library(), 80);
    ASSERT_TRUE(edit);
    EXPECT_EQ(comparison.menuNow(openOccasion(edit->next)->occasion), 80U);
    EXPECT_TRUE(edit->text.startsWith(u"Take menu: "_s));
    EXPECT_FALSE(comparison.isStale(edit->next)) << "another may be taken at once";
}

TEST(MenuTable, SortsByAnyFigureWithWhatIsNotKnownLast)
{
    MenuComparison comparison = compared(library());
    comparison.update(known(comparison, 3, 500, 40));
    comparison.update(known(comparison, 7, 480, 50));
    MenuTableModel table;
    const QAbstractItemModelTester tester(&table,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    table.show(&comparison);
    ASSERT_EQ(table.rowCount(), 81);
    const QPersistentModelIndex kept = table.index(table.rowOf(7), 0);
    table.sort(3, Qt::AscendingOrder); // hands-on
    EXPECT_EQ(table.menuAt(0), 7U);
    EXPECT_EQ(table.menuAt(1), 3U);
    EXPECT_EQ(kept.row(), 0);
    table.sort(3, Qt::DescendingOrder);
    EXPECT_EQ(table.menuAt(0), 3U);
    EXPECT_EQ(table.menuAt(1), 7U);
    EXPECT_TRUE(
        table.index(0, 0).data(Qt::AccessibleTextRole).toString().contains(u"nothing beats it"_s));
    table.show(nullptr);
    EXPECT_EQ(table.rowCount(), 0);
}

TEST(FigureScale, IsRoundInMinutesAndInNumbers)
{
    EXPECT_EQ(figureScale(Figure::HandsOn, 583, 721, 6), (FigureScale{570, 750, 30}));
    EXPECT_EQ(figureScale(Figure::Energy, 6700, 11900, 6), (FigureScale{6000, 14000, 2000}));
    EXPECT_EQ(figureScale(Figure::OvenChanges, 1, 3, 6).low, 0);
}

TEST(PlaceModel, ShowsTheDemosGuestsAndChangesOneOfThem)
{
    PlaceModel model;
    const QAbstractItemModelTester tester(&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.show(library());
    EXPECT_EQ(model.rowCount(), 8);
    EXPECT_EQ(model.columnCount(), 6) << "four courses and two sides";
    const QModelIndex beasTartlet = model.index(1, 1);
    EXPECT_TRUE(model.data(beasTartlet, Qt::DisplayRole).toString().contains(u"ushroom"_s));
    const auto choices = model.choices(beasTartlet);
    const auto wheat = std::ranges::find_if(choices, [](const PlaceChoice& choice) {
        return choice.text.startsWith(u"✕"_s) && choice.text.contains(u"wheat"_s);
    });
    ASSERT_NE(wheat, choices.end()) << "a wheat case is marked as not for Bea";
    const auto edit = model.edit(library(), beasTartlet, static_cast<int>(wheat - choices.begin()));
    ASSERT_TRUE(edit);
    model.show(edit->next);
    EXPECT_TRUE(model.data(beasTartlet, Qt::DisplayRole).toString().startsWith(u"✕ wheat"_s));
    EXPECT_TRUE(model.summary().contains(u"✕"_s));
    const auto again = sharedOut(edit->next);
    ASSERT_TRUE(again);
    model.show(again->next);
    EXPECT_FALSE(model.summary().contains(u"✕"_s));
    EXPECT_FALSE(sharedOut(again->next)) << "nothing more to do";
}

} // namespace
} // namespace suppertide::ui
