// Text written to a file that the user named.
#pragma once

#include <filesystem>
#include <string>

#include "core/base/result.h"

namespace suppertide::app {

/// In place of what was there. Io, with the system's reason, if it could not be written.
[[nodiscard]] Result<void> writeText(const std::string& text, const std::filesystem::path& file);

} // namespace suppertide::app
