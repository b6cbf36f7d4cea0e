// Narrowing: a change that was tried with wide times (a helper all afternoon, a course up to half
// an hour later) becomes what the plan found for it really uses. For core/advice only.
#pragma once

#include <optional>

#include "core/advice/evening_change.h"
#include "core/plan/plan.h"

namespace suppertide {

/// The evening in which a wide change is tried: as `applied`, but courses served later may come
/// later still, as far as the problem lets them.
[[nodiscard]] PlanInput triedWith(const PlanInput& input, const EveningChange& change);

struct Narrowed
{
    EveningChange change;
    Schedule schedule; // of the plan, with less asked of helpers where that does
};

/// Absent if the plan makes no use of the change.
[[nodiscard]] std::optional<Narrowed> narrowed(const EveningChange& change, const PlanInput& input,
                                               const Plan& plan);

} // namespace suppertide
