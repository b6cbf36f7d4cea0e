#include "core/base/log.h"

#include <spdlog/sinks/rotating_file_sink.h>
#include <spdlog/sinks/stdout_sinks.h>
#include <spdlog/spdlog.h>

#include <iostream>
#include <memory>
#include <mutex>
#include <utility>

namespace suppertide::log {

namespace {

spdlog::level::level_enum toSpdlog(Level level)
{
    switch (level) {
    case Level::Debug:
        return spdlog::level::debug;
    case Level::Info:
        return spdlog::level::info;
    case Level::Warn:
        return spdlog::level::warn;
    case Level::Error:
        return spdlog::level::err;
    }
    return spdlog::level::info;
}

/// The sinks are shared by all channels; the terminal hears only what went wrong.
struct Sinks
{
    std::mutex mutex;
    std::vector<spdlog::sink_ptr> sinks;
    std::vector<std::string> complaints;
    Level everywhere = Level::Info;

    Sinks()
    {
        auto terminal = std::make_shared<spdlog::sinks::stderr_sink_mt>();
        terminal->set_level(spdlog::level::warn);
        sinks.push_back(std::move(terminal));
    }
};

Sinks& all()
{
    static Sinks sinks;
    return sinks;
}

std::shared_ptr<spdlog::logger> channelNamed(std::string_view name)
{
    const std::string key(name);
    if (auto known = spdlog::get(key)) {
        return known;
    }
    const std::lock_guard lock(all().mutex);
    if (auto known = spdlog::get(key)) {
        return known;
    }
    auto made = std::make_shared<spdlog::logger>(key, all().sinks.begin(), all().sinks.end());
    made->set_level(toSpdlog(all().everywhere));
    made->flush_on(spdlog::level::warn);
    spdlog::register_logger(made);
    return made;
}

} // namespace

void write(Level level, std::string_view channel, std::string_view text)
{
    channelNamed(channel)->log(toSpdlog(level), text);
    if (level >= Level::Warn) {
        const std::lock_guard lock(all().mutex);
        all().complaints.emplace_back(text);
        // Bounded, so that a long-running window does not grow.
        if (all().complaints.size() > 1000) {
            all().complaints.erase(all().complaints.begin());
        }
    }
}

bool isOn(Level level, std::string_view channel)
{
    return channelNamed(channel)->should_log(toSpdlog(level));
}

void setLevel(std::string_view channel, Level level)
{
    if (channel.empty()) {
        {
            const std::lock_guard lock(all().mutex);
            all().everywhere = level;
        }
        spdlog::apply_all([level](const std::shared_ptr<spdlog::logger>& each) {
            each->set_level(toSpdlog(level));
        });
    } else {
        channelNamed(channel)->set_level(toSpdlog(level));
    }
}

void alsoTo(const std::filesystem::path& file)
{
    constexpr std::size_t bytes = 1'000'000;
    constexpr std::size_t kept = 3;
    try {
        auto sink =
            std::make_shared<spdlog::sinks::rotating_file_sink_mt>(file.string(), bytes, kept);
        {
            const std::lock_guard lock(all().mutex);
            all().sinks.push_back(sink);
        }
        spdlog::apply_all([&sink](const std::shared_ptr<spdlog::logger>& each) {
            each->sinks().push_back(sink);
        });
    } catch (const std::exception& problem) {
        std::cerr << "The log file " << file << " cannot be written: " << problem.what() << '\n';
    }
}

std::vector<std::string> takeComplaints()
{
    const std::lock_guard lock(all().mutex);
    return std::exchange(all().complaints, {});
}

} // namespace suppertide::log
