// Files that are no library, damaged, of a later version, held by another program or closed to us:
// each is said in a sentence, and nothing is changed.
#include <SQLiteCpp/SQLiteCpp.h>
#include <gmock/gmock.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <csignal>
#include <fstream>
#include <sstream>

#include "core/store/schema.h"
#include "tests/core/store/store_fixture.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {

namespace {

namespace fs = std::filesystem;
using test::areAlike;
using test::historyOf;
using test::loaded;
using test::step;
using test::withRecipe;
using testing::HasSubstr;

std::string bytesOf(const fs::path& file)
{
    std::ifstream stream(file, std::ios::binary);
    std::stringstream bytes;
    bytes << stream.rdbuf();
    return bytes.str();
}

void writeBytes(const fs::path& file, const std::string& bytes)
{
    std::ofstream(file, std::ios::binary | std::ios::trunc) << bytes;
}

class OpenLibrary : public test::StoreTest
{
protected:
    /// A library with a few recipes, closed.
    void makeSome() const
    {
        const auto library = open();
        LibraryState state;
        LibraryState next;
        for (int i = 0; i < 40; ++i) {
            next =
                withRecipe(std::move(next), "recipe-" + std::to_string(i), std::string(200, 'n'));
        }
        step(*library, state, next);
    }

    [[nodiscard]] Failure failureOf(const fs::path& library,
                                    OpenMode mode = OpenMode::ReadWrite) const
    {
        const auto opened = openLibrary(library, mode);
        EXPECT_FALSE(opened);
        EXPECT_FALSE(fs::exists(library.string() + ".lock"));
        return opened ? Failure{} : opened.error();
    }
};

TEST_F(OpenLibrary, SaysWhenThereIsNone)
{
    EXPECT_EQ(failureOf(file()).kind, FailureKind::NotFound);
    EXPECT_FALSE(fs::exists(file()));
    EXPECT_EQ(failureOf(folder() / "no" / "library", OpenMode::CreateIfMissing).kind,
              FailureKind::NotFound);
}

TEST_F(OpenLibrary, LeavesOtherFilesAlone)
{
    writeBytes(file(), "Dear diary, today I ate soup. " + std::string(5000, 's'));
    const std::string before = bytesOf(file());
    for (const OpenMode mode : {OpenMode::ReadWrite, OpenMode::CreateIfMissing}) {
        const Failure failure = failureOf(file(), mode);
        EXPECT_EQ(failure.kind, FailureKind::BadInput);
        EXPECT_THAT(failure.forCook, HasSubstr("is not a library of Suppertide"));
    }
    EXPECT_EQ(bytesOf(file()), before);
    EXPECT_EQ(failureOf(folder()).kind, FailureKind::BadInput);
}

TEST_F(OpenLibrary, LeavesOtherDatabasesAlone)
{
    {
        SQLite::Database database(file().string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        database.exec("PRAGMA journal_mode = WAL; CREATE TABLE stamps (id INTEGER);");
    }
    const std::string before = bytesOf(file());
    EXPECT_THAT(failureOf(file(), OpenMode::CreateIfMissing).forCook,
                HasSubstr("is not a library of Suppertide"));
    EXPECT_EQ(bytesOf(file()), before);
}

TEST_F(OpenLibrary, TakesAnEmptyFileForANewLibraryOnlyWhenItMayMakeOne)
{
    // What a program leaves that was killed just as it made the file.
    writeBytes(file(), "");
    EXPECT_EQ(failureOf(file()).kind, FailureKind::BadInput);
    EXPECT_EQ(open()->readOnlyReason(), "");
}

TEST_F(OpenLibrary, LeavesALibraryOfALaterVersionAlone)
{
    makeSome();
    {
        SQLite::Database database(file().string(), SQLite::OPEN_READWRITE);
        database.exec("CREATE TABLE spices (id TEXT) STRICT; PRAGMA user_version = " +
                      std::to_string(currentSchemaVersion + 1));
    }
    const std::string before = bytesOf(file());
    const Failure failure = failureOf(file());
    EXPECT_EQ(failure.kind, FailureKind::TooNew);
    EXPECT_THAT(failure.forCook, HasSubstr("later version of Suppertide"));
    EXPECT_EQ(bytesOf(file()), before);
}

TEST_F(OpenLibrary, NeverStumblesOverADamagedFile)
{
    makeSome();
    const std::string whole = bytesOf(file());
    int refused = 0;
    test::forEachSeed(120, [&](test::Random& random) {
        std::string bytes = whole;
        if (random.oneIn(4)) {
            bytes.resize(static_cast<std::size_t>(
                random.between(1, static_cast<std::int64_t>(whole.size()) - 1)));
        } else {
            const auto at = static_cast<std::size_t>(
                random.between(0, static_cast<std::int64_t>(whole.size()) - 64));
            for (std::size_t i = 0; i < 64; ++i) {
                bytes[at + i] = static_cast<char>(random.between(-128, 127));
            }
        }
        writeBytes(file(), bytes);
        auto library = openLibrary(file(), OpenMode::ReadWrite);
        const auto state = library ? (*library)->load() : Result<LibraryState>{library.error()};
        if (!state) {
            ++refused;
            EXPECT_THAT(state.error().forCook, HasSubstr("library"));
            EXPECT_TRUE(state.error().kind == FailureKind::BadInput ||
                        state.error().kind == FailureKind::TooNew)
                << state.error().forCook << state.error().forLog;
        }
    });
    // Bytes within a text are no damage that SQLite can see; about half of the rest is.
    EXPECT_GT(refused, 30);
}

TEST_F(OpenLibrary, SaysWhichRowIsDamaged)
{
    makeSome();
    {
        SQLite::Database database(file().string(), SQLite::OPEN_READWRITE);
        database.exec("UPDATE recipes SET body = '{' WHERE id = 'recipe-7'");
    }
    const auto state = open()->load();
    ASSERT_FALSE(state);
    EXPECT_EQ(state.error().kind, FailureKind::BadInput);
    EXPECT_THAT(state.error().forCook, HasSubstr("is damaged"));
    EXPECT_THAT(state.error().forLog, HasSubstr("recipe-7"));
}

TEST_F(OpenLibrary, IsReadOnlyWhileAnotherHasIt)
{
    const auto writer = open();
    LibraryState state;
    step(*writer, state, withRecipe({}, "soup", "Soup"));
    {
        const auto reader = open();
        EXPECT_THAT(reader->readOnlyReason(),
                    HasSubstr("Suppertide (process " + std::to_string(::getpid()) + " on "));
        EXPECT_TRUE(areAlike(loaded(*reader), state));
        const auto refused = reader->apply(differenceOf(state, {}, ""));
        ASSERT_FALSE(refused);
        EXPECT_EQ(refused.error().kind, FailureKind::ReadOnly);
        EXPECT_EQ(reader->keepSetting("a", "b").error().kind, FailureKind::ReadOnly);
        // The reader sees what the writer does meanwhile, and does not keep it from writing.
        step(*writer, state, withRecipe(state, "roots", "Roots"));
        EXPECT_TRUE(areAlike(loaded(*reader), state));
    }
    // A reader that closes leaves the writer its lock.
    EXPECT_NE(open()->readOnlyReason(), "");
}

TEST_F(OpenLibrary, KnowsTheSameFileUnderAnotherName)
{
    const auto writer = open();
    fs::create_symlink(file(), folder() / "link.suppertide");
    auto reader = openLibrary(folder() / "link.suppertide", OpenMode::ReadWrite);
    ASSERT_TRUE(reader);
    EXPECT_NE((*reader)->readOnlyReason(), "");
}

TEST_F(OpenLibrary, IsFreeAgainWhenTheOtherCloses)
{
    {
        const auto first = open();
    }
    EXPECT_FALSE(fs::exists(file().string() + ".lock"));
    EXPECT_EQ(open()->readOnlyReason(), "");
}

TEST_F(OpenLibrary, TakesALockFileThatNobodyHolds)
{
    writeBytes(file().string() + ".lock", "4711 elsewhere");
    EXPECT_EQ(open()->readOnlyReason(), "");
}

/// Acts as a user without rights for a while, if the tests run with all rights.
class WithoutRights
{
public:
    WithoutRights() : isRoot_(::geteuid() == 0)
    {
        constexpr uid_t nobody = 65534; // by convention
        if (isRoot_ && ::seteuid(nobody) != 0) {
            ADD_FAILURE() << "the user cannot be changed";
        }
    }
    WithoutRights(const WithoutRights&) = delete;
    WithoutRights& operator=(const WithoutRights&) = delete;
    WithoutRights(WithoutRights&&) = delete;
    WithoutRights& operator=(WithoutRights&&) = delete;
    ~WithoutRights()
    {
        if (isRoot_ && ::seteuid(0) != 0) {
            ADD_FAILURE() << "the user cannot be changed back";
        }
    }

private:
    bool isRoot_;
};

TEST_F(OpenLibrary, IsReadOnlyWhenTheFileIs)
{
    makeSome();
    ASSERT_EQ(::chmod(folder().c_str(), 0777), 0);
    ASSERT_EQ(::chmod(file().c_str(), 0444), 0);
    const WithoutRights now;
    const auto library = open();
    EXPECT_THAT(library->readOnlyReason(), HasSubstr("may only be read"));
    EXPECT_EQ(loaded(*library).recipes.size(), 40U);
    EXPECT_FALSE(library->undo());
}

TEST_F(OpenLibrary, IsReadOnlyWhenTheFolderIs)
{
    makeSome();
    ASSERT_EQ(::chmod(file().c_str(), 0666), 0);
    ASSERT_EQ(::chmod(folder().c_str(), 0555), 0);
    const WithoutRights now;
    const auto library = open();
    EXPECT_THAT(library->readOnlyReason(), HasSubstr("The folder of"));
    EXPECT_EQ(loaded(*library).recipes.size(), 40U);
}

TEST_F(OpenLibrary, SaysWhenTheFileIsClosedToUs)
{
    makeSome();
    ASSERT_EQ(::chmod(folder().c_str(), 0755), 0);
    ASSERT_EQ(::chmod(file().c_str(), 0000), 0);
    const WithoutRights now;
    const auto library = openLibrary(file(), OpenMode::ReadWrite);
    ASSERT_FALSE(library);
    EXPECT_EQ(library.error().kind, FailureKind::Io);
    EXPECT_THAT(library.error().forCook, HasSubstr("is closed to you"));
}

/// No file may grow beyond `bytes`: what a full disk does to a program.
class FullDisk
{
public:
    explicit FullDisk(std::uintmax_t bytes) : handler_(std::signal(SIGXFSZ, SIG_IGN))
    {
        ::getrlimit(RLIMIT_FSIZE, &before_);
        rlimit less = before_;
        less.rlim_cur = bytes;
        ::setrlimit(RLIMIT_FSIZE, &less);
    }
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;
    FullDisk(FullDisk&&) = delete;
    FullDisk& operator=(FullDisk&&) = delete;
    ~FullDisk()
    {
        ::setrlimit(RLIMIT_FSIZE, &before_);
        static_cast<void>(std::signal(SIGXFSZ, handler_));
    }

private:
    rlimit before_{};
    void (*handler_)(int);
};

TEST_F(OpenLibrary, LosesNothingWhenTheDiskIsFull)
{
    makeSome();
    const auto library = open();
    LibraryState state = loaded(*library);
    const LibraryState before = state;
    LibraryState next = state;
    for (int i = 0; i < 200; ++i) {
        next = withRecipe(std::move(next), "big-" + std::to_string(i), std::string(3000, 'b'));
    }
    const Change change = differenceOf(state, next, "Too much");
    {
        const FullDisk now(fs::file_size(file()) + 8192);
        const auto refused = library->apply(change);
        ASSERT_FALSE(refused);
        EXPECT_EQ(refused.error().kind, FailureKind::Io);
        EXPECT_THAT(refused.error().forCook, HasSubstr("Nothing was changed."));
        EXPECT_THAT(refused.error().forCook, HasSubstr("full"));
        EXPECT_TRUE(areAlike(loaded(*library), before));
        EXPECT_EQ(historyOf(*library).changes.size(), 1U);
    }
    // There is room again, and the same library goes on.
    ASSERT_TRUE(library->apply(change));
    EXPECT_TRUE(areAlike(loaded(*library), next));
}

TEST_F(OpenLibrary, SaysWhenTheFileWasTakenAwayWhileOpen)
{
    const auto library = open();
    LibraryState state;
    step(*library, state, withRecipe({}, "soup", "Soup"));
    fs::rename(file(), folder() / "elsewhere.suppertide");
    const auto refused = library->apply(differenceOf(state, {}, ""));
    ASSERT_FALSE(refused);
    EXPECT_THAT(refused.error().forCook, HasSubstr("was moved, renamed or deleted"));
    fs::rename(folder() / "elsewhere.suppertide", file());
    EXPECT_TRUE(library->apply(differenceOf(state, {}, "")));
}

TEST_F(OpenLibrary, SaysWhenAnotherProgramIsWriting)
{
    const auto library = open();
    SQLite::Database other(file().string(), SQLite::OPEN_READWRITE);
    other.exec("BEGIN IMMEDIATE");
    const auto refused = library->keepSetting("a", "b");
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().kind, FailureKind::Busy);
    other.exec("ROLLBACK");
    EXPECT_TRUE(library->keepSetting("a", "b"));
}

TEST_F(OpenLibrary, IsOneFileAtRest)
{
    makeSome();
    EXPECT_EQ(std::distance(fs::directory_iterator(folder()), {}), 1);
}

TEST_F(OpenLibrary, CopiesALibraryInUse)
{
    const auto library = open();
    LibraryState state;
    step(*library, state, withRecipe({}, "soup", "Soup"), "First");
    const fs::path copy = folder() / "copy.suppertide";
    ASSERT_TRUE(copyLibrary(file(), copy));
    step(*library, state, withRecipe(state, "roots", "Roots"));
    const auto copied = openLibrary(copy, OpenMode::ReadWrite);
    ASSERT_TRUE(copied) << copied.error().forCook;
    EXPECT_EQ((*copied)->readOnlyReason(), "");
    EXPECT_EQ(loaded(**copied).recipes.size(), 1U);
    EXPECT_EQ(historyOf(**copied).changes.front().text, "First");
}

TEST_F(OpenLibrary, CopiesOverNothingAndOnlyLibraries)
{
    makeSome();
    const fs::path copy = folder() / "copy.suppertide";
    writeBytes(copy, "precious");
    EXPECT_THAT(copyLibrary(file(), copy).error().forCook, HasSubstr("There is a file"));
    EXPECT_EQ(bytesOf(copy), "precious");
    EXPECT_THAT(copyLibrary(copy, folder() / "b").error().forCook,
                HasSubstr("is not a library of Suppertide"));
    EXPECT_EQ(copyLibrary(folder() / "nothing", folder() / "b").error().kind,
              FailureKind::NotFound);
    EXPECT_EQ(copyLibrary(file(), folder() / "no" / "b").error().kind, FailureKind::Io);
    EXPECT_EQ(std::distance(fs::directory_iterator(folder()), {}), 2);
}

TEST_F(OpenLibrary, LeavesNoHalfCopyWhenTheDiskIsFull)
{
    makeSome();
    const FullDisk now(8192);
    const auto copied = copyLibrary(file(), folder() / "copy.suppertide");
    ASSERT_FALSE(copied);
    EXPECT_EQ(copied.error().kind, FailureKind::Io);
    EXPECT_EQ(std::distance(fs::directory_iterator(folder()), {}), 1);
}

TEST_F(OpenLibrary, MakesALibraryWithNothingToUndo)
{
    LibraryState state = withRecipe({}, "soup", "Soup");
    state.open = OccasionId{"supper"};
    ASSERT_TRUE(makeLibrary(file(), state));
    const auto library = open();
    EXPECT_TRUE(areAlike(loaded(*library), state));
    EXPECT_TRUE(historyOf(*library).changes.empty());
    EXPECT_FALSE(library->undo());
    EXPECT_FALSE(makeLibrary(file(), state));
}

} // namespace

} // namespace suppertide
