// Judges JSON by our published schema, through a validator that knows nothing of us.
#pragma once

#include <nlohmann/json.hpp>

#include <filesystem>
#include <string>

namespace suppertide::test {

[[nodiscard]] nlohmann::json readJson(const std::filesystem::path& file);

[[nodiscard]] const nlohmann::json& schemaText();

/// Empty if valid; else what is wrong, and where.
[[nodiscard]] std::string complaintOf(const nlohmann::json& document);

} // namespace suppertide::test
