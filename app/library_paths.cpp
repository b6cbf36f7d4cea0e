#include "app/library_paths.h"

#include <fmt/format.h>

#include <array>
#include <cstdlib>
#include <optional>
#include <string>
#include <system_error>

namespace suppertide::app {

namespace fs = std::filesystem;

namespace {

std::optional<fs::path> fromEnvironment(const char* name)
{
    const char* value = std::getenv(name); // NOLINT(concurrency-mt-unsafe): nothing sets variables
    return value != nullptr && *value != '\0' ? std::optional<fs::path>(value) : std::nullopt;
}

} // namespace

Result<fs::path> dataFolder()
{
    fs::path base;
    if (const auto data = fromEnvironment("XDG_DATA_HOME"); data && data->is_absolute()) {
        base = *data;
    } else if (const auto home = fromEnvironment("HOME")) {
        base = *home / ".local" / "share";
    } else {
        return Failure{FailureKind::Io,
                       "There is no home folder to keep the library in. Set HOME, or name a file "
                       "with --library.",
                       {}};
    }
    const fs::path folder = base / "suppertide";
    std::error_code error;
    fs::create_directories(folder, error);
    if (error) {
        return Failure{FailureKind::Io,
                       fmt::format("The folder {} cannot be made: {}. Name a file elsewhere with "
                                   "--library.",
                                   folder.string(), error.message()),
                       {}};
    }
    return folder;
}

Result<fs::path> usersLibrary()
{
    auto folder = dataFolder();
    if (!folder) {
        return folder.error();
    }
    return *folder / "library.suppertide";
}

Result<fs::path> builtDemo()
{
    if (const auto named = fromEnvironment("SUPPERTIDE_DEMO")) {
        return *named;
    }
    std::error_code error;
    const fs::path program = fs::read_symlink("/proc/self/exe", error);
    const fs::path beside = program.parent_path();
    const std::array candidates{beside / ".." / "demo-db" / "demo.suppertide",
                                beside / ".." / "share" / "suppertide" / "demo.suppertide"};
    for (const fs::path& candidate : candidates) {
        if (fs::exists(candidate, error)) {
            return fs::weakly_canonical(candidate, error);
        }
    }
    return Failure{FailureKind::NotFound,
                   "The demo is not where the program looks for it. Build it (cmake --build), or "
                   "name it in SUPPERTIDE_DEMO.",
                   program.string()};
}

} // namespace suppertide::app
