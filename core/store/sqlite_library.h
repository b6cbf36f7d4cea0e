// The library as one SQLite file. The only place with SQL. Every write is one transaction under
// synchronous=FULL; a second program on the same file is opened read-only and says so.
#pragma once

#include <filesystem>
#include <memory>

#include "core/library/library.h"

namespace suppertide {

enum class OpenMode
{
    ReadWrite,
    CreateIfMissing
};

/// Failures: NotFound, TooNew (written by a later version), BadInput (not a library, damaged), Io.
/// Held by another program is no failure: the library opens read-only (readOnlyReason).
[[nodiscard]] Result<std::unique_ptr<Library>> openLibrary(const std::filesystem::path& file,
                                                           OpenMode mode);

/// A new library that holds `state`, with nothing to undo: the demo. BadInput if there is a file of
/// this name already; no half file is left.
[[nodiscard]] Result<void> makeLibrary(const std::filesystem::path& file,
                                       const LibraryState& state);

/// A copy made through SQLite, safe while the file is in use. BadInput if there is a file of the
/// name `to` already; no half file is left.
[[nodiscard]] Result<void> copyLibrary(const std::filesystem::path& from,
                                       const std::filesystem::path& to);

} // namespace suppertide
