// Scene of a plan: what the timeline shows of it. Pure: same plan, same scene. scene.h says how
// things are mapped.
#pragma once

#include <optional>
#include <string>

#include "core/night/progress.h"
#include "core/occasion/occasion.h"
#include "core/plan/lay_out.h"
#include "core/plan/plan.h"
#include "core/wording/wording.h"
#include "ui/models/dish_looks.h"
#include "ui/timeline/scene.h"

namespace suppertide::ui {

struct SceneSource
{
    PlanPtr plan; // never null
    std::shared_ptr<const Occasion> occasion;
    std::shared_ptr<const Kitchen> kitchen;
    std::shared_ptr<const Layout> layout;
    DishLooks looks;
    std::optional<Instant> now; // absent: no now line
    ReadingStyle style;
    std::shared_ptr<const suppertide::Progress> progress; // null: nothing was reported
};

[[nodiscard]] Scene sceneOfPlan(const SceneSource& source);

/// What there is to see before anything can be planned: the kitchen's lanes and the serving lines.
[[nodiscard]] Scene sceneOfKitchen(const Occasion& occasion, const Kitchen* kitchen,
                                   std::optional<Instant> now);

/// How far the block can move with all others fixed, in figures and words, put into the scene.
void addSlack(Scene& scene, const SceneSource& source, TaskIndex task);

} // namespace suppertide::ui
