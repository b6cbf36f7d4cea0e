// TimelineState: what the timeline shows and how, without a window: scene, view and marks, and the
// geometry that follows from them. Every change says what has to be painted anew. The widget
// translates events into calls of this and paints what comes back; all that can be decided without
// a screen is decided here. Pure.
#pragma once

#include <optional>
#include <string>

#include "ui/timeline/damage.h"
#include "ui/timeline/focus_moves.h"
#include "ui/timeline/geometry.h"
#include "ui/timeline/marks.h"
#include "ui/timeline/scene.h"
#include "ui/timeline/task_drag.h"

namespace suppertide::ui {

class TimelineState
{
public:
    TimelineState();

    [[nodiscard]] const Scene& scene() const { return scene_; }
    [[nodiscard]] const Geometry& geometry() const { return geometry_; }
    [[nodiscard]] const Marks& marks() const { return marks_; }
    [[nodiscard]] const Viewport& viewport() const { return viewport_; }
    [[nodiscard]] bool isEmpty() const { return scene_.blocks.empty(); }

    Damage setScene(Scene scene);
    Damage resize(double width, double height);
    /// `longestName`: px of the widest lane name.
    Damage setText(double textScale, double longestName);
    Damage scrollTo(double x, double y);
    Damage zoomTo(double pixelsPerHour, double aroundX);
    Damage show(const Interval& when);
    /// The last servings, with hours as wide as lets what there is fill the view. What is seen of
    /// a new evening first; no change if the scene has no servings.
    Damage showEvening();
    Damage togglePleat(PlanTime start);
    /// While held, folds stay as they are whatever the scene: a drag must not move the ground
    /// under itself.
    void holdPleats(bool isHeld);

    /// Marks only ever repaint what they touch.
    Damage setMarks(const Marks& marks);

    /// A pick of a block at the pointer's time; none if there is no such block.
    [[nodiscard]] std::optional<DragPick> pickBlock(const std::string& id, PlanTime at) const;
    [[nodiscard]] std::optional<DragPick> pickServing(int course, PlanTime at) const;
    /// The scene with that block (or course) at another time, all else as it is.
    [[nodiscard]] Scene withBlockAt(const std::string& id, PlanTime start) const;
    [[nodiscard]] Scene withServingAt(int course, PlanTime time) const;
    /// The course whose serving line is nearest to a time; none without courses.
    [[nodiscard]] std::optional<int> nearestCourse(PlanTime time) const;

private:
    Damage refresh(const Viewport& viewport);
    [[nodiscard]] std::vector<Box> markedBoxes(const Marks& marks) const;

    Scene scene_;
    Viewport viewport_;
    Marks marks_;
    std::vector<Interval> pleats_;
    bool holdsPleats_ = false;
    bool hasShownAnything_ = false;
    Geometry geometry_;
};

} // namespace suppertide::ui
