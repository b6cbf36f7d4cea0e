// The main job with the mouse, from start to end: a variant is dragged from the repertoire onto
// the timeline, two dishes want the oven at different temperatures, a step is dragged away, undo
// and redo, and the plan by the hour is printed; after a restart all of it is there.
#include <QMimeData>
#include <QProcess>
#include <QPushButton>
#include <QTreeView>

#include "tests/gui/window/open_window.h"

namespace suppertide::ui {
namespace {

using test::OpenWindow;

class MainJob : public OpenWindow
{
protected:
    /// Drags a variant from the repertoire to the left of the first serving line; `look` runs
    /// before it is let go. The screenless platform has no drag and drop of its own (its drags end
    /// at once), so the events that a window system sends are sent from here, with what the
    /// repertoire gives along.
    template <typename Look>
    void dragVariant(const QString& words, Look look)
    {
        const auto& list = part<QTreeView>(QStringLiteral("repertoire"));
        const QModelIndexList found =
            list.model()->match(list.model()->index(0, 0), Qt::DisplayRole, words, 1,
                                Qt::MatchContains | Qt::MatchRecursive);
        ASSERT_EQ(found.size(), 1) << words.toStdString();
        ASSERT_TRUE(list.dragEnabled());
        ASSERT_TRUE(found.front().flags() & Qt::ItemIsDragEnabled);
        const std::unique_ptr<QMimeData> data{list.model()->mimeData(found)};

        TimelineView& view = timeline();
        const double serving =
            view.state().geometry().x(view.state().scene().servings.front().time);
        const QPointF at{serving - 40, view.height() / 2.0};
        QDragEnterEvent enter{
            QPoint{view.width() / 2, 300}, Qt::CopyAction, data.get(), Qt::LeftButton, {}};
        QCoreApplication::sendEvent(&view, &enter);
        ASSERT_TRUE(enter.isAccepted());
        QDragMoveEvent move{at.toPoint(), Qt::CopyAction, data.get(), Qt::LeftButton, {}};
        QCoreApplication::sendEvent(&view, &move);
        ASSERT_TRUE(move.isAccepted());
        look();
        QDropEvent drop{at, Qt::CopyAction, data.get(), Qt::LeftButton, {}};
        QCoreApplication::sendEvent(&view, &drop);
        ASSERT_TRUE(drop.isAccepted());
    }

    [[nodiscard]] static QString textOfPdf(const QString& file)
    {
        QProcess reader;
        reader.start(QStringLiteral("pdftotext"),
                     {QStringLiteral("-raw"), file, QStringLiteral("-")});
        EXPECT_TRUE(reader.waitForFinished()) << "pdftotext (poppler-utils) is needed";
        return QString::fromUtf8(reader.readAllStandardOutput()).simplified();
    }
};

const QString ovenClash = QStringLiteral("the oven is wanted at 150 °C by the potato gratin and at "
                                         "220 °C by the roast roots.");

[[nodiscard]] bool hasOvenClash(const QStringList& sentences)
{
    return std::any_of(sentences.begin(), sentences.end(),
                       [](const QString& sentence) { return sentence.endsWith(ovenClash); });
}

TEST_F(MainJob, IsDoneWithTheMouse)
{
    EXPECT_EQ(clashes(), QStringList{});

    QStringList whileDragged;
    dragVariant(QStringLiteral("with thyme"), [&] { whileDragged = clashes(); });
    EXPECT_TRUE(hasOvenClash(whileDragged)) << whileDragged.join(u'\n').toStdString();
    EXPECT_EQ(document_->undoStack().count(), 1);
    // A plan that took longer than a frame to lay out is laid out beside.
    const auto collidesSoon = [this] {
        return QTest::qWaitFor([this] { return hasOvenClash(clashes()); });
    };
    const auto holdsSoon = [this] {
        return QTest::qWaitFor([this] { return clashes().isEmpty(); });
    };
    ASSERT_TRUE(collidesSoon()) << clashes().join(u'\n').toStdString();

    // An hour earlier the gratin is out before the oven heats up for the roots.
    const QPoint bake = onBlock("gratin/*/bake");
    dragAndLook(bake, bake - QPoint{pixels(Minutes{60}), 0}, [&] { whileDragged = clashes(); });
    EXPECT_EQ(whileDragged, QStringList{});
    EXPECT_TRUE(holdsSoon());

    QTest::keyClick(window_->windowHandle(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(collidesSoon());
    QTest::keyClick(window_->windowHandle(), Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(holdsSoon());

    const QString pdf = folder_.filePath(QStringLiteral("supper.pdf"));
    answers_.file = pdf;
    QTest::keyClick(window_->windowHandle(), Qt::Key_3, Qt::ControlModifier);
    auto& save = part<QPushButton>(QStringLiteral("savePdf"));
    QTest::mouseClick(window_->windowHandle(), Qt::LeftButton, {},
                      save.mapTo(window_.get(), save.rect().center()));
    EXPECT_EQ(answers_.told, QStringList{});
    const QString paper = textOfPdf(pdf);
    for (const char* words :
         {"Supper for four", "Saturday 19 June", "Sam", "Potato gratin into the oven",
          "Roast roots into the oven", "150°", "220°", "Hot oil", "Serve main", "19:30",
          "Local food-safety codes"}) {
        EXPECT_TRUE(paper.contains(QString::fromUtf8(words))) << words << "\n"
                                                              << paper.toStdString();
    }

    const LibraryState left = document_->library();
    close();
    open();
    EXPECT_EQ(differenceOf(left, document_->library(), {}).parts.size(), 0U);
    EXPECT_EQ(document_->undoStack().undoText(), QStringLiteral("Move: bake potato gratin"));
    EXPECT_EQ(clashes(), QStringList{});
}

TEST_F(MainJob, LeavesEverythingAsItWasWhenADragIsGivenUp)
{
    const LibraryState before = document_->library();
    const QPoint bake = onBlock("gratin/*/bake");
    dragAndLook(bake, bake - QPoint{pixels(Minutes{60}), 0},
                [&] { QTest::keyClick(window_->windowHandle(), Qt::Key_Escape); });
    EXPECT_EQ(document_->library(), before);
    EXPECT_EQ(document_->undoStack().count(), 0);
}

TEST_F(MainJob, IsDoneByTheProgramWhenItIsAskedTo)
{
    dragVariant(QStringLiteral("with thyme"), [] {});
    ASSERT_TRUE(hasOvenClash(clashes()));
    auto& plan = part<QPushButton>(QStringLiteral("makePlan"));
    QTest::mouseClick(window_->windowHandle(), Qt::LeftButton, {},
                      plan.mapTo(window_.get(), plan.rect().center()));
    EXPECT_TRUE(QTest::qWaitFor([&] { return clashes().isEmpty(); }, 20'000));
    EXPECT_EQ(document_->undoStack().undoText(), QStringLiteral("Make plan"));
}

} // namespace
} // namespace suppertide::ui
