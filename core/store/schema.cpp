#include "core/store/schema.h"

#include <fmt/format.h>

#include <array>

#include "core/base/contracts.h"
#include "core/store/connection.h"

namespace suppertide {

namespace {

// Bodies are single things as core/exchange writes them.
constexpr const char* toVersion1 = R"sql(
CREATE TABLE recipes (
    id TEXT PRIMARY KEY,
    body TEXT NOT NULL
) STRICT;
CREATE TABLE kitchens (
    id TEXT PRIMARY KEY,
    body TEXT NOT NULL
) STRICT;
CREATE TABLE occasions (
    id TEXT PRIMARY KEY,
    body TEXT NOT NULL
) STRICT;
CREATE TABLE settings (
    name TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT;
)sql";

// Names beside the bodies, for whoever looks into the file; the open occasion, which was the
// setting "open"; the last changes.
constexpr const char* toVersion2 = R"sql(
ALTER TABLE recipes ADD COLUMN name TEXT NOT NULL DEFAULT '';
ALTER TABLE kitchens ADD COLUMN name TEXT NOT NULL DEFAULT '';
ALTER TABLE occasions ADD COLUMN name TEXT NOT NULL DEFAULT '';
UPDATE recipes SET name = coalesce(json_extract(body, '$.name'), '');
UPDATE kitchens SET name = coalesce(json_extract(body, '$.name'), '');
UPDATE occasions SET name = coalesce(json_extract(body, '$.name'), '');

CREATE TABLE shown (
    one INTEGER PRIMARY KEY CHECK (one = 1),
    occasion TEXT
) STRICT;
INSERT INTO shown (one, occasion)
    VALUES (1, (SELECT value FROM settings WHERE name = 'open'));
DELETE FROM settings WHERE name = 'open';

CREATE TABLE changes (
    id INTEGER PRIMARY KEY,
    text TEXT NOT NULL,
    is_done INTEGER NOT NULL CHECK (is_done IN (0, 1))
) STRICT;
CREATE TABLE change_parts (
    change INTEGER NOT NULL REFERENCES changes (id) ON DELETE CASCADE,
    position INTEGER NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN ('recipe', 'kitchen', 'occasion', 'open')),
    id TEXT NOT NULL,
    before TEXT,
    after TEXT,
    PRIMARY KEY (change, position)
) STRICT, WITHOUT ROWID;
)sql";

// The bodies of occasions may hold what was reported on the night. Nothing is to be changed for
// that, but programs of before cannot read them.
constexpr const char* toVersion3 = "";

// The larder, whose one row has the id ''; guests' portions and dislikes, and what was bought, in
// the bodies of occasions.
constexpr const char* toVersion4 = R"sql(
CREATE TABLE larders (
    id TEXT PRIMARY KEY CHECK (id = ''),
    name TEXT NOT NULL,
    body TEXT NOT NULL
) STRICT;

CREATE TABLE parts_with_larder (
    change INTEGER NOT NULL REFERENCES changes (id) ON DELETE CASCADE,
    position INTEGER NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN ('recipe', 'kitchen', 'occasion', 'larder', 'open')),
    id TEXT NOT NULL,
    before TEXT,
    after TEXT,
    PRIMARY KEY (change, position)
) STRICT, WITHOUT ROWID;
INSERT INTO parts_with_larder SELECT change, position, kind, id, before, after FROM change_parts;
DROP TABLE change_parts;
ALTER TABLE parts_with_larder RENAME TO change_parts;
)sql";

constexpr std::array migrations{toVersion1, toVersion2, toVersion3, toVersion4};
static_assert(migrations.size() == currentSchemaVersion);

int pragma(SQLite::Database& database, const char* text)
{
    return database.execAndGet(text).getInt();
}

} // namespace

int applicationIdOf(SQLite::Database& database)
{
    return pragma(database, "PRAGMA application_id");
}

int schemaVersionOf(SQLite::Database& database)
{
    return pragma(database, "PRAGMA user_version");
}

bool isBlank(SQLite::Database& database)
{
    return database.execAndGet("SELECT count(*) FROM sqlite_schema").getInt() == 0;
}

void migrate(SQLite::Database& database, int version)
{
    expects(version >= 0 && version <= currentSchemaVersion, "a version that there is");
    if (schemaVersionOf(database) >= version) {
        return;
    }
    WriteTransaction transaction(database);
    for (int from = schemaVersionOf(database); from < version; ++from) {
        database.exec(migrations.at(static_cast<std::size_t>(from)));
    }
    database.exec(fmt::format("PRAGMA user_version = {}", version));
    database.exec(fmt::format("PRAGMA application_id = {}", libraryApplicationId));
    transaction.commit();
}

} // namespace suppertide
