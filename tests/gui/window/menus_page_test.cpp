// “Menus” by keyboard: the supper's two alternatives are compared in the background, the table and
// the chart fill, one is taken and taken back; and what was compared is said to be out of date.
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
    [[nodiscard]] QTableView& table() const { return part<QTableView>(u"menuTable"_s); }
    [[nodiscard]] QString note() const { return part<QLabel>(u"menusNote"_s).text(); }
};

TEST_F(MenusPageTest, SaysWhatItIsForBeforeAnythingIsCompared)
{
    EXPECT_TRUE(note().contains(u"alternatives"_s)) << note().toStdString();
    EXPECT_FALSE(table().isVisible());
    EXPECT_TRUE(part<QPushButton>(u"compareMenus"_s).isEnabled());
}

TEST_F(MenusPageTest, ComparesAndTakesAMenuWithTheKeyboard)
{
    offerRoots();
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
    offerRoots();
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
    offerRoots();
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

} // namespace
} // namespace suppertide::ui
