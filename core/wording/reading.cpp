// Figures as a cook reads them: temperatures, lengths of time, times of day, days.
#include <fmt/format.h>

#include <array>

#include "core/wording/wording.h"

namespace suppertide {

namespace {

constexpr std::array<std::string_view, 7> weekdays{"Monday", "Tuesday",  "Wednesday", "Thursday",
                                                   "Friday", "Saturday", "Sunday"};
constexpr std::array<std::string_view, 12> months{"January",   "February", "March",    "April",
                                                  "May",       "June",     "July",     "August",
                                                  "September", "October",  "November", "December"};

std::string_view weekdayName(const CivilDate& date)
{
    return weekdays.at(static_cast<std::size_t>(weekdayOf(date)));
}

std::string dayAndMonth(const CivilDate& date)
{
    return fmt::format("{} {}", date.day, months.at(date.month - 1));
}

std::string clockText(const ClockTime& clock, const ReadingStyle& style)
{
    if (!style.clock12) {
        return fmt::format("{:02}:{:02}", clock.hour, clock.minute);
    }
    const int hour = clock.hour % 12 == 0 ? 12 : clock.hour % 12;
    return fmt::format("{}:{:02} {}", hour, clock.minute, clock.hour < 12 ? "am" : "pm");
}

/// Oven knobs in °F are marked in steps; below boiling a single degree matters.
int fahrenheit(int celsius)
{
    constexpr int boiling = 100;
    const int tenths = celsius * 18 + 320;
    const int step = celsius > boiling ? 50 : 10;
    const int up = tenths >= 0 ? step / 2 : -step / 2;
    return (tenths + up) / step * (step / 10);
}

} // namespace

std::string temperatureText(int celsius, const ReadingStyle& style)
{
    const int value = style.fahrenheit ? fahrenheit(celsius) : celsius;
    return fmt::format("{}{} °{}", value < 0 ? "−" : "", value < 0 ? -value : value,
                       style.fahrenheit ? 'F' : 'C');
}

std::string durationText(Minutes duration)
{
    if (duration < Minutes{0}) {
        return "−" + durationText(-duration);
    }
    constexpr std::int64_t day = std::int64_t{24} * 60;
    const std::int64_t days = duration.count() / day;
    const std::int64_t hours = duration.count() % day / 60;
    const std::int64_t minutes = duration.count() % 60;
    std::string result;
    if (days > 0) {
        result = fmt::format("{} day{}", days, days == 1 ? "" : "s");
    }
    if (hours > 0) {
        result += fmt::format("{}{} h", result.empty() ? "" : " ", hours);
    }
    if (minutes == 0 && !result.empty()) {
        return result;
    }
    if (hours > 0) {
        return result + fmt::format(" {:02}", minutes);
    }
    return result + fmt::format("{}{} min", result.empty() ? "" : " ", minutes);
}

std::string timeText(const PlanCalendar& calendar, PlanTime time, std::optional<CivilDate> day,
                     const ReadingStyle& style)
{
    const CivilTime civil = calendar.civil(time);
    std::string clock = clockText(civil.clock, style);
    if (!day || *day == civil.date) {
        return clock;
    }
    return fmt::format("{} {} {}", weekdayName(civil.date).substr(0, 3), dayAndMonth(civil.date),
                       clock);
}

std::string dayText(const CivilDate& date)
{
    return fmt::format("{} {}", weekdayName(date), dayAndMonth(date));
}

} // namespace suppertide
