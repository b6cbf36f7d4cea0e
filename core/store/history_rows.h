// Changes as rows: each part has the text before and after, so that undo and redo put back just
// what was there, across restarts. Within the caller's transaction; throws SQLite::Exception.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include "core/base/result.h"
#include "core/library/library.h"

namespace suppertide {

/// Older changes are forgotten.
inline constexpr int mostChangesKept = 100;

/// Puts the change in force, forgets what could be redone and what is too old. BadInput if a part
/// cannot be kept: then the transaction must be given up.
[[nodiscard]] Result<void> keepChange(SQLite::Database& database, const Change& change);

/// False if there is none.
[[nodiscard]] bool undoLastChange(SQLite::Database& database);
[[nodiscard]] bool redoNextChange(SQLite::Database& database);

} // namespace suppertide
