#include "core/base/civil_time.h"

#include <date/date.h>
#include <date/tz.h>
#include <fmt/format.h>

#include <charconv>
#include <optional>

namespace suppertide {

namespace {

date::year_month_day toDate(const CivilDate& d)
{
    return date::year{d.year} / date::month{d.month} / date::day{d.day};
}

CivilDate fromDate(const date::year_month_day& d)
{
    return {int{d.year()}, unsigned{d.month()}, unsigned{d.day()}};
}

using LocalMinutes = date::local_time<Minutes>;

LocalMinutes toLocal(const CivilTime& time)
{
    return LocalMinutes{date::local_days{toDate(time.date)}.time_since_epoch()} +
           Minutes{time.clock.hour * 60 + time.clock.minute};
}

const date::time_zone& zoneOf(const void* zone)
{
    return *static_cast<const date::time_zone*>(zone);
}

/// A number that is exactly the whole of `text`.
std::optional<int> wholeNumber(std::string_view text)
{
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool digitsOnly = !text.empty() && text.front() >= '0' && text.front() <= '9';
    if (!digitsOnly || error != std::errc{} || end != text.data() + text.size()) {
        return std::nullopt;
    }
    return value;
}

Failure notA(std::string_view what, std::string_view text, std::string_view example)
{
    return {FailureKind::BadInput,
            fmt::format("“{}” is not a {}. Write it like {}.", text, what, example),
            {}};
}

} // namespace

bool isValid(const CivilDate& d)
{
    return toDate(d).ok();
}

Weekday weekdayOf(const CivilDate& d)
{
    return static_cast<Weekday>(date::weekday{date::sys_days{toDate(d)}}.iso_encoding() - 1);
}

CivilDate addDays(const CivilDate& d, int days)
{
    return fromDate(date::year_month_day{date::sys_days{toDate(d)} + date::days{days}});
}

int daysBetween(const CivilDate& from, const CivilDate& to)
{
    return (date::sys_days{toDate(to)} - date::sys_days{toDate(from)}).count();
}

std::string toIso(const CivilDate& d)
{
    return fmt::format("{:04}-{:02}-{:02}", d.year, d.month, d.day);
}

std::string toIso(const ClockTime& c)
{
    return fmt::format("{:02}:{:02}", c.hour, c.minute);
}

std::string toIso(const CivilTime& t)
{
    return toIso(t.date) + "T" + toIso(t.clock);
}

Result<CivilDate> parseDate(std::string_view text)
{
    if (text.size() == 10 && text[4] == '-' && text[7] == '-') {
        const auto year = wholeNumber(text.substr(0, 4));
        const auto month = wholeNumber(text.substr(5, 2));
        const auto day = wholeNumber(text.substr(8, 2));
        if (year && month && day) {
            const CivilDate result{*year, static_cast<unsigned>(*month),
                                   static_cast<unsigned>(*day)};
            if (isValid(result)) {
                return result;
            }
            return Failure{FailureKind::BadInput,
                           fmt::format("There is no day {} in the calendar.", text),
                           {}};
        }
    }
    return notA("date", text, "2027-06-19");
}

Result<ClockTime> parseClock(std::string_view text)
{
    if (text.size() == 5 && text[2] == ':') {
        const auto hour = wholeNumber(text.substr(0, 2));
        const auto minute = wholeNumber(text.substr(3, 2));
        if (hour && minute && *hour < 24 && *minute < 60) {
            return ClockTime{*hour, *minute};
        }
    }
    return notA("time of day", text, "19:30");
}

Result<CivilTime> parseCivil(std::string_view text)
{
    if (text.size() == 16 && text[10] == 'T') {
        auto day = parseDate(text.substr(0, 10));
        auto clock = parseClock(text.substr(11));
        if (day && clock) {
            return CivilTime{*day, *clock};
        }
    }
    return notA("date and time", text, "2027-06-19T19:30");
}

std::string toIso(Instant instant)
{
    return toIso(TimeZone::utc().civil(instant)) + "Z";
}

Result<Instant> parseInstant(std::string_view text)
{
    if (text.size() == 17 && text.back() == 'Z') {
        auto civil = parseCivil(text.substr(0, 16));
        if (civil) {
            return TimeZone::utc().instant(*civil);
        }
    }
    return notA("time in UTC", text, "2027-06-19T18:30Z");
}

Result<TimeZone> TimeZone::find(std::string_view name)
{
    try {
        return TimeZone{date::locate_zone(std::string(name))};
    } catch (const std::exception& error) {
        return Failure{FailureKind::NotFound,
                       fmt::format("There is no time zone called “{}”. "
                                   "Write it like Europe/London.",
                                   name),
                       error.what()};
    }
}

TimeZone TimeZone::utc()
{
    static const date::time_zone* const zone = date::locate_zone("Etc/UTC");
    return TimeZone{zone};
}

std::string TimeZone::name() const
{
    return std::string(zoneOf(zone_).name());
}

CivilTime TimeZone::civil(Instant instant) const
{
    const auto local = std::chrono::floor<Minutes>(zoneOf(zone_).to_local(instant));
    const auto day = std::chrono::floor<date::days>(local);
    const auto minute = (local - day).count();
    return {fromDate(date::year_month_day{date::local_days{day}}),
            {static_cast<int>(minute / 60), static_cast<int>(minute % 60)}};
}

Instant TimeZone::instant(const CivilTime& time) const
{
    return std::chrono::floor<Minutes>(zoneOf(zone_).to_sys(toLocal(time), date::choose::earliest));
}

ClockTimeKind TimeZone::kindOf(const CivilTime& time) const
{
    switch (zoneOf(zone_).get_info(toLocal(time)).result) {
    case date::local_info::nonexistent:
        return ClockTimeKind::Skipped;
    case date::local_info::ambiguous:
        return ClockTimeKind::Repeated;
    default:
        return ClockTimeKind::Unique;
    }
}

Minutes TimeZone::lengthOfDay(const CivilDate& date) const
{
    return instant({addDays(date, 1), {0, 0}}) - instant({date, {0, 0}});
}

} // namespace suppertide
