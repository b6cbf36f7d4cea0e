// Pairs: items that cannot overlap since together they are too much: a Boolean says which of the
// two is first. Where the items' bounds leave only one way, it is an edge and no more.
#pragma once

#include <set>
#include <utility>
#include <vector>

#include "core/planner/engine/timetable.h"
#include "core/planner/exact/model.h"

namespace suppertide::exact {

/// Adds order Booleans for items two of which exceed the capacity, but for pairs known already.
/// `present` of each item is set.
void addPairs(Model& model, const std::vector<engine::TimetableItem>& items, Bound capacity,
              std::set<std::pair<Variable, Variable>>& known);

/// One of `first` and `second` ends, and so many minutes pass, before the other begins, if the
/// literal holds.
void addApart(Model& model, const Stretch& first, std::int64_t firstThenSecond,
              const Stretch& second, std::int64_t secondThenFirst, Literal enabler);

} // namespace suppertide::exact
