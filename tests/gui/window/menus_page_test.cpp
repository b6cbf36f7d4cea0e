// “Menus” by keyboard: the supper's two alternatives are compared in the background, the table and
// the chart fill, one is taken and taken back; and what was compared is said to be out of date.
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTableView>

#include <set>

#include "tests/gui/window/open_window.h"
#include "ui/models/edit.h"
#include "ui/pages/menus/menu_chart.h"

namespace suppertide::ui {
namespace {

using namespace Qt::StringLiterals;

constexpr int longEnough = 60'000; // ms: for a busy machine; nothing is measured

class MenusPageTest : public test::OpenWindow
{
protected:
    void SetUp() override
    {
        OpenWindow::SetUp();
        QTest::keyClick(window_.get(), Qt::Key_0, Qt::ControlModifier);
        ASSERT_TRUE(part<QWidget>(u"menusPage"_s).isVisible());
    }
    /// Roots as an alternative to the gratin.
    void addAlternative()
    {
        document_->apply(
            withOccasion(document_->library(),
                         [](Occasion& occasion) {
                             Course& main = occasion.courses.front();
                             main.alternatives.push_back({AlternativeId{"roots"}, "Roots"});
                             Dish dish;
                             dish.id = DishId{"roots"};
                             dish.recipe = RecipeId{"roots"};
                             dish.alternative = AlternativeId{"roots"};
                             main.dishes.push_back(dish);
                         }),
            u"Add roots"_s);
    }
    void compare()
    {
        press(u"compareMenus"_s);
        ASSERT_TRUE(QTest::qWaitFor(
            [this] {
                return !part<QPushButton>(u"stopComparing"_s).isVisible() &&
                       table().model()->rowCount() > 0;
            },
            longEnough));
    }
    void press(const QString& name) const
    {
        auto& button = part<QPushButton>(name);
        button.setFocus(Qt::TabFocusReason);
        QTest::keyClick(&button, Qt::Key_Space);
    }
    [[nodiscard]] QTableView& table() const { return part<QTableView>(u"menuTable"_s); }
    [[nodiscard]] QString note() const { return part<QLabel>(u"menusNote"_s).text(); }
    [[nodiscard]] const Occasion& occasion() const
    {
        return openOccasion(document_->library())->occasion;
    }
    [[nodiscard]] Portions portions(std::size_t dish) const
    {
        return portionsOf(occasion().courses.front().dishes[dish]);
    }
};

TEST_F(MenusPageTest, SaysWhatItIsForBeforeAnythingIsCompared)
{
    EXPECT_TRUE(note().contains(u"alternatives"_s)) << note().toStdString();
    EXPECT_FALSE(table().isVisible());
    EXPECT_TRUE(part<QPushButton>(u"compareMenus"_s).isEnabled());
}

TEST_F(MenusPageTest, ComparesAndTakesAMenuWithTheKeyboard)
{
    addAlternative();
    compare();
    ASSERT_EQ(table().model()->rowCount(), 2);
    EXPECT_TRUE(note().startsWith(u"2 menus: 2 can be cooked here"_s)) << note().toStdString();
    EXPECT_EQ(part<MenuChart>(u"menuChart"_s).points().size(), 2U);
    const Occasion before = occasion();
    table().setFocus(Qt::TabFocusReason);
    QTest::keyClick(&table(), Qt::Key_Home, Qt::ControlModifier);
    QTest::keyClick(&table(), Qt::Key_Down);
    EXPECT_TRUE(part<QPlainTextEdit>(u"menuDetail"_s).toPlainText().contains(u"Roast roots"_s));
    press(u"takeMenu"_s);
    EXPECT_EQ(portions(0), Portions{0});
    EXPECT_EQ(portions(1), Portions{4});
    EXPECT_TRUE(openOccasion(document_->library())->layout.starts.contains("roots/*/peel"));
    EXPECT_TRUE(clashes().isEmpty());
    document_->undoStack().undo();
    EXPECT_EQ(occasion(), before);
}

TEST_F(MenusPageTest, GoesFromDotToDotWithArrowKeys)
{
    addAlternative();
    compare();
    auto& chart = part<MenuChart>(u"menuChart"_s);
    chart.setFocus(Qt::TabFocusReason);
    std::set<int> rows;
    for (int i = 0; i < 3; ++i) {
        QTest::keyClick(&chart, i == 0 ? Qt::Key_Left : Qt::Key_Right);
        rows.insert(table().currentIndex().row());
    }
    EXPECT_EQ(rows.size(), 2U);
}

TEST_F(MenusPageTest, SaysWhenTheEveningHasChangedAndTakesNothingThen)
{
    addAlternative();
    compare();
    document_->apply(withOccasion(document_->library(),
                                  [](Occasion& occasion) {
                                      occasion.guests.front().allergies = {Substance::Milk};
                                  }),
                     u"Allergy"_s);
    EXPECT_TRUE(note().contains(u"has changed"_s)) << note().toStdString();
    EXPECT_FALSE(part<QPushButton>(u"takeMenu"_s).isEnabled());
    document_->undoStack().undo();
    EXPECT_FALSE(note().contains(u"has changed"_s));
}

TEST_F(MenusPageTest, AtTableGivesAGuestSomethingElseWithKeys)
{
    addAlternative();
    QTest::keyClick(window_.get(), Qt::Key_T, Qt::ControlModifier | Qt::ShiftModifier);
    auto& places = part<QTableView>(u"placeTable"_s);
    ASSERT_TRUE(places.isVisible());
    ASSERT_EQ(places.model()->rowCount(), 4);
    places.setFocus(Qt::TabFocusReason);
    places.setCurrentIndex(places.model()->index(0, 0));
    QTest::keyClick(&places, Qt::Key_Return);
    auto* choice = places.findChild<QComboBox*>(u"placeChoice"_s);
    ASSERT_NE(choice, nullptr);
    QTest::keyClick(choice, Qt::Key_End);
    QTest::keyClick(choice, Qt::Key_Return);
    ASSERT_TRUE(QTest::qWaitFor([this] { return portions(1) == Portions{1}; }));
    EXPECT_EQ(portions(0), Portions{3});
    press(u"shareOut"_s);
    EXPECT_EQ(portions(0), Portions{4});
    EXPECT_EQ(portions(1), Portions{0});
    document_->undoStack().undo();
    EXPECT_EQ(portions(1), Portions{1});
}

TEST_F(MenusPageTest, AtTableIsSavedAsAPdf)
{
    QTest::keyClick(window_.get(), Qt::Key_T, Qt::ControlModifier | Qt::ShiftModifier);
    answers_.file = folder_.filePath(u"places.pdf"_s);
    press(u"placesPdf"_s);
    QFile pdf(*answers_.file);
    ASSERT_TRUE(pdf.open(QIODevice::ReadOnly));
    EXPECT_EQ(pdf.read(5), QByteArray("%PDF-"));
    answers_.file = u"/nowhere/places.pdf"_s;
    press(u"placesPdf"_s);
    ASSERT_EQ(answers_.told.size(), 1);
    EXPECT_TRUE(answers_.told.front().contains(u"could not be written"_s));
}

} // namespace
} // namespace suppertide::ui
