// Presence of cooks over the plan's days: when each may work, and when somebody is awake at home.
#pragma once

#include <vector>

#include "core/base/interval.h"
#include "core/occasion/occasion.h"

namespace suppertide {

/// Sorted and merged where they meet or overlap; empty ones are gone.
[[nodiscard]] std::vector<Interval> merged(std::vector<Interval> intervals);
/// The parts of `whole` that no interval covers; `intervals` as `merged` gives them.
[[nodiscard]] std::vector<Interval> gapsIn(const Interval& whole,
                                           const std::vector<Interval>& intervals);
[[nodiscard]] std::vector<Interval> common(const std::vector<Interval>& one,
                                           const std::vector<Interval>& other);

struct CookPresence
{
    std::vector<Interval> free;   // may work
    std::vector<Interval> atHome; // awake and at home, free or not

    friend bool operator==(const CookPresence&, const CookPresence&) = default;
};

/// Within `whole`, from the occasion's own hours for a day, else the usual ones.
[[nodiscard]] CookPresence presenceOf(const KitchenCook& cook, const Occasion& occasion,
                                      const PlanCalendar& calendar, const Interval& whole);

} // namespace suppertide
