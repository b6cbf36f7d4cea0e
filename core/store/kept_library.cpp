#include "core/store/kept_library.h"

#include <fmt/format.h>

#include <utility>

#include "core/base/log.h"
#include "core/store/connection.h"
#include "core/store/history_rows.h"

namespace suppertide {

KeptLibrary::KeptLibrary(std::filesystem::path file, std::unique_ptr<FileLock> lock,
                         std::string readOnlyReason, SQLite::Database database)
    : file_(std::move(file)), lock_(std::move(lock)), readOnlyReason_(std::move(readOnlyReason)),
      database_(std::move(database))
{}

template <>
ThingReader<Recipe>& KeptLibrary::reader()
{
    return recipes_;
}

template <>
ThingReader<Kitchen>& KeptLibrary::reader()
{
    return kitchens_;
}

template <>
ThingReader<OccasionRecord>& KeptLibrary::reader()
{
    return occasions_;
}

template <>
ThingReader<Larder>& KeptLibrary::reader()
{
    return larders_;
}

template <typename Thing, typename Things>
Result<void> KeptLibrary::loadThings(Things& things)
{
    constexpr ThingTable table = tableOf<Thing>;
    SQLite::Statement rows(database_,
                           fmt::format("SELECT id, body FROM {} ORDER BY id", table.table));
    while (rows.executeStep()) {
        const std::string id = rows.getColumn(0).getString();
        auto thing = reader<Thing>().read(rows.getColumn(1).getString());
        if (!thing) {
            return damaged(file_,
                           fmt::format("{} “{}”: {}", table.kind, id, thing.error().forCook));
        }
        things.emplace_hint(things.end(), typename Things::key_type{id}, std::move(*thing));
    }
    return {};
}

Result<LibraryState> KeptLibrary::load()
{
    const std::scoped_lock lock(mutex_);
    return withFailures(file_, [this]() -> Result<LibraryState> {
        SQLite::Transaction oneMoment(database_);
        LibraryState state;
        if (auto loaded = loadThings<Recipe>(state.recipes); !loaded) {
            return loaded.error();
        }
        if (auto loaded = loadThings<Kitchen>(state.kitchens); !loaded) {
            return loaded.error();
        }
        if (auto loaded = loadThings<OccasionRecord>(state.occasions); !loaded) {
            return loaded.error();
        }
        std::map<std::string, LarderPtr> larders;
        if (auto loaded = loadThings<Larder>(larders); !loaded) {
            return loaded.error();
        }
        if (!larders.empty()) {
            state.larder = std::move(larders.begin()->second);
        }
        SQLite::Statement shown(database_, "SELECT occasion FROM shown");
        if (shown.executeStep() && !shown.getColumn(0).isNull()) {
            state.open = OccasionId{shown.getColumn(0).getString()};
        }
        return state;
    });
}

template <typename Thing>
Result<void> KeptLibrary::readSides(SQLite::Statement& row, std::shared_ptr<const Thing>& before,
                                    std::shared_ptr<const Thing>& after)
{
    for (auto [column, side] : {std::pair{2, &before}, std::pair{3, &after}}) {
        if (!row.getColumn(column).isNull()) {
            auto thing = reader<Thing>().read(row.getColumn(column).getString());
            if (!thing) {
                return damaged(file_,
                               fmt::format("history, {} “{}”: {}", tableOf<Thing>.kind,
                                           row.getColumn(1).getString(), thing.error().forCook));
            }
            *side = std::move(*thing);
        }
    }
    return {};
}

template <typename Part>
Result<ChangePart> KeptLibrary::readNamed(SQLite::Statement& row)
{
    Part part{decltype(Part::id){row.getColumn(1).getString()}, nullptr, nullptr};
    if (auto read = readSides(row, part.before, part.after); !read) {
        return read.error();
    }
    return ChangePart{std::move(part)};
}

Result<ChangePart> KeptLibrary::readPart(SQLite::Statement& row)
{
    const std::string kind = row.getColumn(0).getString();
    if (kind == tableOf<Recipe>.kind) {
        return readNamed<RecipeChange>(row);
    }
    if (kind == tableOf<Kitchen>.kind) {
        return readNamed<KitchenChange>(row);
    }
    if (kind == tableOf<OccasionRecord>.kind) {
        return readNamed<OccasionChange>(row);
    }
    if (kind == tableOf<Larder>.kind) {
        LarderChange part;
        if (auto read = readSides(row, part.before, part.after); !read) {
            return read.error();
        }
        return ChangePart{std::move(part)};
    }
    const auto shown = [&row](int column) {
        return row.getColumn(column).isNull()
                   ? std::nullopt
                   : std::optional{OccasionId{row.getColumn(column).getString()}};
    };
    return ChangePart{OpenChange{shown(2), shown(3)}};
}

Result<void> KeptLibrary::readParts(std::int64_t change, std::vector<ChangePart>& parts)
{
    SQLite::Statement rows(database_, "SELECT kind, id, before, after FROM change_parts "
                                      "WHERE change = ? ORDER BY position");
    rows.bind(1, change);
    while (rows.executeStep()) {
        auto part = readPart(rows);
        if (!part) {
            return part.error();
        }
        parts.push_back(std::move(*part));
    }
    return {};
}

Result<History> KeptLibrary::loadHistory()
{
    const std::scoped_lock lock(mutex_);
    return withFailures(file_, [this]() -> Result<History> {
        SQLite::Transaction oneMoment(database_);
        History history;
        SQLite::Statement rows(database_, "SELECT id, text, is_done FROM changes ORDER BY id");
        while (rows.executeStep()) {
            Change change{rows.getColumn(1).getString(), {}};
            if (auto read = readParts(rows.getColumn(0).getInt64(), change.parts); !read) {
                return read.error();
            }
            history.changes.push_back(std::move(change));
            history.done += rows.getColumn(2).getInt() == 1 ? 1U : 0U;
        }
        return history;
    });
}

template <typename Body>
Result<void> KeptLibrary::write(const Body& body)
{
    const std::scoped_lock lock(mutex_);
    if (!readOnlyReason_.empty()) {
        return Failure{FailureKind::ReadOnly, readOnlyReason_, {}};
    }
    return withFailures(file_, [&]() -> Result<void> {
        WriteTransaction transaction(database_);
        if (Result<void> done = body(); !done) {
            return done;
        }
        transaction.commit();
        return {};
    });
}

Result<void> KeptLibrary::apply(const Change& change)
{
    return write([&] { return keepChange(database_, change); });
}

Result<void> KeptLibrary::undo()
{
    return write([this]() -> Result<void> {
        if (undoLastChange(database_)) {
            return {};
        }
        return Failure{FailureKind::NotFound, "There is nothing to undo.", {}};
    });
}

Result<void> KeptLibrary::redo()
{
    return write([this]() -> Result<void> {
        if (redoNextChange(database_)) {
            return {};
        }
        return Failure{FailureKind::NotFound, "There is nothing to redo.", {}};
    });
}

Result<std::optional<std::string>> KeptLibrary::setting(const std::string& name)
{
    using Value = std::optional<std::string>;
    const std::scoped_lock lock(mutex_);
    return withFailures(file_, [&]() -> Result<Value> {
        SQLite::Statement found(database_, "SELECT value FROM settings WHERE name = ?");
        found.bind(1, name);
        return found.executeStep() ? Value{found.getColumn(0).getString()} : Value{};
    });
}

Result<void> KeptLibrary::keepSetting(const std::string& name, const std::string& value)
{
    return write([&]() -> Result<void> {
        SQLite::Statement keep(database_,
                               "INSERT INTO settings (name, value) VALUES (?, ?) "
                               "ON CONFLICT (name) DO UPDATE SET value = excluded.value");
        keep.bind(1, name);
        keep.bind(2, value);
        keep.exec();
        return {};
    });
}

} // namespace suppertide
