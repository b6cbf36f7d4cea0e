#include "ui/window/timeline_presenter.h"

#include "core/wording/wording.h"
#include "ui/models/layout_edits.h"
#include "ui/models/occasion_edits.h"
#include "ui/models/reading_choice.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr const char* looksSetting = "dish.looks";

QString words(const std::string& text)
{
    return QString::fromStdString(text);
}

} // namespace

TimelinePresenter::TimelinePresenter(Document& document, OpenPlan& plan, TimelineView& view,
                                     const Clock& clock, QObject* parent)
    : QObject(parent), document_(document), plan_(plan), view_(view), clock_(clock),
      looks_(DishLooks::fromText(document.setting(QString::fromLatin1(looksSetting)).toStdString()))
{
    connect(&view, &TimelineView::dragStarted, this, &TimelinePresenter::startStep);
    connect(&view, &TimelineView::dragMoved, this, &TimelinePresenter::moveStep);
    connect(&view, &TimelineView::dropped, this, &TimelinePresenter::dropStep);
    connect(&view, &TimelineView::dragCancelled, this, [this] { endDrag(); });
    connect(&view, &TimelineView::servingDragMoved, this, &TimelinePresenter::moveServing);
    connect(&view, &TimelineView::servingDropped, this, &TimelinePresenter::dropServing);
    connect(&view, &TimelineView::servingDragCancelled, this, [this] { endDrag(); });
    connect(&view, &TimelineView::variantEntered, this, &TimelinePresenter::moveVariant);
    connect(&view, &TimelineView::variantMoved, this, &TimelinePresenter::moveVariant);
    connect(&view, &TimelineView::variantDropped, this, &TimelinePresenter::dropVariant);
    connect(&view, &TimelineView::variantLeft, this, &TimelinePresenter::endDrag);
    connect(&view, &TimelineView::pinRequested, this, &TimelinePresenter::pin);
    connect(&view, &TimelineView::removeRequested, this, &TimelinePresenter::removeDishOf);
    connect(&view, &TimelineView::selectionChanged, this, &TimelinePresenter::select);
    connect(&plan, &OpenPlan::changed, this, &TimelinePresenter::refresh);
}

std::optional<SceneSource> TimelinePresenter::sourceOf(const PlanPtr& plan) const
{
    const OccasionPtr record = openOccasion(document_.library());
    const KitchenPtr kitchen = openKitchen(document_.library());
    if (!plan || !record || !kitchen) {
        return std::nullopt;
    }
    SceneSource source;
    source.plan = plan;
    // Aliasing: parts of a record live as long as the record.
    source.occasion = {record, &record->occasion};
    source.kitchen = kitchen;
    source.layout = {record, &record->layout};
    source.progress = {record, &record->progress};
    source.looks = looks_;
    source.now = clock_.now();
    source.style = readingStyle(document_);
    return source;
}

void TimelinePresenter::refresh()
{
    const OccasionPtr record = openOccasion(document_.library());
    if (!record) {
        view_.setScene({});
        const bool isFirst = document_.library().occasions.empty();
        view_.setEmptyNote(isFirst
                               ? tr("There is no occasion yet. Begin your first one.")
                               : tr("No occasion is open. Open one of yours, or begin one under "
                                    "Occasion, New."),
                           isFirst ? tr("New occasion") : tr("Open an occasion"));
        return;
    }
    const bool wasEmpty = view_.state().isEmpty();
    looks_.see(record->occasion);
    document_.keepSetting(QString::fromLatin1(looksSetting), words(looks_.text()));
    const auto source = sourceOf(plan_.plan());
    if (!source) {
        const KitchenPtr kitchen = openKitchen(document_.library());
        Scene scene = sceneOfKitchen(record->occasion, kitchen.get(), clock_.now());
        scene.isFahrenheit = readingStyle(document_).fahrenheit;
        view_.setScene(std::move(scene));
    } else {
        Scene scene = sceneOfPlan(*source);
        const auto task = findTask(*source->plan, view_.selected().toStdString());
        if (task) {
            addSlack(scene, *source, *task);
        }
        view_.setScene(std::move(scene));
    }
    // With its first dish an evening folds to a few hours.
    const bool isFirstDish = wasEmpty && !view_.state().isEmpty();
    if (shown_ != record->occasion.id || isFirstDish) {
        shown_ = record->occasion.id;
        view_.showEvening();
    }
    view_.setEmptyNote(plan_.faults().isEmpty()
                           ? tr("Drag a variant here, or choose dishes under Menu and guests.")
                           : plan_.faults(),
                       tr("Menu and guests"));
}

void TimelinePresenter::showInstead(const PlanPtr& plan)
{
    const auto source = sourceOf(plan);
    if (source) {
        view_.setScene(sceneOfPlan(*source));
    } else {
        refresh();
    }
}

void TimelinePresenter::showClash(const Clash& clash)
{
    if (clash.when) {
        view_.showTime(*clash.when);
    }
    if (!clash.tasks.empty() && plan_.plan()) {
        view_.showTask(words(plan_.plan()->formulation->problem.tasks[clash.tasks.front()].id));
    }
}

void TimelinePresenter::select(const QString& taskId)
{
    const auto source = sourceOf(plan_.plan());
    const auto task = source ? findTask(*source->plan, taskId.toStdString()) : std::nullopt;
    if (!source) {
        return;
    }
    Scene scene = sceneOfPlan(*source);
    if (task) {
        addSlack(scene, *source, *task);
        Q_EMIT said(words(taskText(*source->plan, *task, source->style)));
    } else {
        Q_EMIT said({});
    }
    view_.setScene(std::move(scene));
}

void TimelinePresenter::preview(const PlanPtr& plan, Scene scene)
{
    view_.setScene(std::move(scene));
    Q_EMIT previewed(plan);
}

void TimelinePresenter::startStep(const QString& taskId)
{
    const auto source = sourceOf(plan_.plan());
    const auto task = source ? findTask(*source->plan, taskId.toStdString()) : std::nullopt;
    live_.reset();
    if (task) {
        Scene scene = sceneOfPlan(*source);
        addDragMarks(scene, *source, *task);
        view_.setScene(std::move(scene));
        Q_EMIT said(
            tr("%1: let go to put it there; Esc to leave it.").arg(taskName(*source->plan, *task)));
    }
}

void TimelinePresenter::moveStep(const QString& taskId, PlanTime start)
{
    const PlanPtr& now = plan_.plan();
    const auto input = planInputOf(document_.library());
    const auto task = now ? findTask(*now, taskId.toStdString()) : std::nullopt;
    if (!task || !input) {
        return;
    }
    if (!live_) {
        live_.emplace(now, *input);
    }
    live_->move(*task, start);
    const PlanPtr moved = live_->plan();
    if (const auto source = sourceOf(moved)) {
        Scene scene = sceneOfPlan(*source);
        addDragMarks(scene, *source, *task);
        preview(moved, std::move(scene));
    }
}

void TimelinePresenter::dropStep(const QString& taskId, PlanTime start)
{
    const PlanPtr now = plan_.plan();
    const auto task = now ? findTask(*now, taskId.toStdString()) : std::nullopt;
    if (task) {
        Edit edit = ui::moveStep(document_.library(), *now, *task, start);
        Q_EMIT placing(taskId);
        document_.apply(std::move(edit.next), edit.text);
    }
    endDrag();
}

void TimelinePresenter::moveServing(int course, PlanTime time)
{
    const PlanPtr& now = plan_.plan();
    if (!now) {
        return;
    }
    const auto edit =
        ui::moveServing(document_.library(), now->formulation->calendar, course, time);
    const auto input = edit ? planInputOf(edit->next) : std::nullopt;
    if (!input) {
        return;
    }
    if (auto moved = laidOutPlan(*input, 0)) {
        if (const auto source = sourceOf(*moved)) {
            preview(*moved, sceneOfPlan(*source));
        }
    }
}

void TimelinePresenter::dropServing(int course, PlanTime time)
{
    if (const PlanPtr now = plan_.plan()) {
        auto edit = ui::moveServing(document_.library(), now->formulation->calendar, course, time);
        if (edit) {
            document_.apply(std::move(edit->next), edit->text);
        }
    }
    endDrag();
}

void TimelinePresenter::moveVariant(const DraggedVariant& variant, int course)
{
    const std::uint64_t revision = document_.state()->revision;
    if (ghost_ && ghost_->variant == variant && ghost_->course == course &&
        ghost_->revision == revision) {
        return;
    }
    const auto drop = variantDrop(document_.library(), variant, course);
    const auto input = drop ? planInputOf(drop->next) : std::nullopt;
    const PlanPtr now = plan_.plan();
    if (!input || !now) {
        return;
    }
    auto laidOut = laidOutPlan(*input, 0);
    if (!laidOut) {
        Q_EMIT said(words(laidOut.error().forCook));
        return;
    }
    ghost_ = Ghost{variant, course, revision};
    auto source = sourceOf(*laidOut);
    if (source) {
        source->occasion = input->occasion;
        source->layout = input->layout;
        source->looks.see(*input->occasion);
        preview(*laidOut, ghostScene(*source, *now, *drop));
        Q_EMIT said(tr("%1, laid out backwards from its serving. Let go to put it in; Esc to leave "
                       "it.")
                        .arg(drop->text));
    }
}

void TimelinePresenter::dropVariant(const DraggedVariant& variant, int course)
{
    auto drop = variantDrop(document_.library(), variant, course);
    if (drop) {
        document_.apply(std::move(drop->next), drop->text);
    }
    endDrag();
}

void TimelinePresenter::endDrag()
{
    ghost_.reset();
    live_.reset();
    refresh();
    Q_EMIT previewed(nullptr);
    Q_EMIT said({});
}

void TimelinePresenter::pin(const QString& taskId)
{
    const PlanPtr now = plan_.plan();
    const auto task = now ? findTask(*now, taskId.toStdString()) : std::nullopt;
    if (task) {
        Edit edit = togglePin(document_.library(), *now, *task);
        document_.apply(std::move(edit.next), edit.text);
    }
}

void TimelinePresenter::removeDishOf(const QString& taskId)
{
    const PlanPtr now = plan_.plan();
    const auto task = now ? findTask(*now, taskId.toStdString()) : std::nullopt;
    const auto dish = task ? now->formulation->tasks[*task].dish : std::nullopt;
    if (!dish) {
        return;
    }
    const std::string name = now->formulation->tasks[*task].dishName;
    document_.apply(withOccasion(document_.library(),
                                 [&dish](Occasion& occasion) {
                                     occasion = withDishRemoved(std::move(occasion), *dish);
                                 }),
                    tr("Take %1 off the menu").arg(words(name)));
}

} // namespace suppertide::ui
