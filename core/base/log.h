// The log: one named channel a folder ("core.planner", "ui.timeline"). Hides spdlog, whose header
// doubles the time a file takes to compile. error: the user loses something; warn: we coped;
// info: what the user did; debug: numbers to reproduce. No guest names or allergies above debug.
#pragma once

#include <fmt/core.h>

#include <filesystem>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace suppertide::log {

enum class Level
{
    Debug,
    Info,
    Warn,
    Error
};

void write(Level level, std::string_view channel, std::string_view text);
[[nodiscard]] bool isOn(Level level, std::string_view channel);

/// "core.planner" → that channel; "" → all of them.
void setLevel(std::string_view channel, Level level);
/// Also write to this file (rotated at 1 MB, three kept). A file that cannot be opened is reported
/// on stderr and otherwise ignored.
void alsoTo(const std::filesystem::path& file);

template <typename... Args>
void debug(std::string_view channel, fmt::format_string<Args...> format, Args&&... args)
{
    if (isOn(Level::Debug, channel)) {
        write(Level::Debug, channel, fmt::format(format, std::forward<Args>(args)...));
    }
}
template <typename... Args>
void info(std::string_view channel, fmt::format_string<Args...> format, Args&&... args)
{
    write(Level::Info, channel, fmt::format(format, std::forward<Args>(args)...));
}
template <typename... Args>
void warn(std::string_view channel, fmt::format_string<Args...> format, Args&&... args)
{
    write(Level::Warn, channel, fmt::format(format, std::forward<Args>(args)...));
}
template <typename... Args>
void error(std::string_view channel, fmt::format_string<Args...> format, Args&&... args)
{
    write(Level::Error, channel, fmt::format(format, std::forward<Args>(args)...));
}

/// What was written at warn or error since the last call; for tests, which fail on any that they
/// did not announce.
[[nodiscard]] std::vector<std::string> takeComplaints();

} // namespace suppertide::log
