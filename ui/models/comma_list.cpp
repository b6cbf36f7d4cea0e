#include "ui/models/comma_list.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

#include "ui/models/reading.h"

namespace suppertide::ui {

std::string_view trimmed(std::string_view text)
{
    const auto first = text.find_first_not_of(' ');
    return first == std::string_view::npos
               ? std::string_view{}
               : text.substr(first, text.find_last_not_of(' ') - first + 1);
}

std::optional<Celsius> readDegrees(std::string_view text)
{
    constexpr std::string_view minus = "−";
    const bool isBelow = text.starts_with(minus);
    text.remove_prefix(isBelow ? minus.size() : 0);
    int degrees = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), degrees);
    degrees = isBelow ? -degrees : degrees;
    const std::string_view unit = trimmed(text.substr(static_cast<std::size_t>(end - text.data())));
    constexpr int hottest = 1000; // so that tenths of it are in bounds
    if (error != std::errc{} || degrees > hottest || degrees < -hottest) {
        return std::nullopt;
    }
    if (unit == "°F" || unit == "F") {
        return Celsius::tenths(static_cast<int>(std::lround((degrees - 32) / 0.18)));
    }
    const bool isCelsius = unit.empty() || unit == "°C" || unit == "C" || unit == "°";
    return isCelsius ? std::optional(Celsius::degrees(degrees)) : std::nullopt;
}

std::string typedDegrees(Celsius temperature, bool isFahrenheit)
{
    return isFahrenheit ? fmt::format("{} °F", std::lround(temperature.tenths() * 0.18 + 32))
                        : fmt::format("{} °C", temperature.wholeDegrees());
}

std::optional<std::pair<Minutes, Celsius>> readTimeAndDegrees(std::string_view text,
                                                              std::string_view word)
{
    const auto found = text.find(word);
    if (found == std::string_view::npos) {
        return std::nullopt;
    }
    const auto time = readDuration(trimmed(text.substr(0, found)));
    const auto degrees = readDegrees(trimmed(text.substr(found + word.size())));
    return time && degrees ? std::optional(std::pair(*time, *degrees)) : std::nullopt;
}

} // namespace suppertide::ui
