// Civil time: dates and clock times in a time zone, and the instants (UTC minutes) they stand for.
// The only place that knows time zones; everything else works in PlanTime. A day on which the
// clocks change has 23 or 25 hours here, and the conversions are right on it.
#pragma once

#include <chrono>
#include <compare>
#include <string>
#include <string_view>

#include "core/base/plan_time.h"
#include "core/base/result.h"

namespace suppertide {

/// A minute in UTC.
using Instant = std::chrono::time_point<std::chrono::system_clock, Minutes>;

/// A day of the proleptic Gregorian calendar.
struct CivilDate
{
    int year = 1970;
    unsigned month = 1; // 1…12
    unsigned day = 1;   // 1…31

    friend auto operator<=>(const CivilDate&, const CivilDate&) = default;
};

/// A time on the clock on the wall.
struct ClockTime
{
    int hour = 0;   // 0…23
    int minute = 0; // 0…59

    friend auto operator<=>(const ClockTime&, const ClockTime&) = default;
};

struct CivilTime
{
    CivilDate date;
    ClockTime clock;

    friend auto operator<=>(const CivilTime&, const CivilTime&) = default;
};

enum class Weekday
{
    Monday,
    Tuesday,
    Wednesday,
    Thursday,
    Friday,
    Saturday,
    Sunday
};

/// How a clock time stands to the zone's clock changes.
enum class ClockTimeKind
{
    Unique,
    Skipped,  // the clocks jump over it: it does not occur on that day
    Repeated, // it occurs twice on that day
};

/// True for days that exist (2027-02-29 does not).
[[nodiscard]] bool isValid(const CivilDate& date);
[[nodiscard]] Weekday weekdayOf(const CivilDate& date);
[[nodiscard]] CivilDate addDays(const CivilDate& date, int days);
[[nodiscard]] int daysBetween(const CivilDate& from, const CivilDate& to);

/// "2027-06-19" and back (ISO 8601); "19:30" and back; "2027-06-19T19:30" and back.
[[nodiscard]] std::string toIso(const CivilDate& date);
[[nodiscard]] std::string toIso(const ClockTime& clock);
[[nodiscard]] std::string toIso(const CivilTime& time);
[[nodiscard]] Result<CivilDate> parseDate(std::string_view text);
[[nodiscard]] Result<ClockTime> parseClock(std::string_view text);
[[nodiscard]] Result<CivilTime> parseCivil(std::string_view text);

/// "2027-06-19T17:30Z" and back.
[[nodiscard]] std::string toIso(Instant instant);
[[nodiscard]] Result<Instant> parseInstant(std::string_view text);

/// A time zone of the IANA data base, e.g. "Europe/London". Cheap to copy.
class TimeZone
{
public:
    /// NotFound if there is no zone of that name.
    static Result<TimeZone> find(std::string_view name);
    static TimeZone utc();

    [[nodiscard]] std::string name() const;
    [[nodiscard]] CivilTime civil(Instant instant) const;
    /// A skipped time gives the instant of the jump, a repeated one its first occurrence.
    [[nodiscard]] Instant instant(const CivilTime& time) const;
    [[nodiscard]] ClockTimeKind kindOf(const CivilTime& time) const;
    /// Minutes from this midnight to the next: 1440, or 1380 or 1500 at a clock change.
    [[nodiscard]] Minutes lengthOfDay(const CivilDate& date) const;

    friend bool operator==(const TimeZone&, const TimeZone&) = default;

private:
    explicit TimeZone(const void* zone) : zone_(zone) {}
    const void* zone_; // date::time_zone, owned by the zone data base for good
};

/// Where minute 0 of a plan lies, and in which zone it is read.
struct PlanCalendar
{
    Instant origin;
    TimeZone zone = TimeZone::utc();

    [[nodiscard]] Instant instant(PlanTime time) const { return origin + time.time_since_epoch(); }
    [[nodiscard]] PlanTime planTime(Instant instant) const { return PlanTime{instant - origin}; }
    [[nodiscard]] CivilTime civil(PlanTime time) const { return zone.civil(instant(time)); }
    [[nodiscard]] PlanTime planTime(const CivilTime& time) const
    {
        return planTime(zone.instant(time));
    }
    friend bool operator==(const PlanCalendar&, const PlanCalendar&) = default;
};

} // namespace suppertide
