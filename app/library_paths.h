// Where files are kept: the user's library and demos under $XDG_DATA_HOME/suppertide (else
// ~/.local/share/suppertide), and the demo that comes with the program.
#pragma once

#include <filesystem>

#include "core/base/result.h"

namespace suppertide::app {

/// The folder is made if it is not there. Io if it cannot be.
[[nodiscard]] Result<std::filesystem::path> dataFolder();

[[nodiscard]] Result<std::filesystem::path> usersLibrary();

/// The library that the build made of demo-db: $SUPPERTIDE_DEMO if set, else beside the program
/// (build tree), else in the share folder of where it is installed. NotFound if none is there.
[[nodiscard]] Result<std::filesystem::path> builtDemo();

} // namespace suppertide::app
