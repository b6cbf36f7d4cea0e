// The parts of which a scene of a plan is made, each in a file of its own. Used by scene_of_plan
// only.
#pragma once

#include "ui/models/scene_of_plan.h"
#include "ui/models/task_places.h"

namespace suppertide::ui {

/// What all parts read.
struct SceneContext
{
    const SceneSource& source;
    const Plan& plan;
    const Formulation& formulation;
    const Problem& problem;
    const TaskPlaces& places;
};

[[nodiscard]] std::vector<SceneLane> lanesOf(const SceneContext& context);
[[nodiscard]] std::vector<SceneBlock> blocksOf(const SceneContext& context, const Scene& scene);
[[nodiscard]] std::vector<SceneWait> waitsOf(const SceneContext& context);
[[nodiscard]] std::vector<SceneSpan> spansOf(const SceneContext& context, const Scene& scene);
[[nodiscard]] std::vector<SceneServing> servingsOf(const SceneContext& context);
/// Adds the clashes, and to ovens the heat that is asked for in vain.
void addClashes(const SceneContext& context, Scene& scene);

[[nodiscard]] std::vector<SceneLane> lanesOfKitchen(const Kitchen& kitchen);
[[nodiscard]] std::vector<DayHeading> daysOf(const PlanCalendar& calendar, const Interval& horizon);
[[nodiscard]] std::optional<std::size_t> dishOf(const Scene& scene, const SceneContext& context,
                                                const std::optional<DishId>& dish);
/// "Potato gratin" → "potato gratin", for the middle of a sentence; "BBQ sauce" stays.
[[nodiscard]] std::string inSentence(const std::string& name);

} // namespace suppertide::ui
