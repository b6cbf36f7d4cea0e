#include "ui/window/planning.h"

#include <QGuiApplication>
#include <QTimer>

#include <algorithm>
#include <thread>
#include <utility>
#include <variant>

#include "core/wording/advice_wording.h"
#include "core/wording/wording.h"
#include "ui/models/layout_edits.h"

namespace suppertide::ui {

namespace {

using SteadyClock = std::chrono::steady_clock;

/// Longer than anybody watches, short enough not to keep a laptop's fan running all evening.
constexpr std::chrono::seconds longestSearch{30};
/// For the rest after a change by hand: as long as the hand takes to go on.
constexpr std::chrono::seconds longestForRest{2};
/// The first way found for the rest is seldom the one that moves least; for so long it may become
/// better unseen. More would feel like a delay.
constexpr std::chrono::milliseconds grace{300};

/// One improves, one proves; a third would only look for other first plans.
int searchThreads()
{
    return std::thread::hardware_concurrency() > 1 ? 2 : 1;
}

bool canBePlannedAway(const Clash& clash)
{
    return !clash.broken.empty(); // else it is about who eats what, not about when
}

/// Whether a course, house job or trip was moved in time, or a pin put or taken.
bool isMovedByHand(const OccasionRecord& before, const OccasionRecord& after)
{
    const auto sameTimes = [](const auto& one, const auto& other, const auto& same) {
        return std::ranges::equal(one, other, same);
    };
    const Occasion& was = before.occasion;
    const Occasion& is = after.occasion;
    return before.layout.pinned != after.layout.pinned ||
           !sameTimes(was.courses, is.courses,
                      [](const Course& one, const Course& other) {
                          return one.id != other.id ||
                                 (one.serving == other.serving &&
                                  one.isServingPinned == other.isServingPinned);
                      }) ||
           !sameTimes(was.houseJobs, is.houseJobs, [](const HouseJob& one, const HouseJob& other) {
               return one.earliest == other.earliest && one.latest == other.latest;
           });
}

/// Something has been reported on the night. The planner of whole evenings knows nothing of that
/// and would move what is done.
bool isBegun(const LibraryState& library)
{
    const OccasionPtr open = openOccasion(library);
    return open && !open->progress.steps.empty();
}

} // namespace

Planning::Planning(Document& document, OpenPlan& plan, QObject* parent)
    : QObject(parent), document_(document), plan_(plan), job_(new PlanJob(this)),
      seconds_(new QTimer(this)), grace_(new QTimer(this)), before_(document.state()),
      newest_(document.newestRevision())
{
    seconds_->setInterval(std::chrono::seconds(1));
    connect(seconds_, &QTimer::timeout, this, &Planning::changed);
    grace_->setSingleShot(true);
    grace_->setInterval(grace);
    connect(grace_, &QTimer::timeout, this, &Planning::showOrTake);
    connect(job_, &PlanJob::progressed, this, &Planning::progress);
    connect(job_, &PlanJob::finished, this,
            [this](const PlanOutcome& outcome) { finish(outcome); });
    connect(job_, &PlanJob::failed, this, [this](const Failure& failure) {
        if (std::exchange(search_.isOver, true)) {
            return;
        }
        leave(QString::fromStdString(failure.forCook));
        Q_EMIT runningChanged(false);
    });
    connect(&document, &Document::changed, this, &Planning::follow);
    connect(&plan, &OpenPlan::changed, this, &Planning::planRest);
    connect(this, &Planning::runningChanged, this, [this](bool isRunning) {
        if (isRunning) {
            seconds_->start();
        } else {
            seconds_->stop();
            grace_->stop();
        }
        Q_EMIT changed();
    });
}

void Planning::start()
{
    const auto input = planInputOf(document_.library());
    if (!input) {
        Q_EMIT said(tr("There is nothing to plan: open an occasion with a kitchen first."));
        return;
    }
    if (isBegun(document_.library())) {
        Q_EMIT said(tr("The evening is under way: plan the rest of it on the page On the night."));
        return;
    }
    run(PlanningAim::Best, *input, longestSearch);
    Q_EMIT said(tr("Planning…"));
}

void Planning::run(PlanningAim aim, PlanInput input, std::chrono::milliseconds limit)
{
    const bool hadOffer = search_.offer != nullptr;
    search_ = {};
    search_.aim = aim;
    search_.isOver = false;
    search_.revision = document_.state()->revision;
    search_.begun = SteadyClock::now();
    search_.begunFor = search_.revision;
    const PlanPtr& now = plan_.plan();
    search_.takesFirst = aim == PlanningAim::Best && now && !now->holds();
    if (now) {
        search_.clashesToBeat = now->clashes.size();
    }
    if (aim == PlanningAim::Best && now && now->holds()) {
        search_.toBeat = now->figures.cost.total();
    }
    PlanRequest request{std::move(input), {}, search_.revision};
    request.limits.wallClock = limit;
    request.limits.threads = searchThreads();
    job_->start(std::move(request));
    if (hadOffer) {
        Q_EMIT offered(nullptr);
    }
    Q_EMIT runningChanged(true);
    if (aim == PlanningAim::Rest) {
        grace_->start();
    }
}

void Planning::stop()
{
    due_.reset();
    if (isRunning()) {
        search_.isOver = true;
        job_->stop();
        Q_EMIT runningChanged(false);
    }
}

void Planning::giveUp()
{
    if (!isRunning()) {
        dismiss();
        return;
    }
    stop();
    if (search_.aim == PlanningAim::Rest) {
        leave({});
        Q_EMIT said(tr("Left as it is."));
    } else {
        Q_EMIT said(search_.offer ? tr("Planning has ended. The best plan so far is offered.")
                                  : tr("Planning has ended. Nothing better is offered."));
    }
}

void Planning::makeWay()
{
    const bool wasBest = isRunning() && search_.aim == PlanningAim::Best;
    stop();
    leave({});
    if (wasBest) {
        due_ = Due{{}, true, false}; // goes on when the drag has changed something
    }
}

PlanPtr Planning::offer() const
{
    return grace_->isActive() ? nullptr : search_.offer;
}

std::optional<Proof> Planning::proofOfOffer() const
{
    if (!search_.offer || search_.aim != PlanningAim::Best || !search_.bound) {
        return std::nullopt;
    }
    return Proof{search_.offer->figures.cost.total(), *search_.bound};
}

std::optional<Proof> Planning::proof() const
{
    const auto known = proofs_.find(document_.state()->revision);
    return known == proofs_.end() ? std::nullopt : std::optional(known->second);
}

QString Planning::progressText() const
{
    if (!isRunning()) {
        return search_.note;
    }
    if (search_.aim == PlanningAim::Rest) {
        return tr("Planning the rest again… Esc leaves it as it is.");
    }
    const auto passed =
        std::chrono::duration_cast<std::chrono::seconds>(SteadyClock::now() - search_.begun);
    const QString seconds = (search_.offer ? tr("Still looking: %1 s of %2.")
                                           : tr("Looking for the best plan: %1 s of %2."))
                                .arg(passed.count())
                                .arg(longestSearch.count());
    return search_.offer || !proof()
               ? seconds
               : seconds + QLatin1Char(' ') + tr("This one: %1.").arg(distanceText(proof()));
}

/// Worth offering: what has fewer clashes than the plan as it stands (some, as of a tool that goes
/// unwashed, show only in the whole plan), or no more and is better by the user's preferences; and
/// is not behind what is offered already.
bool Planning::isBetter(const Plan& found) const
{
    const auto rank = [](const Plan& plan) {
        return std::pair(plan.clashes.size(), plan.figures.cost.total());
    };
    if (search_.offer && rank(found) >= rank(*search_.offer)) {
        return false;
    }
    if (search_.clashesToBeat && found.clashes.size() != *search_.clashesToBeat) {
        return found.clashes.size() < *search_.clashesToBeat;
    }
    return !search_.toBeat || found.figures.cost.total() < *search_.toBeat;
}

void Planning::consider(const PlanPtr& found)
{
    if (!isBetter(*found)) {
        return;
    }
    search_.offer = found;
    if (search_.takesFirst) {
        const bool holds = found->holds();
        take();
        Q_EMIT said(holds ? tr("A plan without clashes. Looking for a better one…")
                          : tr("A plan with fewer clashes. Looking for a better one…"));
    } else {
        showOrTake();
    }
}

void Planning::progress(const PlanProgress& progress)
{
    if (search_.isOver || search_.revision != document_.state()->revision) {
        return;
    }
    if (progress.bound) {
        search_.bound = progress.bound;
        noteProof();
    }
    if (progress.better) {
        consider(progress.better);
    }
    Q_EMIT changed();
}

/// What the search has proven holds for the plan as it stands too: it is weighed alike.
void Planning::noteProof()
{
    const PlanPtr& now = plan_.plan();
    if (search_.aim == PlanningAim::Best && search_.bound && now && now->holds() &&
        plan_.isCurrent() && !proofs_.contains(search_.revision)) {
        proofs_[search_.revision] = {now->figures.cost.total(), *search_.bound};
    } else if (const auto known = proofs_.find(search_.revision);
               search_.aim == PlanningAim::Best && search_.bound && known != proofs_.end()) {
        known->second.bound = std::max(known->second.bound, *search_.bound);
    }
}

void Planning::take()
{
    if (search_.offer) {
        applyTaken(std::exchange(search_.offer, nullptr), false);
    }
}

void Planning::showOrTake()
{
    if (!search_.offer || grace_->isActive()) {
        return;
    }
    // A hand that has already taken hold of the next thing shall not see it move.
    const bool isHandBusy = QGuiApplication::mouseButtons() != Qt::NoButton;
    if (search_.aim == PlanningAim::Rest && letGo_ == LetGo::Take && !isHandBusy) {
        // Unless something else was done since that one Undo would take back instead.
        const bool isLatest = document_.state()->revision == search_.begunFor;
        applyTaken(std::exchange(search_.offer, nullptr), isLatest);
    } else {
        Q_EMIT offered(search_.offer);
        Q_EMIT changed();
    }
}

void Planning::applyTaken(const PlanPtr& taken, bool withChangeBefore)
{
    const bool isRest = search_.aim == PlanningAim::Rest;
    const std::optional<Proof> proven =
        isRest || !search_.bound
            ? std::nullopt
            : std::optional(Proof{taken->figures.cost.total(), *search_.bound});
    search_.takesFirst = false;
    search_.toBeat = taken->figures.cost.total();
    search_.clashesToBeat = taken->clashes.size();
    const QString moved = document_.undoStack().undoText();
    Edit edit = takePlan(document_.library(), *taken,
                         !isRest            ? tr("Make plan")
                         : withChangeBefore ? tr("%1, and the rest").arg(moved)
                                            : tr("Plan the rest again"));
    // The search goes on for the evening as it stands; only the layout changes.
    isTaking_ = true;
    if (withChangeBefore) {
        document_.undoStack().undo(); // so that one undo takes back both
    }
    document_.apply(std::move(edit.next), edit.text);
    isTaking_ = false;
    search_.revision = document_.state()->revision;
    before_ = document_.state();
    newest_ = document_.newestRevision();
    if (proven) {
        proofs_[search_.revision] = *proven;
    }
    if (isRest) {
        stop();
    }
    Q_EMIT offered(nullptr);
    Q_EMIT changed();
    Q_EMIT said(tr("The plan is taken. Undo brings back the one before."));
}

void Planning::dismiss()
{
    const bool hadOffer = search_.offer != nullptr;
    leave({});
    if (hadOffer) {
        Q_EMIT said(tr("Left as it is. The plan that was offered is gone."));
    }
}

void Planning::leave(const QString& note)
{
    if (std::exchange(search_.offer, nullptr)) {
        Q_EMIT said({}); // that it is offered is true no longer
    }
    search_.note = note;
    grace_->stop();
    Q_EMIT offered(nullptr);
    Q_EMIT changed();
}

void Planning::follow(const ChangeSet& changes)
{
    const StatePtr before = std::exchange(before_, document_.state());
    const bool isNew =
        document_.newestRevision() != std::exchange(newest_, document_.newestRevision());
    const std::set<std::string> held = std::exchange(heldNext_, {});
    if (isTaking_) {
        return;
    }
    if (!changes.isPlanTouched) {
        const auto known = proofs_.find(before->revision);
        if (known != proofs_.end()) {
            proofs_[before_->revision] = known->second;
        }
        search_.revision = before_->revision;
        return;
    }
    const bool wasForBest =
        (isRunning() && search_.aim == PlanningAim::Best) || (due_ && due_->isAlsoForBest);
    stop();
    leave({});
    const OccasionPtr was = openOccasion(before->library);
    const OccasionPtr is = openOccasion(document_.library());
    if (!isNew || !was || !is || changes.isOtherOccasion) {
        return;
    }
    const bool isAfterMove = !held.empty() || isMovedByHand(*was, *is);
    if (isAfterMove || wasForBest) {
        due_ = Due{held, wasForBest, isAfterMove};
        planRest();
    }
}

void Planning::planRest()
{
    if (!due_ || !plan_.isCurrent() || isTaking_) {
        return;
    }
    const Due due = *std::exchange(due_, std::nullopt);
    auto input = planInputOf(document_.library());
    if (!plan_.plan() || !input || isBegun(document_.library())) {
        return;
    }
    const bool collides = std::ranges::any_of(plan_.plan()->clashes, canBePlannedAway);
    if (collides && due.isAfterMove && letGo_ != LetGo::Nothing) {
        input->closeness = Closeness::LeastChange;
        input->held = due.held;
        run(PlanningAim::Rest, *std::move(input), longestForRest);
    } else if (due.isAlsoForBest && !collides) {
        start();
    }
}

void Planning::sayThatNoneIs(const NoPlan& none)
{
    QStringList why;
    const OccasionPtr record = openOccasion(document_.library());
    if (record && !none.conflict.empty()) {
        for (const std::string& sentence :
             conflictSentences(*none.formulation, record->occasion, none.conflict)) {
            why.push_back(QString::fromStdString(sentence));
        }
    }
    if (search_.aim == PlanningAim::Rest) {
        const QString reasons = why.isEmpty() ? QString() : QLatin1Char(' ') + why.join(u' ');
        leave(none.isProven
                  ? tr("Nothing else can make way for this; Undo takes it back.") + reasons
                  : tr("No way was found to make the rest fit. Make plan looks for longer."));
        return;
    }
    if (!why.isEmpty()) {
        leave(tr("This evening cannot be cooked as it stands. At the foot is why, and what would "
                 "help."));
        Q_EMIT said(search_.note);
        Q_EMIT impossible(why);
        return;
    }
    QString reasons;
    for (const Unplaced& unplaced : none.unplaced) {
        reasons += QLatin1Char(' ') + QString::fromStdString(unplacedSentence(
                                          *none.formulation, unplaced.task, unplaced.because));
    }
    leave(none.isProven ? tr("This evening cannot be cooked as it stands.")
                        : tr("No plan was found."));
    Q_EMIT said(search_.note + reasons);
}

void Planning::finish(const PlanOutcome& outcome)
{
    if (search_.isOver) {
        return;
    }
    search_.isOver = true;
    const bool isCurrent = search_.revision == document_.state()->revision;
    const auto* found = std::get_if<PlanFound>(&outcome);
    if (isCurrent && found != nullptr && found->bound) {
        search_.bound = found->bound;
        noteProof();
    }
    Q_EMIT runningChanged(false); // ends the grace too
    if (isCurrent && found != nullptr) {
        consider(found->plan); // with more washed, it may be another one than was told on the way
    }
    if (search_.offer && search_.aim == PlanningAim::Rest) {
        showOrTake();
        return;
    }
    if (const auto* none = std::get_if<NoPlan>(&outcome); none != nullptr && isCurrent) {
        sayThatNoneIs(*none);
    } else if (search_.offer && search_.aim == PlanningAim::Best) {
        Q_EMIT said(tr("The best plan found is offered."));
    } else if (isCurrent && !search_.offer && search_.aim == PlanningAim::Best) {
        Q_EMIT said(tr("Planned. No better plan was found."));
    }
}

} // namespace suppertide::ui
