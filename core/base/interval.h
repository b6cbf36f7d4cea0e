// Interval: half-open [start, end). Two intervals meet without overlapping; an empty one overlaps
// nothing and occupies nothing. In the planner the ends of a task are bounded by est, lst, ect and
// lct: earliest and latest start, earliest and latest completion.
#pragma once

#include <algorithm>

#include "core/base/plan_time.h"

namespace suppertide {

struct Interval
{
    PlanTime start;
    PlanTime end;

    [[nodiscard]] constexpr bool empty() const { return end <= start; }
    [[nodiscard]] constexpr Minutes length() const { return empty() ? Minutes{0} : end - start; }
    [[nodiscard]] constexpr bool contains(PlanTime time) const
    {
        return start <= time && time < end;
    }
    /// An empty `other` lies in any interval that has its two ends within its own.
    [[nodiscard]] constexpr bool contains(const Interval& other) const
    {
        return start <= other.start && other.end <= end;
    }
    [[nodiscard]] constexpr bool overlaps(const Interval& other) const
    {
        return !empty() && !other.empty() && start < other.end && other.start < end;
    }
    /// The common part; empty if there is none.
    [[nodiscard]] constexpr Interval common(const Interval& other) const
    {
        return {std::max(start, other.start), std::min(end, other.end)};
    }
    friend constexpr auto operator<=>(const Interval&, const Interval&) = default;
};

constexpr Interval interval(std::int64_t start, std::int64_t end)
{
    return {planTime(start), planTime(end)};
}

} // namespace suppertide
