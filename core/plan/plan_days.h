// PlanDays: from when to when a plan reaches: from the first day on which something may be needed,
// at most seven days ahead, to the end of the evening with time to wash up.
#pragma once

#include "core/plan/making.h"

namespace suppertide {

struct PlanDays
{
    PlanCalendar calendar; // origin at a midnight of the zone
    PlanTime horizon;
};

[[nodiscard]] PlanDays planDays(const PlanInput& input, const std::vector<Making>& makings,
                                const TimeZone& zone);

} // namespace suppertide
