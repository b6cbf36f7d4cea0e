#include "core/advice/helping_hours.h"

#include <algorithm>

namespace suppertide {

namespace {

constexpr Minutes hour{60};

/// `one` without `gap`.
void addWithout(std::vector<Hours>& hours, const Hours& one, const ClockTime& from,
                const ClockTime& to)
{
    if (one.from < from) {
        hours.push_back({one.from, std::min(one.to, from), one.presence});
    }
    if (to < one.to) {
        hours.push_back({std::max(one.from, to), one.to, one.presence});
    }
}

} // namespace

Minutes minuteOfDay(const ClockTime& clock)
{
    return Minutes{clock.hour * 60 + clock.minute};
}

ClockTime clockAt(Minutes minuteOfDay)
{
    return {static_cast<int>(minuteOfDay / hour), static_cast<int>((minuteOfDay % hour).count())};
}

std::vector<Hours> hoursOn(const Occasion& occasion, const KitchenCook& cook, const CivilDate& date)
{
    if (const auto own = occasion.hours.find(cook.id); own != occasion.hours.end()) {
        const auto day = std::ranges::find(own->second, date, &HoursOfDay::date);
        if (day != own->second.end()) {
            return day->hours;
        }
    }
    return cook.usualHours;
}

void addFreeHours(Occasion& occasion, const KitchenCook& cook, const CivilTime& from,
                  const CivilTime& to)
{
    ClockTime begins = from.clock;
    ClockTime ends = to.clock;
    std::vector<Hours> others;
    const std::vector<Hours> before = hoursOn(occasion, cook, from.date);
    // What is free already and meets the new stretch becomes one with it.
    for (const Hours& each : before) {
        if (each.presence == Presence::Free && each.from <= ends && begins <= each.to) {
            begins = std::min(begins, each.from);
            ends = std::max(ends, each.to);
        }
    }
    for (const Hours& each : before) {
        addWithout(others, each, begins, ends);
    }
    others.push_back({begins, ends, Presence::Free});
    std::ranges::sort(others, {}, &Hours::from);
    std::vector<HoursOfDay>& days = occasion.hours[cook.id];
    const auto day = std::ranges::find(days, from.date, &HoursOfDay::date);
    if (day == days.end()) {
        days.push_back({from.date, std::move(others)});
        std::ranges::sort(days, {}, &HoursOfDay::date);
    } else {
        day->hours = std::move(others);
    }
}

} // namespace suppertide
