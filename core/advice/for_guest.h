// What could be otherwise for one guest to whom something at their place is not safe: another dish
// of the course, a portion made with other ingredients, or none of a side. Used by candidates.cpp.
#pragma once

#include <set>
#include <vector>

#include "core/advice/evening_change.h"

namespace suppertide {

/// `dishes`: what it is about; empty: the guest gets nothing in the course. Only what would suit
/// the guest.
[[nodiscard]] std::vector<EveningChange> changesForGuest(const PlanInput& input,
                                                         const GuestId& guest,
                                                         const std::set<CourseId>& courses,
                                                         const std::set<DishId>& dishes);

} // namespace suppertide
