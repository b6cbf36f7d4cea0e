// Time inside a plan: whole minutes since the plan's origin. A point plus a point does not compile.
// Civil time (dates, clocks on the wall, zones) exists only in civil_time.h.
#pragma once

#include <chrono>
#include <cstdint>

namespace suppertide {

/// A length of time in whole minutes; may be negative.
using Minutes = std::chrono::duration<std::int64_t, std::ratio<60>>;

/// The plan's own clock. It cannot be read: a plan is made for any day.
struct PlanClock
{
    using rep = Minutes::rep;       // NOLINT(readability-identifier-naming): as std::chrono
    using period = Minutes::period; // NOLINT(readability-identifier-naming)
    using duration = Minutes;       // NOLINT(readability-identifier-naming)
    using time_point =
        std::chrono::time_point<PlanClock, Minutes>; // NOLINT(readability-identifier-naming)
    static constexpr bool is_steady = false;         // NOLINT(readability-identifier-naming)
};

/// A point in time, in minutes since the plan's origin.
using PlanTime = PlanClock::time_point;

inline namespace literals {
constexpr Minutes operator""_min(unsigned long long count)
{
    return Minutes{static_cast<Minutes::rep>(count)};
}
constexpr Minutes operator""_h(unsigned long long count)
{
    return Minutes{static_cast<Minutes::rep>(count) * 60};
}
} // namespace literals

/// Minutes since the origin, as a plain number (for files, golden texts and solver arithmetic).
constexpr std::int64_t minuteOf(PlanTime time)
{
    return time.time_since_epoch().count();
}

constexpr PlanTime planTime(std::int64_t minute)
{
    return PlanTime{Minutes{minute}};
}

} // namespace suppertide
