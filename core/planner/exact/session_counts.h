// SessionCounts: where a cook has many tasks the model does not count all sessions
// (add_sessions.cpp). What it left out of a solution is said to the search: there is a session more
// for each pause.
//
//     salad [--]  dip [---]                     soup [----]  bread [--]
//     session of these     | longer than the gap |      session of these
#pragma once

#include <vector>

#include "core/planner/exact/model.h"

namespace suppertide::exact {

/// Clauses that hold and that the solution breaks; one for each cook of whom it has more sessions
/// than the model counts.
[[nodiscard]] std::vector<Literals> sessionsLeftOut(const Model& model,
                                                    const std::vector<Bound>& values);

} // namespace suppertide::exact
