#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QMouseEvent>
#include <QPushButton>
#include <QScrollBar>
#include <QTreeView>

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/gui/panels/reach.h"
#include "tests/support/demo_evening.h"
#include "tests/support/memory_library.h"
#include "ui/document/document.h"
#include "ui/models/menu_outline.h"
#include "ui/models/recipe_outline.h"
#include "ui/pages/outline/outline_page.h"

namespace suppertide::ui {
namespace {

using suppertide::test::Memory;
using suppertide::test::MemoryLibrary;

class MenuPage : public testing::Test
{
protected:
    void SetUp() override
    {
        looks_.see(openOccasion(memory_->state)->occasion);
        auto opened = Document::open(std::make_unique<MemoryLibrary>(memory_));
        ASSERT_TRUE(opened);
        document_ = std::move(*opened);
        page_ = std::make_unique<OutlinePage>("Menu and guests",
                                              std::make_unique<MenuOutline>(looks_, clock_),
                                              *document_, makeTheme(Appearance::Light));
        page_->resize(340, 900);
        ASSERT_TRUE(test::becomesActive(*page_));
    }
    [[nodiscard]] const Occasion& occasion() const
    {
        return openOccasion(document_->library())->occasion;
    }
    /// Editors of the row before go, and those of this one show, when the event loop comes round.
    static void settle()
    {
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        QCoreApplication::processEvents();
    }
    [[nodiscard]] QLineEdit& line(const char* key) const
    {
        settle();
        const auto* editor =
            page_->findChild<QWidget*>(QStringLiteral("field.") + QLatin1String(key));
        auto* input = editor == nullptr ? nullptr : editor->findChild<QLineEdit*>();
        if (input == nullptr) {
            throw std::runtime_error(key);
        }
        return *input;
    }
    void type(QLineEdit& input, const char* text) const
    {
        input.setFocus(Qt::TabFocusReason);
        input.selectAll();
        QTest::keyClicks(&input, QString::fromUtf8(text));
        QTest::keyClick(&input, Qt::Key_Return);
    }

    std::shared_ptr<Memory> memory_ = [] {
        auto memory = std::make_shared<Memory>();
        memory->state = test::demoLibrary();
        return memory;
    }();
    DishLooks looks_;
    FixedClock clock_{TimeZone::utc().instant(CivilTime{{2027, 6, 1}, {12, 0}})};
    std::unique_ptr<Document> document_;
    std::unique_ptr<OutlinePage> page_;
};

TEST_F(MenuPage, NamesAllThatCanHaveTheFocusOnEveryRow)
{
    const MenuOutline outline{looks_, clock_};
    for (const OutlineRow& row : outline.rows(document_->library())) {
        page_->select(row.id);
        ASSERT_EQ(page_->selected(), row.id);
        EXPECT_EQ(test::withoutName(*page_), QStringList()) << row.id;
    }
}

TEST_F(MenuPage, LetsTabComeToRowsCommandsAndFields)
{
    for (const char* row : {"occasion", "course:main", "course:main/dish:squash", "guest:bea"}) {
        page_->select(row);
        page_->findChild<QTreeView*>("rows")->setFocus(Qt::TabFocusReason);
        EXPECT_EQ(test::notReachedByTab(*page_), QStringList()) << row;
    }
}

TEST_F(MenuPage, TypesAFieldAsOneChangeThatCanBeUndone)
{
    const LibraryState before = document_->library();
    page_->select("guest:bea");
    type(line("name"), "Beatrix");
    EXPECT_EQ(findIn(occasion().guests, GuestId{"bea"})->name, "Beatrix");
    EXPECT_EQ(document_->undoStack().count(), 1);
    document_->undoStack().undo();
    EXPECT_EQ(document_->library(), before);
    EXPECT_EQ(page_->selected(), "guest:bea");
    EXPECT_EQ(line("name").text(), "Bea");
}

TEST_F(MenuPage, SaysAtTheFieldWhatItCannotRead)
{
    const LibraryState before = document_->library();
    page_->select("course:dessert/dish:pavlova");
    type(line("portions:almond"), "a few");
    EXPECT_EQ(document_->library(), before);
    const auto* editor = page_->findChild<QWidget*>("field.portions:almond");
    bool isSaid = false;
    for (const QLabel* label : editor->findChildren<QLabel*>()) {
        isSaid = isSaid || (label->isVisible() && label->text().contains("cannot be read here"));
    }
    EXPECT_TRUE(isSaid) << "what can be written instead";
}

/// Commands of the row that is pressed may take another row's room, so that rows move.
TEST_F(MenuPage, ChoosesTheRowThatWasPressedWhereverItMoves)
{
    page_->select("guest:bea");
    auto& rows = *page_->findChild<QTreeView*>("rows");
    settle();
    const QModelIndex bea = rows.currentIndex();
    const QModelIndex next = rows.indexBelow(bea);
    rows.setCurrentIndex(rows.model()->index(0, 0));
    rows.scrollTo(next);
    QTest::mousePress(rows.viewport(), Qt::LeftButton, {}, rows.visualRect(bea).center());
    QMouseEvent moved(QEvent::MouseMove, rows.visualRect(next).center(),
                      rows.viewport()->mapToGlobal(rows.visualRect(next).center()), Qt::NoButton,
                      Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(rows.viewport(), &moved);
    QTest::mouseRelease(rows.viewport(), Qt::LeftButton, {}, rows.visualRect(next).center());
    EXPECT_EQ(page_->selected(), "guest:bea");
    EXPECT_EQ(rows.selectionModel()->selectedIndexes(), QModelIndexList{bea});
}

TEST_F(MenuPage, ShowsTheRowOfTheFormAsChosenThoughRowsMoveAsItIsPressed)
{
    page_->select("guest:bea");
    auto& rows = *page_->findChild<QTreeView*>("rows");
    settle();
    const QModelIndex bea = rows.currentIndex();
    page_->select("guest:ada");
    settle();
    rows.scrollTo(rows.indexBelow(bea));
    const QPoint at = rows.visualRect(bea).center();
    const int height = rows.visualRect(bea).height();
    QObject::connect(rows.selectionModel(), &QItemSelectionModel::currentChanged, &rows, [&] {
        QScrollBar& bar = *rows.verticalScrollBar();
        bar.setValue(bar.value() - height);
    });
    QTest::mouseClick(rows.viewport(), Qt::LeftButton, {}, at);
    settle();
    EXPECT_NE(rows.visualRect(bea).center(), at) << "it has moved";
    EXPECT_EQ(page_->selected(), "guest:bea");
    EXPECT_EQ(rows.selectionModel()->selectedIndexes(), QModelIndexList{bea});
}

TEST_F(MenuPage, SaysInTheFormWhatIsWrongWithTheRow)
{
    page_->select("guest:bea");
    const auto says = [this](const char* key) {
        const auto labels =
            page_->findChild<QWidget*>(QStringLiteral("field.") + QLatin1String(key))
                ->findChildren<QLabel*>();
        return std::any_of(labels.begin(), labels.end(), [](const QLabel* label) {
            return label->isVisibleTo(label->parentWidget()) &&
                   label->text().contains(QStringLiteral("eat"));
        });
    };
    const auto& dish = occasion().courses.front().dishes.front();
    ASSERT_FALSE(dish.mix.empty());
    page_->select("course:" + occasion().courses.front().id.text() + "/dish:" + dish.id.text() +
                  "/mix:" + dish.mix.front().variant.text());
    settle();
    EXPECT_FALSE(says("portions"));
    type(line("portions"), "1");
    settle();
    EXPECT_TRUE(says("portions"));
}

TEST_F(MenuPage, AddsAGuestAndShowsTheForm)
{
    page_->select("guests");
    auto* add = page_->findChild<QPushButton*>("command.add-guest");
    ASSERT_NE(add, nullptr);
    QTest::mouseClick(add, Qt::LeftButton);
    ASSERT_EQ(occasion().guests.size(), 9U);
    EXPECT_EQ(page_->selected(), "guest:" + occasion().guests.back().id.text());
    EXPECT_EQ(line("name").text().toStdString(), occasion().guests.back().name);
}

TEST_F(MenuPage, RemovesADishAndShowsTheCourse)
{
    page_->select("course:main/dish:squash");
    auto* remove = page_->findChild<QPushButton*>("command.remove");
    ASSERT_NE(remove, nullptr);
    remove->setFocus(Qt::TabFocusReason);
    QTest::keyClick(remove, Qt::Key_Space);
    EXPECT_EQ(findIn(occasion().courses[2].dishes, DishId{"squash"}), nullptr);
    EXPECT_EQ(page_->selected(), "course:main");
    document_->undoStack().undo();
    EXPECT_NE(findIn(occasion().courses[2].dishes, DishId{"squash"}), nullptr);
}

TEST_F(MenuPage, FollowsChangesThatItDidNotMake)
{
    page_->select("guest:bea");
    document_->apply(
        withOccasion(document_->library(),
                     [](Occasion& next) { findIn(next.guests, GuestId{"bea"})->name = "Beate"; }),
        "Rename");
    EXPECT_EQ(line("name").text(), "Beate");
}

/// The field that has the focus.
QString focusedField()
{
    const QWidget* widget = QApplication::focusWidget();
    return widget == nullptr || widget->parentWidget() == nullptr
               ? QString()
               : widget->parentWidget()->objectName();
}

class RecipePage : public MenuPage
{
protected:
    void SetUp() override
    {
        MenuPage::SetUp();
        const RecipeId pavlova{"rhubarb-pavlova"};
        const Recipe& recipe = *document_->library().recipes.at(pavlova);
        page_ = std::make_unique<OutlinePage>("Recipe", std::make_unique<RecipeOutline>(pavlova),
                                              *document_, makeTheme(Appearance::Light));
        page_->resize(340, 900);
        ASSERT_TRUE(test::becomesActive(*page_));
        page_->select("line:" + recipe.common.lines.front().id.text());
    }
};

/// What an amount weighs is said at the ingredient, and so changes with it.
TEST_F(RecipePage, GoesOnWithTheNextFieldThoughWhatIsSaidOfAnotherChanges)
{
    QLineEdit& amount = line("amount");
    amount.setFocus(Qt::TabFocusReason);
    amount.selectAll();
    QTest::keyClicks(&amount, QStringLiteral("7"));
    QTest::keyClick(&amount, Qt::Key_Tab);
    settle();
    EXPECT_EQ(document_->undoStack().count(), 1);
    EXPECT_TRUE(focusedField().startsWith(QStringLiteral("field.")))
        << focusedField().toStdString();
    EXPECT_NE(focusedField(), QStringLiteral("field.amount"));
    // Seven whites of 33 g.
    const auto labels =
        page_->findChild<QWidget*>(QStringLiteral("field.ingredient"))->findChildren<QLabel*>();
    EXPECT_TRUE(std::any_of(labels.begin(), labels.end(), [](const QLabel* label) {
        return label->text().contains(QStringLiteral("this weighs 2"));
    }));
}

TEST_F(RecipePage, KeepsTheFocusAtAFieldThatMakesOthersAppear)
{
    const auto known = [this] {
        return page_->findChild<QWidget*>(QStringLiteral("field.known"))->findChild<QCheckBox*>();
    };
    settle();
    known()->setFocus(Qt::TabFocusReason);
    QTest::keyClick(known(), Qt::Key_Space);
    settle();
    EXPECT_EQ(document_->undoStack().count(), 1);
    EXPECT_EQ(focusedField(), QStringLiteral("field.known"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    settle();
    EXPECT_EQ(document_->undoStack().count(), 2) << "and once more";
}

} // namespace
} // namespace suppertide::ui
