// Planning an evening for a verb: runs the planner to the end of its time and keeps what it found.
#pragma once

#include "app/evening.h"
#include "app/verbs.h"
#include "core/plan/plan.h"
#include "core/propose/make_plan.h"

namespace suppertide::app {

/// The outcome of planning with the time that --seconds gives (5 s if not given).
[[nodiscard]] Result<PlanOutcome> planEvening(const CommandLine& line, const PlanInput& input);

/// The plan in an outcome; null if none was found.
[[nodiscard]] PlanPtr planIn(const PlanOutcome& outcome);

/// The record with the plan's decisions as its layout.
[[nodiscard]] OccasionRecord withPlan(const OccasionRecord& record, const Plan& plan);

/// Keeps the record in the library as one change that can be undone.
[[nodiscard]] Result<void> keepRecord(Library& library, const LibraryState& state,
                                      OccasionRecord record, const std::string& text);

} // namespace suppertide::app
