// What SQLite says, in our words, and connections set up the way a library needs them: foreign keys
// on, every commit on disk before it returns.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <filesystem>
#include <string>

#include "core/base/result.h"

namespace suppertide {

/// A transaction that holds the right to write from its beginning.
class WriteTransaction
{
public:
    explicit WriteTransaction(SQLite::Database& database)
        : transaction_(database, SQLite::TransactionBehavior::IMMEDIATE)
    {}
    void commit() { transaction_.commit(); }

private:
    SQLite::Transaction transaction_;
};

/// `flags` as SQLite::OPEN_…. Changes nothing in the file. Throws SQLite::Exception.
[[nodiscard]] SQLite::Database connect(const std::filesystem::path& file, int flags);

/// One file at rest, and on the disk before a commit returns. Only for a file that is ours: it may
/// change how the file is kept.
void prepareForWriting(SQLite::Database& database);

/// The failure in a cook's words. What was not committed was not changed, and it says so.
[[nodiscard]] Failure failureOf(const SQLite::Exception& exception,
                                const std::filesystem::path& file);

/// A file that is no library, or a library that is damaged.
[[nodiscard]] Failure notALibrary(const std::filesystem::path& file);
[[nodiscard]] Failure damaged(const std::filesystem::path& file, std::string forLog);

/// Runs `body`, which gives a Result, and makes failures of what SQLite throws.
template <typename Body>
[[nodiscard]] auto withFailures(const std::filesystem::path& file, const Body& body)
    -> decltype(body())
{
    try {
        return body();
    } catch (const SQLite::Exception& exception) {
        return failureOf(exception, file);
    }
}

} // namespace suppertide
