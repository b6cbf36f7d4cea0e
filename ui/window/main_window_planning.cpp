// What the main window does with planning: the strip under the timeline, preferences, and what
// happens when a step is let go.
#include <QAction>

#include "ui/models/calm_places.h"
#include "ui/models/occasion_edits.h"
#include "ui/models/plan_basis.h"
#include "ui/timeline/timeline_view.h"
#include "ui/window/main_window_parts.h"
#include "ui/window/preference_menu.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr const char* letGoSetting = "plan.letGo";

} // namespace

void MainWindow::connectPlanning()
{
    HeadBar& head = *parts_->head;
    Planning& planning = *parts_->planning;
    PlanStrip& strip = *parts_->strip;
    TimelineView& view = *parts_->timeline;
    connect(&head, &HeadBar::planRequested, &planning, &Planning::start);
    connect(&head, &HeadBar::stopRequested, &planning, &Planning::stop);
    connect(&strip, &PlanStrip::planRequested, &planning, &Planning::start);
    connect(&strip, &PlanStrip::stopRequested, &planning, &Planning::giveUp);
    connect(&strip, &PlanStrip::taken, &planning, &Planning::take);
    connect(&strip, &PlanStrip::left, &planning, &Planning::dismiss);
    connect(&strip, &PlanStrip::lookedAt, this, [this](bool isLooking) {
        parts_->presenter->showInstead(isLooking ? parts_->planning->offer() : nullptr);
    });
    connect(&planning, &Planning::offered, this, [this](const PlanPtr& offer) {
        if (offer && parts_->strip->isLooking()) {
            parts_->presenter->showInstead(offer);
        }
    });
    connect(&planning, &Planning::said, this, &MainWindow::say);
    connect(&planning, &Planning::impossible, parts_->advising, &Advising::lookForDinner);
    connect(&planning, &Planning::runningChanged, this, [this] { showHead(); });
    connect(&planning, &Planning::changed, this, [this] { showPlan(); });
    connect(parts_->presenter, &TimelinePresenter::placing, &planning, &Planning::hold);
    connect(&view, &TimelineView::dragStarted, &planning, &Planning::makeWay);
    connect(&view, &TimelineView::servingDragStarted, &planning, &Planning::makeWay);
    connect(&view, &TimelineView::variantEntered, &planning, &Planning::makeWay);
    connect(&view, &TimelineView::dragCancelled, &planning, &Planning::goOn);
    connect(&view, &TimelineView::servingDragCancelled, &planning, &Planning::goOn);
    connect(&view, &TimelineView::variantLeft, &planning, &Planning::goOn);
    connectPreferences();
    connectLetGo();
}

void MainWindow::connectPreferences()
{
    HeadBar& head = *parts_->head;
    const auto prefer = [this](const QString& text, const auto& change) {
        if (openOccasion(document_.library())) {
            document_.apply(withOccasion(document_.library(), change), text);
        }
    };
    connect(&head, &HeadBar::calmChanged, this, [prefer](int calm) {
        prefer(tr("Prefer %1").arg(calmName(calm)),
               [calm](Occasion& occasion) { occasion.preferences.calm = calm; });
    });
    connect(&head, &HeadBar::cautionChanged, this, [prefer](CautionLevel caution) {
        prefer(tr("Change the durations"),
               [caution](Occasion& occasion) { occasion.preferences.caution = caution; });
    });
    connect(parts_->actions.preferences, &PreferenceMenu::chosen, this,
            [prefer](const Preferences& preferences, const QString& text) {
                prefer(text, [&](Occasion& occasion) { occasion.preferences = preferences; });
            });
    connect(&head, &HeadBar::zoomRequested, parts_->timeline, &TimelineView::zoomTo);
}

void MainWindow::connectLetGo()
{
    const WindowActions& actions = parts_->actions;
    struct Choice
    {
        QAction* action;
        LetGo letGo;
        QString kept;
    };
    const std::array choices{Choice{actions.letGoOffer, LetGo::Offer, u"offer"_s},
                             Choice{actions.letGoTake, LetGo::Take, u"take"_s},
                             Choice{actions.letGoNothing, LetGo::Nothing, u"nothing"_s}};
    const QString kept = document_.setting(QString::fromLatin1(letGoSetting));
    for (const Choice& choice : choices) {
        if (choice.kept == kept) {
            choice.action->setChecked(true);
            parts_->planning->setLetGo(choice.letGo);
        }
        connect(choice.action, &QAction::triggered, this, [this, choice] {
            parts_->planning->setLetGo(choice.letGo);
            document_.keepSetting(QString::fromLatin1(letGoSetting), choice.kept);
        });
    }
}

QString MainWindow::planSentence(StripState state) const
{
    const PlanPtr& plan = parts_->plan.plan();
    const Planning& planning = *parts_->planning;
    switch (state) {
    case StripState::Offer: {
        const QString what = changeText(*plan, *planning.offer());
        if (planning.aim() == PlanningAim::Rest) {
            return tr("The rest can make way: %1.").arg(what);
        }
        const QString better = tr("A better plan: %1.").arg(what);
        return planning.isRunning() ? better + QLatin1Char(' ') + planning.progressText() : better;
    }
    case StripState::Searching:
        return planning.progressText();
    case StripState::Stale:
        return staleText(parts_->changedSincePlanned);
    case StripState::Plain:
        break;
    }
    if (!planning.progressText().isEmpty()) {
        return planning.progressText();
    }
    if (!plan) {
        return {};
    }
    return plan->holds() ? tr("This plan holds.")
                         : tr("This plan does not hold yet: see the clashes, or Make plan.");
}

void MainWindow::showPlan(const PlanPtr& preview)
{
    const Planning& planning = *parts_->planning;
    const PlanPtr& plan = parts_->plan.plan();
    StripContent content;
    if (plan && preview) {
        content.sentence = tr("Let go here: %1.").arg(changeText(*plan, *preview));
        content.cells = figureCells({plan, {}}, JudgedPlan{preview, {}});
    } else if (plan && openOccasion(document_.library())) {
        const bool isStale = !parts_->changedSincePlanned.isEmpty();
        content.state = planning.offer()       ? StripState::Offer
                        : planning.isRunning() ? StripState::Searching
                        : isStale              ? StripState::Stale
                                               : StripState::Plain;
        content.sentence = planSentence(content.state);
        const auto offered =
            planning.offer() ? std::optional(JudgedPlan{planning.offer(), planning.proofOfOffer()})
                             : std::nullopt;
        content.cells = figureCells({plan, planning.proof()}, offered);
    }
    parts_->strip->show(content);
    parts_->actions.takeOffer->setEnabled(planning.offer() != nullptr);
    parts_->actions.giveUp->setEnabled(planning.offer() != nullptr || planning.isRunning());
}

} // namespace suppertide::ui
