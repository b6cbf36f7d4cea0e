// Changes of a plan by hand: moving a step or a course, pinning, taking what the planner found.
// Each gives the library that would follow.
#pragma once

#include "core/plan/plan.h"
#include "ui/models/edit.h"

namespace suppertide::ui {

/// The index of the task of that id.
[[nodiscard]] std::optional<TaskIndex> findTask(const Plan& plan, const std::string& id);

/// "roast roots" with the verb before it: "Peel roast roots", for Undo and menus.
[[nodiscard]] QString taskName(const Plan& plan, TaskIndex task);

[[nodiscard]] Edit moveStep(const LibraryState& library, const Plan& plan, TaskIndex task,
                            PlanTime start);
/// `course` is the number on the flag, from 1. Later courses do not move along.
[[nodiscard]] std::optional<Edit>
moveServing(const LibraryState& library, const PlanCalendar& calendar, int course, PlanTime time);
/// Whether the task is there because somebody decided to wash a thing before a step.
[[nodiscard]] bool isDecidedWashing(const Plan& plan, TaskIndex task);
/// Pins the step where it stands, or lets it go; a washing that was decided is taken back.
[[nodiscard]] Edit togglePin(const LibraryState& library, const Plan& plan, TaskIndex task);
/// The found plan as the layout, with what it was made from: the library as it is.
[[nodiscard]] Edit takePlan(const LibraryState& library, const Plan& found, const QString& text);
/// Forgets where steps were put, but for pinned ones: all is laid out backwards anew.
[[nodiscard]] Edit layOutAnew(const LibraryState& library);

} // namespace suppertide::ui
