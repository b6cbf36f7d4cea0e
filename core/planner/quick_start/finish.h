// Finish: from a plan in which all is placed to a schedule, verified. The cooks are assigned once
// more for the fewest sessions.
#pragma once

#include <optional>

#include "core/planner/quick_start/cost_meter.h"
#include "core/problem/schedule.h"

namespace suppertide::quick_start {

/// A feasible schedule with its cost. All blocks are placed and all ovens have programs.
[[nodiscard]] Schedule finished(const PartialPlan& plan, CostMeter& meter);

} // namespace suppertide::quick_start
