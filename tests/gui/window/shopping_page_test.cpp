// “Shopping” by keyboard and mouse: the list is there, a tick is kept, undone and redone, what is
// at home and a price are noted, and the list is saved.
#include <QAction>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTextBrowser>
#include <QTreeView>

#include <algorithm>

#include "tests/gui/window/open_window.h"
#include "ui/models/larder_outline.h"
#include "ui/models/reading_choice.h"
#include "ui/models/shopping_items.h"
#include "ui/pages/outline/outline_page.h"
#include "ui/pages/shopping/shopping_page.h"

namespace suppertide::ui {
namespace {

using namespace Qt::StringLiterals;

class ShoppingPageTest : public test::OpenWindow
{
protected:
    void SetUp() override
    {
        OpenWindow::SetUp();
        QTest::keyClick(window_.get(), Qt::Key_6, Qt::ControlModifier);
        ASSERT_TRUE(page().isVisible());
        ASSERT_TRUE(isWorkedOut());
    }
    [[nodiscard]] ShoppingPage& page() const { return part<ShoppingPage>(u"shoppingPage"_s); }
    [[nodiscard]] bool isWorkedOut() const
    {
        constexpr int longEnough = 60'000; // ms: for a busy machine; nothing is measured
        return QTest::qWaitFor([this] { return !page().isWorking(); }, longEnough);
    }
    [[nodiscard]] QTreeView& list() const { return part<QTreeView>(u"shoppingList"_s); }
    [[nodiscard]] const ShoppingItems& items() const { return page().items(); }
    [[nodiscard]] const shopping::ShoppingLine& chosen() const
    {
        const auto* line = items().lineAt(list().currentIndex());
        if (line == nullptr) {
            throw std::logic_error("no line is chosen");
        }
        return *line;
    }
    /// The first thing to buy, with the arrow keys.
    void chooseFirst() const
    {
        list().setFocus(Qt::TabFocusReason);
        QTest::keyClick(&list(), Qt::Key_Home);
        for (int i = 0; i < 9 && items().lineAt(list().currentIndex()) == nullptr; ++i) {
            QTest::keyClick(&list(), Qt::Key_Down);
        }
        ASSERT_NE(items().lineAt(list().currentIndex()), nullptr);
    }
    /// An entry of the View menu, and the list as it then is.
    void choose(const QString& entry) const
    {
        for (QAction* action : window_->findChildren<QAction*>()) {
            if (action->text().remove(u'&') == entry) {
                action->trigger();
            }
        }
        ASSERT_TRUE(isWorkedOut());
    }
    [[nodiscard]] const Bought& bought() const
    {
        return openOccasion(document_->library())->bought;
    }
};

TEST_F(ShoppingPageTest, ListsWhatToBuyAndSaysWhatItIsFor)
{
    ASSERT_FALSE(items().list().lines.empty());
    chooseFirst();
    const QString told = part<QTextBrowser>(u"shoppingLine"_s).toPlainText();
    EXPECT_TRUE(told.contains(QString::fromStdString(chosen().ingredient))) << told.toStdString();
    EXPECT_TRUE(told.contains(u" for "_s)) << told.toStdString();
    EXPECT_TRUE(part<QLabel>(u"shoppingSummary"_s).text().contains(u"Check the label"_s));
}

TEST_F(ShoppingPageTest, KeepsATickAndTakesItBack)
{
    chooseFirst();
    const std::string key = chosen().key;
    QTest::keyClick(&list(), Qt::Key_Space);
    EXPECT_TRUE(bought().lines.contains(key));
    EXPECT_EQ(chosen().key, key);
    EXPECT_TRUE(chosen().isBought);
    QTest::keyClick(window_.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(bought().empty());
    EXPECT_FALSE(chosen().isBought);
    QTest::keyClick(window_.get(), Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(bought().lines.contains(key));
    close();
    open();
    EXPECT_TRUE(bought().lines.contains(key));
}

TEST_F(ShoppingPageTest, NotesWhatIsAtHomeAndAPrice)
{
    chooseFirst();
    const shopping::ShoppingLine line = chosen();
    QTest::mouseClick(&part<QPushButton>(u"shoppingAtHome"_s), Qt::LeftButton);
    ASSERT_EQ(larderOf(document_->library()).stock.size(), 1U);
    EXPECT_EQ(larderOf(document_->library()).stock[0].ingredient, line.ingredient);
    EXPECT_EQ(part<OutlinePage>(u"larderPage"_s).selected(), "stock:0");
    QComboBox& views = part<QComboBox>(u"shoppingViews"_s);
    QTest::keyClick(&views, Qt::Key_Home);
    ASSERT_TRUE(isWorkedOut());
    const auto* now = items().lineAt(items().find(line.key));
    ASSERT_NE(now, nullptr);
    EXPECT_GT(now->fromHome.value, Rational{0});
    list().setCurrentIndex(items().find(line.key));
    QTest::mouseClick(&part<QPushButton>(u"shoppingPrice"_s), Qt::LeftButton);
    EXPECT_EQ(larderOf(document_->library()).packs.size(), 1U);
    EXPECT_EQ(part<OutlinePage>(u"larderPage"_s).selected(), "pack:0");
    // What is typed then is the price.
    auto* price = qobject_cast<QLineEdit*>(window_->focusWidget());
    ASSERT_NE(price, nullptr);
    QTest::keyClicks(price, u"-3"_s);
    QTest::keyClick(price, Qt::Key_Tab);
    EXPECT_EQ(larderOf(document_->library()).packs[0].price, std::nullopt);
    price->setFocus(Qt::TabFocusReason);
    QTest::keyClicks(price, u"1.25"_s);
    QTest::keyClick(price, Qt::Key_Tab);
    EXPECT_EQ(larderOf(document_->library()).packs[0].price, 125);
}

TEST_F(ShoppingPageTest, KeepsTheListWhileAnotherIsWorkedOutAndSaysSo)
{
    const QLabel& working = part<QLabel>(u"shoppingWorking"_s);
    EXPECT_EQ(working.text(), QString());
    const std::vector<shopping::ShoppingLine> before = items().list().lines;
    Larder larder = larderOf(document_->library());
    larder.stock.push_back({before.front().ingredient, before.front().needed, {}});
    document_->apply(withLarder(document_->library(), larder), u"stock"_s);
    // Nothing of it is done on this thread: the list before is there until a later event.
    EXPECT_TRUE(page().isWorking());
    EXPECT_TRUE(working.text().contains(u"worked out"_s));
    EXPECT_EQ(items().list().lines, before);
    ASSERT_TRUE(isWorkedOut());
    EXPECT_EQ(working.text(), QString());
    const auto* now = items().lineAt(items().find(before.front().key));
    ASSERT_NE(now, nullptr);
    EXPECT_GT(now->fromHome.value, Rational{0});
}

TEST_F(ShoppingPageTest, KeepsATickThatComesWhileTheListIsWorkedOut)
{
    chooseFirst();
    const shopping::ShoppingLine line = chosen();
    Larder larder = larderOf(document_->library());
    larder.currency = "CHF";
    document_->apply(withLarder(document_->library(), larder), u"currency"_s);
    ASSERT_TRUE(page().isWorking());
    QTest::keyClick(&list(), Qt::Key_Space);
    EXPECT_TRUE(chosen().isBought);
    ASSERT_TRUE(isWorkedOut());
    EXPECT_EQ(items().list().currency, "CHF");
    EXPECT_EQ(chosen().key, line.key);
    EXPECT_TRUE(chosen().isBought);
}

TEST_F(ShoppingPageTest, SaysAmountsInTheMeasuresThatAreChosenAndRemembersThem)
{
    const std::vector<shopping::ShoppingLine> stored = items().list().lines;
    const auto weighed = std::ranges::find_if(stored, [](const shopping::ShoppingLine& line) {
        return line.trip && line.packs.empty() && line.toBuy.unit == Unit::Gram &&
               line.toBuy.value > Rational{100};
    });
    ASSERT_NE(weighed, stored.end());
    const auto shown = [&] {
        return items().data(items().find(weighed->key), Qt::DisplayRole).toString();
    };
    EXPECT_TRUE(shown().endsWith(u" g"_s)) << shown().toStdString();
    choose(u"US customary"_s);
    EXPECT_TRUE(shown().contains(u"oz"_s) || shown().contains(u"lb"_s)) << shown().toStdString();
    // What is bought, and what is stored, is the same.
    for (std::size_t i = 0; i < stored.size(); ++i) {
        EXPECT_EQ(items().list().lines[i].toBuy, stored[i].toBuy);
    }
    EXPECT_EQ(document_->undoStack().count(), 0);
    QComboBox& views = part<QComboBox>(u"shoppingViews"_s);
    QTest::keyClick(&views, Qt::Key_End);
    const QString measured = part<QTextBrowser>(u"measuringText"_s).toPlainText();
    EXPECT_TRUE(measured.contains(u" oz "_s) || measured.contains(u" cup"_s) ||
                measured.contains(u" lb "_s))
        << measured.toStdString();
    EXPECT_FALSE(measured.contains(u" kg "_s)) << measured.toStdString();
    close();
    open();
    EXPECT_EQ(readingStyle(*document_).measures, MeasureSystem::UsCustomary);
    QTest::keyClick(window_.get(), Qt::Key_6, Qt::ControlModifier);
    ASSERT_TRUE(isWorkedOut());
    EXPECT_TRUE(shown().contains(u"oz"_s) || shown().contains(u"lb"_s)) << shown().toStdString();
    choose(u"The recipes' own units"_s);
    EXPECT_TRUE(shown().endsWith(u" g"_s)) << shown().toStdString();
}

TEST_F(ShoppingPageTest, ShowsEquipmentAndWhatToMeasureOut)
{
    QComboBox& views = part<QComboBox>(u"shoppingViews"_s);
    QTest::keyClick(&views, Qt::Key_End);
    EXPECT_TRUE(part<QTextBrowser>(u"measuringText"_s).isVisible());
    EXPECT_TRUE(part<QTextBrowser>(u"measuringText"_s).toPlainText().contains(u"To measure out"_s));
    QTest::keyClick(&views, Qt::Key_Up);
    EXPECT_TRUE(part<QTextBrowser>(u"equipmentText"_s).toPlainText().contains(u"Equipment"_s));
}

TEST_F(ShoppingPageTest, SavesTheListAndAPdf)
{
    for (const auto& [button, name, begin] :
         {std::tuple{u"shoppingSave"_s, "list.csv", QByteArray("Trip,")},
          std::tuple{u"shoppingSave"_s, "list.txt", QByteArray("Shopping for")},
          std::tuple{u"shoppingPdf"_s, "list.pdf", QByteArray("%PDF-")}}) {
        const QString file = folder_.filePath(QString::fromLatin1(name));
        answers_.file = file;
        QTest::mouseClick(&part<QPushButton>(button), Qt::LeftButton);
        QFile written(file);
        ASSERT_TRUE(written.open(QIODevice::ReadOnly)) << name;
        EXPECT_TRUE(written.readAll().startsWith(begin)) << name;
    }
}

} // namespace
} // namespace suppertide::ui
