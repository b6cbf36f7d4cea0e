// TimelinePresenter: stands between the timeline and the document. It shows the open plan as a
// scene, answers every move of a drag with a preview that is judged like any plan, and turns drops,
// pins and keys into changes of the document. Nothing that is dragged touches the document before
// it is dropped.
#pragma once

#include <QObject>
#include <QString>

#include <optional>

#include "core/base/clock.h"
#include "core/plan/live_plan.h"
#include "ui/document/document.h"
#include "ui/document/open_plan.h"
#include "ui/models/drag_scene.h"
#include "ui/models/scene_of_plan.h"
#include "ui/timeline/timeline_view.h"

namespace suppertide::ui {

class TimelinePresenter : public QObject
{
    Q_OBJECT

public:
    /// All must outlive this.
    TimelinePresenter(Document& document, OpenPlan& plan, TimelineView& view, const Clock& clock,
                      QObject* parent);

    [[nodiscard]] const DishLooks& looks() const { return looks_; }
    /// Shows what holds now: the plan, or the empty kitchen.
    void refresh();
    /// The offered plan as it would look; null: back to what holds.
    void showInstead(const PlanPtr& plan);
    /// Goes to where a clash is.
    void showClash(const Clash& clash);

public Q_SLOTS:
    void pin(const QString& taskId);
    /// Takes the step's dish off the menu.
    void removeDishOf(const QString& taskId);

Q_SIGNALS:
    /// For the status line: what is being done now; empty: nothing.
    void said(const QString& words);
    /// The plan as it would be while something is dragged; null: what holds counts again.
    void previewed(const suppertide::PlanPtr& plan);
    void recipeWanted(const QString& recipe);
    /// The next change of the document puts the step where it was let go.
    void placing(const QString& taskId);

private:
    void startStep(const QString& taskId);
    void moveStep(const QString& taskId, PlanTime start);
    void dropStep(const QString& taskId, PlanTime start);
    void moveServing(int course, PlanTime time);
    void dropServing(int course, PlanTime time);
    void moveVariant(const DraggedVariant& variant, int course);
    void dropVariant(const DraggedVariant& variant, int course);
    void endDrag();
    void select(const QString& taskId);
    [[nodiscard]] std::optional<SceneSource> sourceOf(const PlanPtr& plan) const;
    void preview(const PlanPtr& plan, Scene scene);

    /// The last variant looked at, so that moving along one serving line plans it once.
    struct Ghost
    {
        DraggedVariant variant;
        int course = 0;
        std::uint64_t revision = 0;
    };

    Document& document_;
    OpenPlan& plan_;
    TimelineView& view_;
    const Clock& clock_;
    DishLooks looks_;
    std::optional<OccasionId> shown_; // whose evening was looked at first
    std::optional<Ghost> ghost_;
    std::optional<LivePlan> live_; // while a step is dragged
};

} // namespace suppertide::ui
