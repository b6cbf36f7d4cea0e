// Conflict: of a problem that is infeasible, requirements that cannot all hold, none of which can
// be spared. Each requirement has a literal of its own that is assumed; what the engine says of why
// they fail is a first set, and each of it is then left out in turn.
// Source: J. Marques-Silva, Minimal unsatisfiability: models, algorithms and applications (2010),
// for deletion with refinement by each smaller set met on the way.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/planner/quick_start/budget.h"
#include "core/problem/problem.h"

namespace suppertide::exact {

struct Conflict
{
    std::vector<std::string> requirements; // "lag:l1", in the problem's order of kinds
    bool minimal = false;                  // false: the budget was over before all were tried
};

/// Absent: the budget was over, or the problem is feasible after all.
[[nodiscard]] std::optional<Conflict> findConflict(const Problem& problem,
                                                   quick_start::Budget& budget);

} // namespace suppertide::exact
