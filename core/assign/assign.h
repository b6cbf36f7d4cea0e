// Assign: for fixed starts and options, who does what, which burner, which oven, and the oven
// programs (laid out by hand: the cook says when, the rest follows). Exact: where an assignment
// without a clash exists it is found; else one with as few broken requirements as can be found.
// Used live during a drag, by the planner to finish a schedule, and by the checker's tests.
#pragma once

#include <optional>
#include <vector>

#include "core/problem/problem.h"
#include "core/problem/schedule.h"

namespace suppertide {

/// What the user has pinned; everything else is derived. Lists run parallel to the problem's.
struct AssignmentPins
{
    IndexedVector<TaskIndex, std::vector<CookIndex>> cooks; // empty: not pinned
    IndexedVector<DemandIndex, std::optional<UnitIndex>> units;
    IndexedVector<OvenDemandIndex, std::optional<OvenIndex>> ovens;

    static AssignmentPins none(const Problem& problem);
};

/// Fills cooks, units, ovens and programs of `laidOut`, whose options and starts are kept as they
/// are (tasks without a start are passed over). Never fails: where no assignment holds, the best
/// one found is given and the checker will say what is broken.
[[nodiscard]] Schedule assign(const Problem& problem, Schedule laidOut, const AssignmentPins& pins);

} // namespace suppertide
