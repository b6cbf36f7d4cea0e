// OvenProgramFor: the cheapest program that keeps one oven within what the stays in it accept, by
// dynamic programming over the minutes at which stays begin and end. Off while the oven is empty,
// on as late as the ramp allows. Used for plans laid out by hand and by the planner.
#pragma once

#include <cstdint>
#include <vector>

#include "core/assign/oven_pairs.h"
#include "core/problem/problem.h"
#include "core/problem/schedule.h"

namespace suppertide {

struct OvenProgramStyle
{
    std::int64_t change = 0;   // cost of going from one setting to another
    std::int64_t onMinute = 0; // cost of a minute on
    std::int64_t preferC = 0;  // cost of a degree off what a stay prefers, at its start
    /// Whether to switch off before a stay ends if the oven stays warm enough for it.
    bool coast = false;
    std::int64_t switchOn = 0; // cost of going from off to a setting
    /// Cost of that beside, where a stay has begun earlier and goes on.
    std::int64_t switchOnWithin = 0;

    /// Whether it matters if the oven was on in the minute before.
    [[nodiscard]] bool countsSwitching() const { return switchOn > 0 || switchOnWithin > 0; }
};

/// Whether some stay has begun before and ends after.
[[nodiscard]] bool isWithinStay(const std::vector<OvenStay>& stays, PlanTime at);

[[nodiscard]] OvenProgramStyle ovenProgramStyle(const Costs& costs, bool coast);

struct OvenProgramResult
{
    OvenProgram program;
    std::int64_t cost = 0;            // by the style, all stays counted
    std::vector<std::size_t> ignored; // positions of stays that the program could not keep
};

/// Works for stays that clash too: as few as can be found are then ignored, the later rather than
/// the earlier. The stays may be in any order. About n² for n stays.
[[nodiscard]] OvenProgramResult ovenProgramFor(const Oven& oven, const std::vector<OvenStay>& stays,
                                               const OvenProgramStyle& style);

} // namespace suppertide
