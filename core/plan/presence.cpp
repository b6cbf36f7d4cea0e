#include "core/plan/presence.h"

#include <algorithm>

namespace suppertide {

namespace {

constexpr int hoursOfClock = 24;

/// 24:00 is the next day's 0:00, also where the clocks change.
PlanTime at(const PlanCalendar& calendar, const CivilDate& date, const ClockTime& clock)
{
    if (clock.hour >= hoursOfClock) {
        return calendar.planTime(CivilTime{addDays(date, 1), {}});
    }
    return calendar.planTime(CivilTime{date, clock});
}

const std::vector<Hours>& hoursOn(const KitchenCook& cook, const Occasion& occasion,
                                  const CivilDate& date)
{
    if (const auto own = occasion.hours.find(cook.id); own != occasion.hours.end()) {
        const auto day = std::ranges::find(own->second, date, &HoursOfDay::date);
        if (day != own->second.end()) {
            return day->hours;
        }
    }
    return cook.usualHours;
}

} // namespace

std::vector<Interval> merged(std::vector<Interval> intervals)
{
    std::erase_if(intervals, [](const Interval& interval) { return interval.empty(); });
    std::ranges::sort(intervals);
    std::vector<Interval> result;
    for (const Interval& interval : intervals) {
        if (!result.empty() && interval.start <= result.back().end) {
            result.back().end = std::max(result.back().end, interval.end);
        } else {
            result.push_back(interval);
        }
    }
    return result;
}

std::vector<Interval> gapsIn(const Interval& whole, const std::vector<Interval>& intervals)
{
    std::vector<Interval> gaps;
    PlanTime from = whole.start;
    for (const Interval& interval : intervals) {
        if (from < interval.start) {
            gaps.push_back({from, std::min(interval.start, whole.end)});
        }
        from = std::max(from, interval.end);
    }
    if (from < whole.end) {
        gaps.push_back({from, whole.end});
    }
    return gaps;
}

std::vector<Interval> common(const std::vector<Interval>& one, const std::vector<Interval>& other)
{
    std::vector<Interval> result;
    for (const Interval& first : one) {
        for (const Interval& second : other) {
            result.push_back(first.common(second));
        }
    }
    return merged(std::move(result));
}

CookPresence presenceOf(const KitchenCook& cook, const Occasion& occasion,
                        const PlanCalendar& calendar, const Interval& whole)
{
    CookPresence presence;
    const CivilDate last = calendar.civil(whole.end).date;
    for (CivilDate date = calendar.civil(whole.start).date; date <= last; date = addDays(date, 1)) {
        for (const Hours& hours : hoursOn(cook, occasion, date)) {
            const Interval when =
                Interval{at(calendar, date, hours.from), at(calendar, date, hours.to)}.common(
                    whole);
            presence.atHome.push_back(when);
            if (hours.presence == Presence::Free) {
                presence.free.push_back(when);
            }
        }
    }
    return {merged(std::move(presence.free)), merged(std::move(presence.atHome))};
}

} // namespace suppertide
