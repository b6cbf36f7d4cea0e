#include "core/store/history_rows.h"

#include <fmt/format.h>

#include <optional>
#include <string>
#include <vector>

#include "core/base/contracts.h"
#include "core/store/thing_rows.h"

namespace suppertide {

namespace {

using Text = std::optional<std::string>;

void bindText(SQLite::Statement& statement, int position, const Text& text)
{
    if (text) {
        statement.bind(position, *text);
    } else {
        statement.bind(position);
    }
}

Text textAt(SQLite::Statement& row, int column)
{
    const SQLite::Column value = row.getColumn(column);
    return value.isNull() ? std::nullopt : Text{value.getString()};
}

/// Puts a thing's text in its table, or takes the thing away.
void putThing(SQLite::Database& database, std::string_view table, const std::string& id,
              const Text& body)
{
    if (body) {
        SQLite::Statement put(
            database, fmt::format("INSERT INTO {} (id, name, body) "
                                  "VALUES (?1, coalesce(json_extract(?2, '$.name'), ''), ?2) "
                                  "ON CONFLICT (id) DO UPDATE "
                                  "SET name = excluded.name, body = excluded.body",
                                  table));
        put.bind(1, id);
        put.bind(2, *body);
        put.exec();
    } else {
        SQLite::Statement take(database, fmt::format("DELETE FROM {} WHERE id = ?", table));
        take.bind(1, id);
        take.exec();
    }
}

const RecipeId& idOf(const Recipe& recipe)
{
    return recipe.id;
}

const KitchenId& idOf(const Kitchen& kitchen)
{
    return kitchen.id;
}

const OccasionId& idOf(const OccasionRecord& record)
{
    return record.occasion.id;
}

const std::string theLarder; // its id: there is one

void putShown(SQLite::Database& database, const Text& occasion)
{
    SQLite::Statement put(database, "UPDATE shown SET occasion = ? WHERE one = 1");
    bindText(put, 1, occasion);
    put.exec();
}

/// Writes the parts of one change and puts them in force.
class PartKeeper
{
public:
    PartKeeper(SQLite::Database& database, std::int64_t change)
        : database_(database), change_(change)
    {}

    Result<void> operator()(const RecipeChange& part) { return keepNamed(part); }
    Result<void> operator()(const KitchenChange& part) { return keepNamed(part); }
    Result<void> operator()(const OccasionChange& part) { return keepNamed(part); }
    Result<void> operator()(const LarderChange& part) { return keepThing(part.after, theLarder); }
    Result<void> operator()(const OpenChange& part)
    {
        const Text after = part.after ? Text{part.after->text()} : std::nullopt;
        addRow("open", "", "SELECT occasion FROM shown WHERE one = 1 OR ?4 IS NULL", after);
        putShown(database_, after);
        return {};
    }

private:
    template <typename Part>
    Result<void> keepNamed(const Part& part)
    {
        expects(!part.after || idOf(*part.after) == part.id, "a thing under its own id");
        return keepThing(part.after, part.id.text());
    }

    template <typename Thing>
    Result<void> keepThing(const std::shared_ptr<const Thing>& thing, const std::string& id)
    {
        constexpr ThingTable table = tableOf<Thing>;
        Text after;
        if (thing) {
            auto text = textOf(*thing);
            if (!text) {
                return text.error();
            }
            after = std::move(*text);
        }
        addRow(table.kind, id, fmt::format("SELECT body FROM {} WHERE id = ?4", table.table),
               after);
        putThing(database_, table.table, id, after);
        return {};
    }

    /// What was before is what the tables hold, so that undo cannot bring back anything else.
    void addRow(std::string_view kind, const std::string& id, const std::string& before,
                const Text& after)
    {
        SQLite::Statement add(
            database_,
            fmt::format("INSERT INTO change_parts (change, position, kind, id, before, after) "
                        "VALUES (?1, ?2, ?3, ?4, ({}), ?5)",
                        before));
        add.bind(1, change_);
        add.bind(2, position_++);
        add.bind(3, std::string(kind));
        add.bind(4, id);
        bindText(add, 5, after);
        add.exec();
    }

    SQLite::Database& database_;
    std::int64_t change_;
    int position_ = 0;
};

struct PartRow
{
    std::string kind;
    std::string id;
    Text text; // of the side that is put in force
};

void putPart(SQLite::Database& database, const PartRow& part)
{
    for (const ThingTable& table :
         {tableOf<Recipe>, tableOf<Kitchen>, tableOf<OccasionRecord>, tableOf<Larder>}) {
        if (part.kind == table.kind) {
            putThing(database, table.table, part.id, part.text);
            return;
        }
    }
    putShown(database, part.text);
}

/// Puts one side of a change in force and marks it.
void putChange(SQLite::Database& database, std::int64_t change, bool isDone)
{
    SQLite::Statement rows(database,
                           fmt::format("SELECT kind, id, {} FROM change_parts WHERE change = ? "
                                       "ORDER BY position {}",
                                       isDone ? "after" : "before", isDone ? "ASC" : "DESC"));
    rows.bind(1, change);
    std::vector<PartRow> parts;
    while (rows.executeStep()) {
        parts.push_back(
            {rows.getColumn(0).getString(), rows.getColumn(1).getString(), textAt(rows, 2)});
    }
    for (const PartRow& part : parts) {
        putPart(database, part);
    }
    SQLite::Statement mark(database, "UPDATE changes SET is_done = ? WHERE id = ?");
    mark.bind(1, isDone ? 1 : 0);
    mark.bind(2, change);
    mark.exec();
}

std::optional<std::int64_t> findChange(SQLite::Database& database, const char* query)
{
    SQLite::Statement found(database, query);
    return found.executeStep() ? std::optional{found.getColumn(0).getInt64()} : std::nullopt;
}

} // namespace

Result<void> keepChange(SQLite::Database& database, const Change& change)
{
    database.exec("DELETE FROM changes WHERE is_done = 0");
    SQLite::Statement add(database, "INSERT INTO changes (text, is_done) VALUES (?, 1)");
    add.bind(1, change.text);
    add.exec();
    PartKeeper keeper(database, database.getLastInsertRowid());
    for (const ChangePart& part : change.parts) {
        if (auto kept = std::visit(keeper, part); !kept) {
            return kept;
        }
    }
    SQLite::Statement forget(database, "DELETE FROM changes WHERE id IN "
                                       "(SELECT id FROM changes ORDER BY id DESC "
                                       "LIMIT -1 OFFSET ?)");
    forget.bind(1, mostChangesKept);
    forget.exec();
    return {};
}

bool undoLastChange(SQLite::Database& database)
{
    const auto change =
        findChange(database, "SELECT id FROM changes WHERE is_done = 1 ORDER BY id DESC LIMIT 1");
    if (change) {
        putChange(database, *change, false);
    }
    return change.has_value();
}

bool redoNextChange(SQLite::Database& database)
{
    const auto change =
        findChange(database, "SELECT id FROM changes WHERE is_done = 0 ORDER BY id ASC LIMIT 1");
    if (change) {
        putChange(database, *change, true);
    }
    return change.has_value();
}

} // namespace suppertide
