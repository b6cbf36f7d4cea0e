// Verify: the planner's own last look at a schedule before it leaves: whether it holds, and what it
// costs, from the definitions on timetable and oven curve. core/check, which the planner may not
// use, judges again outside and says more.
#pragma once

#include <cstdint>

#include "core/problem/problem.h"
#include "core/problem/schedule.h"

namespace suppertide::quick_start {

[[nodiscard]] bool scheduleHolds(const Problem& problem, const Schedule& schedule);
[[nodiscard]] std::int64_t scheduleCost(const Problem& problem, const Schedule& schedule);

} // namespace suppertide::quick_start
