// What the timeline shows while something is dragged: the lit range of a step and why other lanes
// refuse it; a variant from the repertoire laid out backwards as ghosts, with the clashes that it
// would make. Previews: nothing here changes the document.
#pragma once

#include "ui/models/edit.h"
#include "ui/models/scene_of_plan.h"
#include "ui/timeline/variant_mime.h"

namespace suppertide::ui {

/// Marks where the step may go, and lanes of its kind that cannot take it.
void addDragMarks(Scene& scene, const SceneSource& source, TaskIndex task);

/// A variant about to be put into a course.
struct VariantDrop
{
    LibraryState next;
    QString text; // for Undo
    DishId dish;
    Portions portions;
    CourseId course;
    int courseNumber = 1;
};

/// Absent if the recipe, the variant or the course is not there. An empty variant is the first.
[[nodiscard]] std::optional<VariantDrop> variantDrop(const LibraryState& library,
                                                     const DraggedVariant& variant, int course);

/// `after.plan` is the plan of `drop.next`, `before` the one without it.
[[nodiscard]] Scene ghostScene(const SceneSource& after, const Plan& before,
                               const VariantDrop& drop);

/// Clashes of `after` whose sentence is not among those of `before`.
[[nodiscard]] int newClashes(const Plan& before, const Plan& after, const Occasion& occasion);

} // namespace suppertide::ui
