// The document on a true library file: what is on the disk, and when.
#include <QCoreApplication>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

#include <filesystem>

#include "core/store/sqlite_library.h"
#include "ui/document/document.h"

namespace suppertide::ui {
namespace {

/// By what is in them: a library that was read again has copies of its own.
bool isAlike(const LibraryState& a, const LibraryState& b)
{
    return differenceOf(a, b, {}).parts.empty();
}

class KeptDocument : public testing::Test
{
protected:
    void SetUp() override
    {
        ASSERT_TRUE(folder_.isValid());
        ASSERT_TRUE(makeLibrary(file_, {}));
    }
    [[nodiscard]] std::unique_ptr<Document> open() const
    {
        auto library = openLibrary(file_, OpenMode::ReadWrite);
        EXPECT_TRUE(library) << library.error().forCook;
        auto document = Document::open(std::move(*library));
        EXPECT_TRUE(document) << document.error().forCook;
        return *std::move(document);
    }
    /// What another program would read in the file now.
    [[nodiscard]] LibraryState onDisk() const
    {
        const auto library = openLibrary(file_, OpenMode::ReadWrite);
        EXPECT_TRUE(library) << library.error().forCook;
        const auto state = (*library)->load();
        EXPECT_TRUE(state) << state.error().forCook;
        return *state;
    }
    static LibraryState withSupper(LibraryState library, const std::string& name)
    {
        OccasionRecord record;
        record.occasion.id = OccasionId{"supper"};
        record.occasion.name = name;
        library.occasions[record.occasion.id] = std::make_shared<const OccasionRecord>(record);
        library.open = OccasionId{"supper"};
        return library;
    }

    int argumentCount_ = 0;
    QCoreApplication application_{argumentCount_, nullptr};
    QTemporaryDir folder_;
    std::filesystem::path file_ =
        std::filesystem::path(folder_.path().toStdString()) / "supper.suppertide";
};

TEST_F(KeptDocument, IsOnDiskWheneverItShowsAsSaved)
{
    const auto document = open();
    int saved = 0;
    QObject::connect(document.get(), &Document::saveStateChanged, [&](SaveState state) {
        if (state == SaveState::Saved) {
            ++saved;
            EXPECT_TRUE(isAlike(onDisk(), document->library()));
        }
    });
    for (const char* name : {"Supper", "Late supper", "Very late supper"}) {
        document->apply(withSupper(document->library(), name), "Rename");
        ASSERT_TRUE(QTest::qWaitFor([&] { return document->saveState() == SaveState::Saved; }));
    }
    document->undoStack().undo();
    ASSERT_TRUE(QTest::qWaitFor([&] { return document->saveState() == SaveState::Saved; }));
    EXPECT_EQ(saved, 4);
    EXPECT_EQ(openOccasion(onDisk())->occasion.name, "Late supper");
}

TEST_F(KeptDocument, ComesBackAfterARestartWithItsUndo)
{
    LibraryState first;
    LibraryState second;
    {
        const auto document = open();
        document->apply(withSupper(document->library(), "Supper"), "Begin");
        first = document->library();
        document->apply(withSupper(first, "Late supper"), "Rename");
        second = document->library();
    }
    const auto document = open();
    EXPECT_TRUE(isAlike(document->library(), second));
    EXPECT_EQ(document->undoStack().undoText(), "Rename");
    document->undoStack().undo();
    EXPECT_TRUE(isAlike(document->library(), first));
    EXPECT_TRUE(document->finishSaving());
    EXPECT_TRUE(isAlike(onDisk(), first));
}

TEST_F(KeptDocument, IsOnlyLookedAtByASecondProgram)
{
    const auto document = open();
    document->apply(withSupper(document->library(), "Supper"), "Begin");
    ASSERT_TRUE(document->finishSaving());
    const auto second = open();
    EXPECT_TRUE(isAlike(second->library(), document->library()));
    EXPECT_EQ(second->saveState(), SaveState::ReadOnly);
    EXPECT_FALSE(second->saveReason().isEmpty());
    second->apply(withSupper(second->library(), "Mine"), "Rename");
    EXPECT_TRUE(isAlike(second->library(), document->library()));
    EXPECT_FALSE(second->undoStack().canUndo());
    document->apply(withSupper(document->library(), "Ours"), "Rename");
    EXPECT_TRUE(document->finishSaving()) << "the first goes on writing";
    EXPECT_EQ(openOccasion(onDisk())->occasion.name, "Ours");
}

TEST_F(KeptDocument, BelongsToTheSecondProgramOnceTheFirstHasEnded)
{
    open().reset();
    const auto document = open();
    EXPECT_EQ(document->saveState(), SaveState::Saved);
    document->apply(withSupper(document->library(), "Supper"), "Begin");
    EXPECT_TRUE(document->finishSaving());
}

} // namespace
} // namespace suppertide::ui
