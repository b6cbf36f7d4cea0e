// The tables of a library and how they came to be: numbered migrations, forward only, each tested
// from a fixture of the version before. A new library goes through all of them.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

namespace suppertide {

/// "Supp" in the file's header: a library of ours.
inline constexpr int libraryApplicationId = 0x53757070;
inline constexpr int currentSchemaVersion = 4;

[[nodiscard]] int applicationIdOf(SQLite::Database& database);
[[nodiscard]] int schemaVersionOf(SQLite::Database& database);
/// No table of anybody's.
[[nodiscard]] bool isBlank(SQLite::Database& database);

/// From any earlier version (0: blank) to `version`, in one transaction. Throws SQLite::Exception,
/// and then nothing is changed.
void migrate(SQLite::Database& database, int version = currentSchemaVersion);

} // namespace suppertide
