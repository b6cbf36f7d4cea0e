// Libraries of earlier versions are brought up to date when they are opened, and lose nothing.
#include <SQLiteCpp/SQLiteCpp.h>

#include <fstream>
#include <sstream>

#include "core/store/file_lock.h"
#include "core/store/schema.h"
#include "tests/core/store/store_fixture.h"

namespace suppertide {

namespace {

using test::historyOf;
using test::loaded;

class Migration : public test::StoreTest
{
protected:
    void makeVersion1() const
    {
        std::ifstream stream(std::filesystem::path(SUPPERTIDE_SOURCE_DIR) /
                             "tests/core/store/version_1.sql");
        std::stringstream text;
        text << stream.rdbuf();
        SQLite::Database database(file().string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        database.exec(text.str());
    }

    [[nodiscard]] std::string schemaOf(const std::filesystem::path& library) const
    {
        SQLite::Database database(library.string(), SQLite::OPEN_READONLY);
        SQLite::Statement rows(database,
                               "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name");
        std::string text;
        while (rows.executeStep()) {
            text += rows.getColumn(0).getString() + "\n";
        }
        return text;
    }
};

TEST_F(Migration, BringsVersion1UpToDate)
{
    makeVersion1();
    const auto library = open();
    const LibraryState state = loaded(*library);
    ASSERT_EQ(state.recipes.size(), 2U);
    const Recipe& soup = *state.recipes.at(RecipeId{"beetroot-soup"});
    EXPECT_EQ(soup.name, "Chilled beetroot soup 🥣");
    EXPECT_EQ(soup.common.lines[0].amount, (Amount{Rational{3, 2}, Unit::Kilogram}));
    EXPECT_EQ(soup.common.waits[0].keep[0].litres, 3_l);
    EXPECT_EQ(state.kitchens.at(KitchenId{"loft"})->name, "O'Hara's \"loft\"");
    const OccasionRecord& supper = *state.occasions.at(OccasionId{"supper"});
    EXPECT_EQ(supper.layout.starts.size(), 1U);
    EXPECT_EQ(state.open, OccasionId{"supper"});
    EXPECT_TRUE(historyOf(*library).changes.empty());
    EXPECT_EQ(*library->setting("window.geometry"), "800x600");
    EXPECT_EQ(*library->setting("open"), std::nullopt);
}

TEST_F(Migration, LeavesWhatANewLibraryHas)
{
    makeVersion1();
    ASSERT_NE(open(), nullptr);
    const auto fresh = folder() / "fresh.suppertide";
    ASSERT_TRUE(openLibrary(fresh, OpenMode::CreateIfMissing));
    EXPECT_EQ(schemaOf(file()), schemaOf(fresh));
    SQLite::Database database(file().string(), SQLite::OPEN_READONLY);
    EXPECT_EQ(database.execAndGet("PRAGMA user_version").getInt(), currentSchemaVersion);
    EXPECT_EQ(
        database.execAndGet("SELECT name FROM recipes WHERE id = 'beetroot-soup'").getString(),
        "Chilled beetroot soup 🥣");
    EXPECT_EQ(database.execAndGet("PRAGMA integrity_check").getString(), "ok");
}

TEST_F(Migration, BringsVersion2UpToDateWithAllThatItHolds)
{
    {
        SQLite::Database database(file().string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        migrate(database, 2);
        database.exec("INSERT INTO kitchens (id, body, name) "
                      "VALUES ('loft', '{\"id\": \"loft\", \"name\": \"Loft\"}', 'Loft')");
        database.exec("INSERT INTO changes (id, text, is_done) VALUES (1, 'Rename', 0)");
    }
    const auto library = open();
    EXPECT_EQ(loaded(*library).kitchens.at(KitchenId{"loft"})->name, "Loft");
    EXPECT_EQ(historyOf(*library).changes.size(), 1U);
    SQLite::Database database(file().string(), SQLite::OPEN_READONLY);
    EXPECT_EQ(database.execAndGet("PRAGMA user_version").getInt(), currentSchemaVersion);
}

TEST_F(Migration, BringsVersion3UpToDateWithItsHistory)
{
    {
        SQLite::Database database(file().string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        migrate(database, 3);
        database.exec("INSERT INTO occasions (id, body, name) VALUES ('supper', "
                      "'{\"id\": \"supper\", \"guests\": [{\"id\": \"bea\"}]}', 'Supper')");
        database.exec("INSERT INTO changes (id, text, is_done) VALUES (1, 'New', 1)");
        database.exec("INSERT INTO change_parts (change, position, kind, id, before, after) "
                      "SELECT 1, 0, 'occasion', id, NULL, body FROM occasions");
    }
    const auto library = open();
    const LibraryState state = loaded(*library);
    const OccasionRecord& supper = *state.occasions.at(OccasionId{"supper"});
    EXPECT_EQ(supper.occasion.guests.at(0).portion, Portions{1});
    EXPECT_TRUE(supper.bought.empty());
    EXPECT_EQ(state.larder, nullptr);
    ASSERT_EQ(historyOf(*library).changes.at(0).parts.size(), 1U);
    LibraryState next = state;
    next.larder = std::make_shared<const Larder>(Larder{.currency = "EUR"});
    LibraryState now = state;
    test::step(*library, now, next);
    EXPECT_EQ(loaded(*library).larder->currency, "EUR");
    ASSERT_TRUE(library->undo());
    EXPECT_EQ(loaded(*library).larder, nullptr);
    ASSERT_TRUE(library->undo());
    EXPECT_TRUE(loaded(*library).occasions.empty());
}

TEST_F(Migration, CanBeUsedAtOnce)
{
    makeVersion1();
    {
        const auto library = open();
        LibraryState state = loaded(*library);
        LibraryState next = state;
        next.recipes.erase(RecipeId{"untitled"});
        test::step(*library, state, next);
    }
    const auto library = open();
    EXPECT_EQ(loaded(*library).recipes.size(), 1U);
    ASSERT_TRUE(library->undo());
    EXPECT_EQ(loaded(*library).recipes.size(), 2U);
}

TEST_F(Migration, ChangesNothingIfItFails)
{
    makeVersion1();
    {
        // A table that is in the way.
        SQLite::Database database(file().string(), SQLite::OPEN_READWRITE);
        database.exec("CREATE TABLE changes (stray TEXT) STRICT");
    }
    const auto opened = openLibrary(file(), OpenMode::ReadWrite);
    ASSERT_FALSE(opened);
    SQLite::Database database(file().string(), SQLite::OPEN_READONLY);
    EXPECT_EQ(database.execAndGet("PRAGMA user_version").getInt(), 1);
    EXPECT_EQ(database.execAndGet("SELECT count(*) FROM settings").getInt(), 2);
    EXPECT_FALSE(database.tableExists("shown"));
}

TEST_F(Migration, WaitsForARightToWrite)
{
    makeVersion1();
    const auto lock = FileLock::tryToHold(file());
    ASSERT_TRUE(std::holds_alternative<std::unique_ptr<FileLock>>(lock));
    const auto opened = openLibrary(file(), OpenMode::ReadWrite);
    ASSERT_FALSE(opened);
    EXPECT_EQ(opened.error().kind, FailureKind::ReadOnly);
    EXPECT_NE(opened.error().forCook.find("earlier version"), std::string::npos);
}

} // namespace

} // namespace suppertide
