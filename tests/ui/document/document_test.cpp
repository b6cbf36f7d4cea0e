#include <QCoreApplication>
#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

#include "core/base/log.h"
#include "tests/support/memory_library.h"
#include "ui/document/document.h"

namespace suppertide::ui {
namespace {

using test::Memory;
using test::MemoryLibrary;

class DocumentTest : public testing::Test
{
protected:
    static std::unique_ptr<Document> openOn(const std::shared_ptr<Memory>& memory)
    {
        auto opened = Document::open(std::make_unique<MemoryLibrary>(memory));
        EXPECT_TRUE(opened.has_value());
        return *std::move(opened);
    }
    static LibraryState withRecipe(LibraryState library, const std::string& id,
                                   const std::string& name)
    {
        Recipe recipe;
        recipe.id = RecipeId{id};
        recipe.name = name;
        library.recipes[recipe.id] = std::make_shared<const Recipe>(recipe);
        return library;
    }
    static bool becomesSaved(Document& document)
    {
        return QTest::qWaitFor([&] { return document.saveState() == SaveState::Saved; });
    }

    int argumentCount_ = 0;
    QCoreApplication application_{argumentCount_, nullptr};
    std::shared_ptr<Memory> memory_ = std::make_shared<Memory>();
};

TEST_F(DocumentTest, AppliesUndoesAndRedoesToEqualStates)
{
    const auto document = openOn(memory_);
    const LibraryState before = document->library();
    const LibraryState after = withRecipe(before, "roots", "Roast roots");

    document->apply(after, "Add roast roots");
    EXPECT_EQ(document->library(), after);
    EXPECT_EQ(document->undoStack().undoText(), "Add roast roots");

    document->undoStack().undo();
    EXPECT_EQ(document->library(), before);
    document->undoStack().redo();
    EXPECT_EQ(document->library(), after);

    ASSERT_TRUE(becomesSaved(*document));
    EXPECT_EQ(memory_->stateNow(), after);
}

TEST_F(DocumentTest, ComesBackToTheRevisionThatWas)
{
    const auto document = openOn(memory_);
    const std::uint64_t before = document->state()->revision;
    document->apply(withRecipe(document->library(), "roots", "Roast roots"), "Add roots");
    EXPECT_NE(document->state()->revision, before);
    document->undoStack().undo();
    EXPECT_EQ(document->state()->revision, before);
}

TEST_F(DocumentTest, ShowsNothingAsSavedBeforeTheLibraryAcknowledged)
{
    const auto document = openOn(memory_);
    memory_->isHeld = true;
    QSignalSpy states(document.get(), &Document::saveStateChanged);
    document->apply(withRecipe(document->library(), "roots", "Roast roots"), "Add roots");
    EXPECT_EQ(document->saveState(), SaveState::Saving);
    QCoreApplication::processEvents();
    EXPECT_EQ(document->saveState(), SaveState::Saving);

    memory_->release();
    ASSERT_TRUE(becomesSaved(*document));
    EXPECT_EQ(states.count(), 2);
}

// The disk may be done at any moment while this waits for it.
TEST_F(DocumentTest, ShowsAsSavedWheneverItHasWaitedForTheDisk)
{
    const auto document = openOn(memory_);
    for (int i = 0; i < 500; ++i) {
        document->apply(withRecipe(document->library(), "roots", std::to_string(i)), "Rename");
        ASSERT_TRUE(document->finishSaving()) << "change " << i;
    }
}

TEST_F(DocumentTest, KeepsAChangeThatCannotBeWrittenAndTriesAgain)
{
    const auto document = openOn(memory_);
    memory_->refuse(true);
    const LibraryState after = withRecipe(document->library(), "roots", "Roast roots");
    document->apply(after, "Add roots");
    ASSERT_TRUE(QTest::qWaitFor([&] { return document->saveState() == SaveState::Failed; }));
    EXPECT_TRUE(document->saveReason().contains("disk is full"));
    EXPECT_EQ(document->library(), after);
    document->apply(withRecipe(after, "soup", "Soup"), "Add soup");
    EXPECT_EQ(document->saveState(), SaveState::Failed);

    memory_->refuse(false);
    document->retrySaving();
    ASSERT_TRUE(becomesSaved(*document));
    EXPECT_EQ(memory_->stateNow(), document->library());
    EXPECT_FALSE(log::takeComplaints().empty()) << "a refused write is worth a warning";
}

TEST_F(DocumentTest, UndoesAcrossARestart)
{
    LibraryState first;
    LibraryState second;
    {
        const auto document = openOn(memory_);
        document->apply(withRecipe(document->library(), "roots", "Roast roots"), "Add roots");
        first = document->library();
        document->apply(withRecipe(document->library(), "soup", "Soup"), "Add soup");
        second = document->library();
        document->apply(withRecipe(document->library(), "cream", "Cream"), "Add cream");
        document->undoStack().undo();
    }
    const auto document = openOn(memory_);
    EXPECT_EQ(document->library(), second);
    EXPECT_EQ(document->undoStack().redoText(), "Add cream");
    document->undoStack().undo();
    EXPECT_EQ(document->library(), first);
    document->undoStack().redo();
    document->undoStack().redo();
    EXPECT_TRUE(document->library().recipes.contains(RecipeId{"cream"}));
    ASSERT_TRUE(becomesSaved(*document));
    EXPECT_EQ(memory_->stateNow(), document->library());
}

TEST_F(DocumentTest, WritesWhatIsQueuedBeforeItCloses)
{
    {
        const auto document = openOn(memory_);
        for (int i = 0; i < 20; ++i) {
            document->apply(withRecipe(document->library(), "r" + std::to_string(i), "Dish"),
                            "Add dish");
        }
    }
    EXPECT_EQ(memory_->stateNow().recipes.size(), 20U);
}

TEST_F(DocumentTest, RefusesEditsOfAReadOnlyLibraryWithTheReason)
{
    memory_->readOnlyReason = "Another window has this library open.";
    const auto document = openOn(memory_);
    QSignalSpy refused(document.get(), &Document::refused);
    QSignalSpy changed(document.get(), &Document::changed);
    document->apply(withRecipe(document->library(), "roots", "Roast roots"), "Add roots");
    ASSERT_EQ(refused.count(), 1);
    EXPECT_EQ(refused.front().front().toString(), "Another window has this library open.");
    EXPECT_EQ(changed.count(), 0);
    EXPECT_TRUE(document->library().recipes.empty());
    EXPECT_EQ(document->saveState(), SaveState::ReadOnly);
}

TEST_F(DocumentTest, SaysWhatChangedAndNothingForNoChange)
{
    const auto document = openOn(memory_);
    std::vector<ChangeSet> seen;
    QObject::connect(document.get(), &Document::changed,
                     [&](const ChangeSet& changes) { seen.push_back(changes); });
    document->apply(document->library(), "Nothing");
    EXPECT_TRUE(seen.empty());
    document->apply(withRecipe(document->library(), "roots", "Roast roots"), "Add roots");
    ASSERT_EQ(seen.size(), 1U);
    document->apply(withRecipe(document->library(), "roots", "Roast roots"), "A copy of the same");
    EXPECT_EQ(seen.size(), 1U);
    EXPECT_EQ(document->undoStack().undoText(), "Add roots");
    EXPECT_EQ(seen[0].recipes, (std::set{RecipeId{"roots"}}));
    EXPECT_FALSE(seen[0].isOccasionChanged);
    EXPECT_FALSE(seen[0].isPlanTouched);
}

TEST_F(DocumentTest, KeepsSettingsOutsideUndo)
{
    const auto document = openOn(memory_);
    document->keepSetting("window.width", "1280");
    ASSERT_TRUE(document->finishSaving());
    EXPECT_EQ(document->setting("window.width"), "1280");
    EXPECT_FALSE(document->undoStack().canUndo());
}

} // namespace
} // namespace suppertide::ui
