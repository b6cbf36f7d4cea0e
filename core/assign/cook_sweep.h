// CookSweep: who does what, for fixed intervals. Work is looked at in order of start; a state is
// who is busy with what is still under way, so the number of states depends on how much goes on at
// once, not on how much there is. Exact as long as no more states are alive at once than the limit.
// A step of assign; the planner finishes its schedules with it too.
#pragma once

#include <cstdint>
#include <vector>

#include "core/base/interval.h"

namespace suppertide {

inline constexpr std::size_t mostCooks = 64;

struct CookWork
{
    Interval during; // not empty
    int attention = 0;
    int cooks = 1;
    /// For each cook, how much is wrong with giving this to them (no skill, not free, at table).
    std::vector<int> faults;
    std::vector<std::size_t> pinned; // empty: anybody
    std::vector<bool> unable{};      // for each cook, without the skill; empty: all are able

    friend bool operator==(const CookWork&, const CookWork&) = default;
};

struct CookSweepResult
{
    std::vector<std::vector<std::size_t>> cooks; // as the work
    std::int64_t broken = 0;                     // faults, and times that a cook is overloaded
    std::int64_t sessions = 0;
};

/// Least broken first, then not by those who are unable, then fewest sessions; what is too much is
/// spread over the cooks. `work` in any order.
[[nodiscard]] CookSweepResult sweepCooks(const std::vector<CookWork>& work, std::size_t cooks,
                                         Minutes sessionGap);

} // namespace suppertide
