#include "ui/window/planning.h"

#include <chrono>
#include <utility>
#include <variant>

#include "core/wording/advice_wording.h"
#include "core/wording/wording.h"
#include "ui/models/layout_edits.h"
#include "ui/models/plan_figures_text.h"

namespace suppertide::ui {

namespace {

// Longer than anybody watches, short enough not to keep a laptop's fan running all evening.
constexpr std::chrono::seconds longestSearch{30};

} // namespace

Planning::Planning(Document& document, OpenPlan& plan, QObject* parent)
    : QObject(parent), document_(document), plan_(plan), job_(new PlanJob(this))
{
    connect(job_, &PlanJob::progressed, this, &Planning::progress);
    connect(job_, &PlanJob::finished, this, &Planning::finish);
    connect(job_, &PlanJob::failed, this, [this](const Failure& failure) {
        Q_EMIT runningChanged(false);
        Q_EMIT said(QString::fromStdString(failure.forCook));
    });
    connect(&document, &Document::changed, this, &Planning::checkCurrent);
}

void Planning::start()
{
    const auto input = planInputOf(document_.library());
    if (!input) {
        Q_EMIT said(tr("There is nothing to plan: open an occasion with a kitchen first."));
        return;
    }
    offer_ = nullptr;
    takesFirst_ = plan_.plan() && !plan_.plan()->holds();
    revision_ = document_.state()->revision;
    PlanRequest request{*input};
    request.limits.wallClock = longestSearch;
    request.revision = revision_;
    job_->start(std::move(request));
    Q_EMIT runningChanged(true);
    Q_EMIT said(tr("Planning…"));
}

void Planning::stop()
{
    job_->stop();
}

void Planning::progress(const PlanProgress& progress)
{
    if (!progress.better || document_.state()->revision != revision_) {
        return;
    }
    offer_ = progress.better;
    const QString figures = figuresText(offer_->figures);
    if (takesFirst_) {
        take();
        Q_EMIT said(tr("A plan without clashes: %1. Looking for a better one…").arg(figures));
        return;
    }
    Q_EMIT offered(offer_);
    Q_EMIT said(tr("A better plan is there: %1.").arg(figures));
}

void Planning::take()
{
    if (!offer_) {
        return;
    }
    const PlanPtr taken = std::exchange(offer_, nullptr);
    takesFirst_ = false;
    Edit edit = takePlan(document_.library(), *taken);
    // The search goes on for the evening as it stands; only the layout changes.
    isTaking_ = true;
    document_.apply(std::move(edit.next), edit.text);
    isTaking_ = false;
    revision_ = document_.state()->revision;
    Q_EMIT offered(nullptr);
    Q_EMIT said(tr("The plan is taken. Undo brings back the one before."));
}

void Planning::dismiss()
{
    offer_ = nullptr;
    Q_EMIT offered(nullptr);
}

void Planning::checkCurrent()
{
    if (isTaking_ || document_.state()->revision == revision_) {
        return;
    }
    const bool wasRunning = isRunning();
    if (offer_) {
        dismiss();
    }
    if (wasRunning) {
        job_->stop();
        Q_EMIT said(tr("The evening has changed. Press Make plan to plan it anew."));
    }
}

void Planning::finish(const PlanOutcome& outcome, quint64 /*revision*/)
{
    Q_EMIT runningChanged(false);
    if (const auto* none = std::get_if<NoPlan>(&outcome)) {
        if (const OccasionPtr record = openOccasion(document_.library());
            record && !none->conflict.empty() && document_.state()->revision == revision_) {
            QStringList why;
            for (const std::string& sentence :
                 conflictSentences(*none->formulation, record->occasion, none->conflict)) {
                why.push_back(QString::fromStdString(sentence));
            }
            Q_EMIT said(tr("This evening cannot be cooked as it stands. At the foot is why, and "
                           "what would help."));
            Q_EMIT impossible(why);
            return;
        }
        QString reasons;
        for (const Unplaced& unplaced : none->unplaced) {
            reasons += QLatin1Char(' ') + QString::fromStdString(unplacedSentence(
                                              *none->formulation, unplaced.task, unplaced.because));
        }
        Q_EMIT said((none->isProven ? tr("This evening cannot be cooked as it stands.")
                                    : tr("No plan was found.")) +
                    reasons);
        return;
    }
    if (offer_) {
        Q_EMIT said(tr("The best plan found is offered: %1.").arg(figuresText(offer_->figures)));
    } else if (document_.state()->revision == revision_) {
        Q_EMIT said(tr("Planned. No better plan was found."));
    }
}

} // namespace suppertide::ui
