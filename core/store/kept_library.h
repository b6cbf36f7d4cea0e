// KeptLibrary: the Library on an open SQLite file. Made by openLibrary, which has seen to the lock
// and the schema. May be used from several threads, one at a time inside.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <filesystem>
#include <memory>
#include <mutex>
#include <string>

#include "core/library/library.h"
#include "core/store/file_lock.h"
#include "core/store/thing_rows.h"

namespace suppertide {

class KeptLibrary final : public Library
{
public:
    /// `lock` is null, and `readOnlyReason` says why, if the file may only be read.
    KeptLibrary(std::filesystem::path file, std::unique_ptr<FileLock> lock,
                std::string readOnlyReason, SQLite::Database database);

    [[nodiscard]] std::string readOnlyReason() const override { return readOnlyReason_; }
    [[nodiscard]] Result<LibraryState> load() override;
    [[nodiscard]] Result<History> loadHistory() override;
    [[nodiscard]] Result<void> apply(const Change& change) override;
    [[nodiscard]] Result<void> undo() override;
    [[nodiscard]] Result<void> redo() override;
    [[nodiscard]] Result<std::optional<std::string>> setting(const std::string& name) override;
    [[nodiscard]] Result<void> keepSetting(const std::string& name,
                                           const std::string& value) override;

private:
    template <typename Body>
    [[nodiscard]] Result<void> write(const Body& body);
    template <typename Thing, typename Things>
    [[nodiscard]] Result<void> loadThings(Things& things);
    template <typename Thing>
    [[nodiscard]] Result<void> readSides(SQLite::Statement& row,
                                         std::shared_ptr<const Thing>& before,
                                         std::shared_ptr<const Thing>& after);
    template <typename Part>
    [[nodiscard]] Result<ChangePart> readNamed(SQLite::Statement& row);
    [[nodiscard]] Result<ChangePart> readPart(SQLite::Statement& row);
    [[nodiscard]] Result<void> readParts(std::int64_t change, std::vector<ChangePart>& parts);
    template <typename Thing>
    [[nodiscard]] ThingReader<Thing>& reader();

    std::mutex mutex_;
    std::filesystem::path file_;
    std::unique_ptr<FileLock> lock_; // let go after the database is closed
    std::string readOnlyReason_;
    ThingReader<Recipe> recipes_;
    ThingReader<Kitchen> kitchens_;
    ThingReader<OccasionRecord> occasions_;
    ThingReader<Larder> larders_;
    SQLite::Database database_;
};

} // namespace suppertide
