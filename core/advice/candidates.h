// Candidates: changes that might help with a clash or a conflict, judged only by what it is about.
// Whether one does help is tried by findWaysOut. Times of helpers and of servings are wide here;
// they are narrowed to what a plan turns out to use.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/advice/evening_change.h"
#include "core/plan/plan.h"

namespace suppertide {

/// What a clash or a conflict is about.
struct Concern
{
    std::set<TaskIndex> tasks;
    std::set<CourseId> courses;
    std::set<DishId> dishes;
    std::set<CountIndex> counts;
    std::set<PoolIndex> pools;
    bool hands = false;
    bool ovens = false;
    bool isFoodSafety = false;             // a rule is broken by how long and where food is kept
    std::optional<DemandIndex> tool;       // that is not washed before this use …
    std::vector<TaskIndex> dirtyThenClean; // … after the first of these, for the second
    std::optional<GuestId> guest;
    std::optional<Interval> when;
};

[[nodiscard]] Concern concernOf(const Formulation& formulation, const Clash& clash);
[[nodiscard]] Concern concernOf(const Formulation& formulation,
                                const std::vector<std::string>& conflict);

/// The least welcome last. `laidOut`: as it stands now; null: there is nothing yet.
[[nodiscard]] std::vector<EveningChange> candidatesFor(const PlanInput& input,
                                                       const Formulation& formulation,
                                                       const Plan* laidOut, const Concern& concern);

/// The course (by its number) served so much later, and those after it moved along as far as they
/// must be for what is eaten between; with those that need not move.
[[nodiscard]] ServeLater servedLater(const Occasion& occasion, const PlanCalendar& calendar,
                                     std::size_t course, Minutes by);

/// The points of a change whose times are still wide: what it costs at least.
[[nodiscard]] std::int64_t leastPointsOf(const EveningChange& change);

} // namespace suppertide
