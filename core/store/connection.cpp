#include "core/store/connection.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <utility>

#include "core/base/log.h"

namespace suppertide {

namespace {

/// How long a write waits for a reader in another program to finish, in ms.
constexpr int patience = 2000;

Failure refused(FailureKind kind, std::string forCook, const SQLite::Exception& exception)
{
    std::string forLog = fmt::format("SQLite {} (extended {}): {}", exception.getErrorCode(),
                                     exception.getExtendedErrorCode(), exception.what());
    log::info("core.store", "{}", forLog);
    return {kind, std::move(forCook), std::move(forLog)};
}

} // namespace

SQLite::Database connect(const std::filesystem::path& file, int flags)
{
    SQLite::Database database(file.string(), flags, patience);
    database.exec("PRAGMA foreign_keys = ON");
    database.exec("PRAGMA trusted_schema = OFF");
    database.exec("PRAGMA cell_size_check = ON");
    return database;
}

void prepareForWriting(SQLite::Database& database)
{
    database.exec("PRAGMA journal_mode = DELETE");
    database.exec("PRAGMA synchronous = FULL");
}

Failure failureOf(const SQLite::Exception& exception, const std::filesystem::path& file)
{
    const std::string name = file.string();
    if (exception.getExtendedErrorCode() == SQLITE_READONLY_DBMOVED) {
        return refused(FailureKind::Io,
                       fmt::format("The library {} was moved, renamed or deleted while it was "
                                   "open, so nothing more can be kept in it. Put it back, or "
                                   "export what is open here.",
                                   name),
                       exception);
    }
    switch (exception.getErrorCode()) {
    case SQLITE_NOTADB:
        return notALibrary(file);
    case SQLITE_CORRUPT:
        return damaged(file, exception.what());
    case SQLITE_FULL:
        return refused(FailureKind::Io,
                       fmt::format("The disk of {} is full. Nothing was changed. Make room on it, "
                                   "then try again.",
                                   name),
                       exception);
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return refused(FailureKind::Busy,
                       fmt::format("Another program is at work on the library {}. Nothing was "
                                   "changed. Try again when it is done.",
                                   name),
                       exception);
    case SQLITE_READONLY:
    case SQLITE_PERM:
    case SQLITE_AUTH:
    case SQLITE_CANTOPEN:
        return refused(FailureKind::Io,
                       fmt::format("The library {} cannot be opened for writing: it, or its "
                                   "folder, is closed to you. Nothing was changed. Change the "
                                   "permissions, or copy it to a folder of yours.",
                                   name),
                       exception);
    default:
        return refused(FailureKind::Io,
                       fmt::format("The disk did not do what was asked for the library {}. Nothing "
                                   "was changed. Look whether the disk is full or was taken out, "
                                   "then try again.",
                                   name),
                       exception);
    }
}

Failure notALibrary(const std::filesystem::path& file)
{
    return {FailureKind::BadInput,
            fmt::format("{} is not a library of Suppertide. Choose another file, or import it if "
                        "it holds recipes.",
                        file.string()),
            {}};
}

Failure damaged(const std::filesystem::path& file, std::string forLog)
{
    return {FailureKind::BadInput,
            fmt::format("The library {} is damaged and was left as it is. Take your last copy of "
                        "it, or ask someone to repair the file with the tools of SQLite.",
                        file.string()),
            std::move(forLog)};
}

} // namespace suppertide
