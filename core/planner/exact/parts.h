// Parts of the model, each added by a file of its own.
#pragma once

#include "core/planner/exact/model.h"

namespace suppertide::exact {

/// Counts: a timetable each, and pairs that cannot overlap.
void addCounts(Model& model);
/// Pools: a timetable for each class of units that are alike.
void addPools(Model& model);
/// Cooks: who does what, when they are free, at table, and how much they can do at once.
void addCooks(Model& model);
/// Ovens: which one, shelves, and pairs that need a ramp between them. One rare case is let
/// through: a stay with the oven off that what came before leaves too cool, or that shares the
/// oven with others.
void addOvens(Model& model);
/// Tasks no two of which can overlap, each two for a reason of their own, and which take longest
/// one after another:
///
///     roast and bread: one oven     bread and sauce: one cook     roast and sauce: a lag
///
/// After all that keeps tasks apart.
void addClique(Model& model);
/// What a schedule costs at least.
void addCosts(Model& model);
void addSessions(Model& model);
/// Far below the true costs of ovens, which depend on programs that the model does not have.
void addOvenCosts(Model& model);

} // namespace suppertide::exact
