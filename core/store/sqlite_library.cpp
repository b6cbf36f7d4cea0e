#include "core/store/sqlite_library.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <system_error>
#include <utility>

#include "core/store/connection.h"
#include "core/store/history_rows.h"
#include "core/store/kept_library.h"
#include "core/store/schema.h"

namespace suppertide {

namespace fs = std::filesystem;

namespace {

/// The right to write, or why there is none.
struct Access
{
    std::unique_ptr<FileLock> lock;
    std::string readOnlyReason;
};

Access accessTo(const fs::path& file)
{
    if (fs::exists(file) && ::faccessat(AT_FDCWD, file.c_str(), W_OK, AT_EACCESS) != 0) {
        return {nullptr, fmt::format("The library {} may only be read, so it can be looked at "
                                     "here, but not changed. Copy it, or change its permissions.",
                                     file.string())};
    }
    auto attempt = FileLock::tryToHold(file);
    if (auto* lock = std::get_if<std::unique_ptr<FileLock>>(&attempt)) {
        return {std::move(*lock), {}};
    }
    if (const auto* held = std::get_if<FileLock::Held>(&attempt)) {
        return {nullptr, fmt::format("{} has this library open, so it can be looked at here, but "
                                     "not changed. Close it there, then open it here again.",
                                     held->holder)};
    }
    return {nullptr,
            fmt::format("The folder of {} may only be read ({}), so the library can be looked at "
                        "here, but not changed. Copy it to a folder of yours.",
                        file.string(), std::get<FileLock::NotAllowed>(attempt).reason)};
}

/// What stands under the name, before SQLite looks at it.
Result<void> checkFile(const fs::path& file, OpenMode mode)
{
    std::error_code error;
    const fs::file_status status = fs::status(file, error);
    if (fs::exists(status)) {
        return fs::is_regular_file(status) ? Result<void>{} : notALibrary(file);
    }
    if (mode == OpenMode::CreateIfMissing && fs::is_directory(fs::absolute(file).parent_path())) {
        return {};
    }
    return Failure{
        FailureKind::NotFound,
        fmt::format("There is no library {}. Check its name and its folder.", file.string()),
        error.message()};
}

/// Whose file it is, and whether its version can be used.
Result<void> checkSchema(SQLite::Database& database, const fs::path& file, OpenMode mode,
                         bool mayWrite)
{
    const bool isBlankNew = isBlank(database) && mode == OpenMode::CreateIfMissing &&
                            applicationIdOf(database) == 0 && mayWrite;
    if (!isBlankNew && applicationIdOf(database) != libraryApplicationId) {
        return notALibrary(file);
    }
    const int version = schemaVersionOf(database);
    if (version > currentSchemaVersion) {
        return Failure{FailureKind::TooNew,
                       fmt::format("The library {} was written by a later version of Suppertide "
                                   "and was left as it is. Bring this program up to date, then "
                                   "open it again.",
                                   file.string()),
                       fmt::format("schema {} above {}", version, currentSchemaVersion)};
    }
    if (version < currentSchemaVersion && !mayWrite) {
        return Failure{FailureKind::ReadOnly,
                       fmt::format("The library {} is of an earlier version and must be brought "
                                   "up to date, but it may only be read now. Copy it to a folder "
                                   "of yours, or close it elsewhere, then open it again.",
                                   file.string()),
                       {}};
    }
    return {};
}

Result<void> checkSoundness(SQLite::Database& database, const fs::path& file)
{
    const std::string found = database.execAndGet("PRAGMA quick_check(1)").getString();
    return found == "ok" ? Result<void>{} : damaged(file, found);
}

/// On disk, and then under its name; if not, errno says why.
bool putInPlace(const fs::path& made, const fs::path& to)
{
    // NOLINTNEXTLINE(cppcoreguidelines-pro-type-vararg): that is how open is declared
    const int descriptor = ::open(made.c_str(), O_RDONLY | O_CLOEXEC);
    if (descriptor < 0) {
        return false;
    }
    const bool isOnDisk = ::fsync(descriptor) == 0;
    ::close(descriptor);
    return isOnDisk && ::rename(made.c_str(), to.c_str()) == 0;
}

/// Lets `make` make a file beside `file`, and puts it in its place when it is whole.
template <typename Make>
Result<void> makeBeside(const fs::path& file, const Make& make)
{
    std::error_code error;
    if (fs::exists(file, error)) {
        return Failure{
            FailureKind::BadInput,
            fmt::format("There is a file {} already. Choose another name.", file.string()),
            {}};
    }
    const fs::path made = fmt::format("{}.{}.new", file.string(), ::getpid());
    fs::remove(made, error);
    Result<void> done = make(made);
    if (done && !putInPlace(made, file)) {
        const std::string reason = std::generic_category().message(errno);
        done = Failure{
            FailureKind::Io,
            fmt::format("{} could not be made: {}. Choose another folder.", file.string(), reason),
            reason};
    }
    fs::remove(made, error);
    return done;
}

} // namespace

Result<std::unique_ptr<Library>> openLibrary(const fs::path& named, OpenMode mode)
{
    using Opened = std::unique_ptr<Library>;
    std::error_code error;
    // Two names of one file have one lock.
    const fs::path resolved = fs::weakly_canonical(named, error);
    const fs::path& file = error ? named : resolved;
    if (auto found = checkFile(file, mode); !found) {
        return found.error();
    }
    Access access = accessTo(file);
    return withFailures(file, [&]() -> Result<Opened> {
        const bool mayWrite = access.lock != nullptr;
        const int flags = !mayWrite ? SQLite::OPEN_READONLY
                          : mode == OpenMode::CreateIfMissing
                              ? SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE
                              : SQLite::OPEN_READWRITE;
        SQLite::Database database = connect(file, flags);
        if (auto sound = checkSoundness(database, file); !sound) {
            return sound.error();
        }
        if (auto fits = checkSchema(database, file, mode, mayWrite); !fits) {
            return fits.error();
        }
        if (mayWrite) {
            prepareForWriting(database);
            migrate(database);
        }
        return Opened{std::make_unique<KeptLibrary>(
            file, std::move(access.lock), std::move(access.readOnlyReason), std::move(database))};
    });
}

Result<void> makeLibrary(const fs::path& file, const LibraryState& state)
{
    return makeBeside(file, [&](const fs::path& made) {
        return withFailures(file, [&]() -> Result<void> {
            SQLite::Database database = connect(made, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
            migrate(database);
            WriteTransaction transaction(database);
            if (auto kept = keepChange(database, differenceOf({}, state, {})); !kept) {
                return kept;
            }
            database.exec("DELETE FROM changes");
            transaction.commit();
            database.exec("VACUUM");
            return {};
        });
    });
}

Result<void> copyLibrary(const fs::path& from, const fs::path& to)
{
    if (auto found = checkFile(from, OpenMode::ReadWrite); !found) {
        return found;
    }
    return makeBeside(to, [&](const fs::path& made) {
        return withFailures(from, [&]() -> Result<void> {
            SQLite::Database source = connect(from, SQLite::OPEN_READONLY);
            if (applicationIdOf(source) != libraryApplicationId) {
                return notALibrary(from);
            }
            return withFailures(to, [&]() -> Result<void> {
                SQLite::Statement copy(source, "VACUUM INTO ?");
                copy.bind(1, made.string());
                copy.exec();
                return {};
            });
        });
    });
}

} // namespace suppertide
