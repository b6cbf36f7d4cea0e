// Weights: what the user's preferences are worth in a plan's cost, all in one place. Costs are
// whole numbers of units, costUnitsPerPoint to a point of quality as recipes count it. The weights
// are our own choice; between them they keep an order: on time, then fresh or calm as preferred,
// then the oven, then sessions, then closeness to the plan so far.
//
//   fresh … calm (0 … 100)  a point of quality lost counts twice at 0, once at 50, a tenth at 100;
//                           ten minutes hands-on in the last hour before a course, or while guests
//                           are at table, cost nothing at 0 and some three points at 100
//   few oven changes        none 0, some 2, much 6 points for each change of an oven's setting
//   few working sessions    none 0, some 1, much 3 points for each
//   stay close to my plan   none 0, some 1/40, much 1/8 point for each step that moves (and for
//                           each of another method or place), and 1, much 5 units a minute
//   always                  5 points for each minute that a course is late, 1/3 point for each hour
//                           that an oven is on, switching it on as much as 20 minutes on (nobody
//                           switches it off for less), 1/100 point for each degree off what is
//                           preferred
//
// To change as little as can be (after a step was moved by hand) the order is another one: on time
// before all, then as few steps as can be, then as few minutes as can be, then as above. A step
// that moves costs 200 points: more than all that could be won by moving it.
#pragma once

#include <cstdint>

#include "core/base/plan_time.h"
#include "core/occasion/occasion.h"

namespace suppertide {

inline constexpr std::int64_t costUnitsPerPoint = 1200;

/// How a plan is to relate to the one that the layout has.
enum class Closeness
{
    AsPreferred,
    LeastChange
};

/// In cost units.
struct Weights
{
    std::int64_t lateMinute = 0;
    std::int64_t quietRate = 0; // a percent of a cook and minute
    std::int64_t ovenChange = 0;
    std::int64_t ovenOnMinute = 0;
    std::int64_t ovenSwitchOn = 0;
    std::int64_t ovenSwitchOnWithin = 0; // beside, with something in
    std::int64_t preferC = 0;            // a degree
    std::int64_t session = 0;
    std::int64_t moved = 0; // a step, a method or a place
    std::int64_t movedMinute = 0;
    int calm = 0;

    /// A minute above the least of a wait that loses so many points an hour.
    [[nodiscard]] std::int64_t lossMinute(int pointsPerHour) const;

    friend bool operator==(const Weights&, const Weights&) = default;
};

[[nodiscard]] Weights weightsFor(const Preferences& preferences, Closeness closeness);

} // namespace suppertide
