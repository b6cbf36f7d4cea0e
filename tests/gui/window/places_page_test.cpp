// “At table”: who gets what changed with keys and mouse, by guest and by variant, and put on paper.
#include <QComboBox>
#include <QFile>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableView>

#include "tests/gui/window/open_window.h"
#include "ui/pages/places/mix_view.h"

namespace suppertide::ui {
namespace {

using namespace Qt::StringLiterals;

class PlacesPageTest : public test::OpenWindow
{
protected:
    void SetUp() override
    {
        OpenWindow::SetUp();
        offerRoots();
        QTest::keyClick(window_.get(), Qt::Key_T, Qt::ControlModifier | Qt::ShiftModifier);
        ASSERT_TRUE(part<QWidget>(u"placesPage"_s).isVisible());
    }
    /// The rows are the gratin's variant, the roots' and nothing.
    MixView& mix()
    {
        if (!part<QPushButton>(u"placesByVariant"_s).isChecked()) {
            press(u"placesByVariant"_s);
            QCoreApplication::processEvents();
        }
        return part<MixView>(u"mixTable"_s);
    }
    [[nodiscard]] QPoint middleOf(const MixView& view, int row, int guest) const
    {
        const QRect cell = view.visualRect(view.model()->index(row, guest));
        return view.viewport()->mapTo(window_.get(), cell.center());
    }
};

TEST_F(PlacesPageTest, GivesAGuestSomethingElseWithKeys)
{
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

TEST_F(PlacesPageTest, IsSavedAsAPdf)
{
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

TEST_F(PlacesPageTest, DragsAPortionToAnotherVariantAndTakesItBack)
{
    MixView& view = mix();
    ASSERT_TRUE(view.isVisible());
    ASSERT_EQ(view.model()->rowCount(), 3);
    ASSERT_EQ(view.model()->columnCount(), 4);
    const Occasion before = occasion();
    QSignalSpy said(&view, &MixView::said);
    dragAndLook(middleOf(view, 0, 2), middleOf(view, 1, 2), [&] {
        ASSERT_TRUE(view.dragged());
        EXPECT_EQ(view.dragged()->over, 1);
        EXPECT_EQ(occasion(), before) << "a drag is a preview";
    });
    EXPECT_FALSE(view.dragged());
    EXPECT_EQ(portions(0), Portions{3});
    EXPECT_EQ(portions(1), Portions{1});
    EXPECT_EQ(view.currentIndex(), view.model()->index(1, 2));
    ASSERT_FALSE(said.isEmpty());
    EXPECT_TRUE(said.back().front().toString().contains(u"gets Roast roots"_s))
        << said.back().front().toString().toStdString();
    document_->undoStack().undo();
    EXPECT_EQ(occasion(), before);
}

TEST_F(PlacesPageTest, LeavesAllAsItIsWhereAPortionCannotGo)
{
    MixView& view = mix();
    const Occasion before = occasion();
    QSignalSpy said(&view, &MixView::said);
    const QPoint outside = view.viewport()->mapTo(window_.get(), QPoint(20, view.height() + 30));
    drag(middleOf(view, 0, 0), outside);
    EXPECT_EQ(occasion(), before);
    ASSERT_FALSE(said.isEmpty());
    EXPECT_TRUE(said.back().front().toString().contains(u"another row of the same course"_s));
    said.clear();
    drag(middleOf(view, 1, 0), middleOf(view, 0, 0)); // nobody's portion
    EXPECT_EQ(occasion(), before);
    EXPECT_FALSE(said.isEmpty());
}

TEST_F(PlacesPageTest, EndsADragOnEscape)
{
    MixView& view = mix();
    const Occasion before = occasion();
    dragAndLook(middleOf(view, 0, 0), middleOf(view, 1, 0), [&] {
        QTest::keyClick(&view, Qt::Key_Escape);
        EXPECT_FALSE(view.dragged());
    });
    EXPECT_EQ(occasion(), before);
}

TEST_F(PlacesPageTest, MovesAPortionWithKeys)
{
    MixView& view = mix();
    view.setFocus(Qt::TabFocusReason);
    view.setCurrentIndex(view.model()->index(0, 1));
    QTest::keyClick(&view, Qt::Key_Down, Qt::ControlModifier);
    EXPECT_EQ(portions(1), Portions{1});
    EXPECT_EQ(view.currentIndex().row(), 1);
    QTest::keyClick(&view, Qt::Key_Up);
    QTest::keyClick(&view, Qt::Key_Space);
    EXPECT_EQ(portions(1), Portions{0});
    EXPECT_EQ(portions(0), Portions{4});
}

TEST_F(PlacesPageTest, ShowsWhatDoesNotSuitAsTheClashThatItIs)
{
    document_->apply(
        withOccasion(document_->library(),
                     [](Occasion& occasion) { occasion.guests[0].allergies = {Substance::Milk}; }),
        u"Allergy"_s);
    Recipe gratin = *document_->library().recipes.at(RecipeId{"gratin"});
    gratin.common.lines.front().contains = {Substance::Milk};
    document_->apply(withRecipe(document_->library(), gratin), u"Cream"_s);
    press(u"shareOut"_s);
    MixView& view = mix();
    QSignalSpy said(&view, &MixView::said);
    const int from = view.model()->index(0, 0).data().toString().startsWith(u"●"_s) ? 0 : 1;
    ASSERT_EQ(from, 1) << "the gratin has cream";
    EXPECT_EQ(view.model()->index(0, 0).data().toString(), u"✕"_s);
    drag(middleOf(view, 1, 0), middleOf(view, 0, 0));
    ASSERT_FALSE(said.isEmpty());
    EXPECT_TRUE(said.back().front().toString().contains(u"milk"_s));
    EXPECT_TRUE(said.back().front().toString().contains(u"clash"_s));
    // The plan may be laid out beside, so it is waited for.
    const auto hasMilk = [this](int count) {
        return QTest::qWaitFor([&] { return clashes().filter(u"milk"_s).size() == count; });
    };
    EXPECT_TRUE(hasMilk(1)) << clashes().join(u'\n').toStdString();
    document_->undoStack().undo();
    EXPECT_TRUE(hasMilk(0)) << clashes().join(u'\n').toStdString();
}

} // namespace
} // namespace suppertide::ui
