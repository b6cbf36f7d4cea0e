// An evening to draw and to test with: the supper at the lighthouse, with one of every form that
// the timeline has. All names and times are invented.
#pragma once

#include "ui/timeline/scene.h"

namespace suppertide::ui::test {

/// Days of the example: Wednesday 16 to Saturday 19 June 2027.
enum class Day
{
    Wednesday,
    Thursday,
    Friday,
    Saturday
};

[[nodiscard]] PlanTime at(Day day, int hour, int minute = 0);

/// The plan with its three clashes.
[[nodiscard]] Scene exampleScene();
/// The same while a variant is dragged over it: ghosts, threads, an allowed range, refusals, card.
[[nodiscard]] Scene exampleScene(bool withDrag);
/// Lanes and courses of a kitchen without any step.
[[nodiscard]] Scene emptyScene();
/// Some `count` blocks over the example's lanes, for measuring; the same for the same count.
[[nodiscard]] Scene crowdedScene(int count);

} // namespace suppertide::ui::test
