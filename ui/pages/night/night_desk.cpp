#include "ui/pages/night/night_desk.h"

#include <QUndoStack>

#include <algorithm>
#include <chrono>

#include "core/wording/night_words.h"
#include "ui/models/edit.h"
#include "ui/models/reading_choice.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

/// Of each attempt; together with all around it a new plan is there within 0.3 s.
constexpr std::chrono::milliseconds longestAttempt{240};
/// Before its first step begins the evening is still to come; with this much to go it is under way.
constexpr Minutes begunAhead{60};
/// A rehearsal begins so long before the first course.
constexpr Minutes rehearsedAhead{120};

QString words(const std::string& text)
{
    return QString::fromStdString(text);
}

/// The words by which a change made here is known in the history.
QString onTheNight(const QString& text)
{
    return NightDesk::tr("On the night: %1").arg(text);
}

std::optional<Instant> firstServing(const Occasion& occasion)
{
    const auto zone = TimeZone::find(occasion.zone);
    if (!zone || occasion.courses.empty()) {
        return std::nullopt;
    }
    return zone->instant(occasion.courses.front().serving);
}

} // namespace

NightDesk::NightDesk(Document& document, const Clock& clock, QObject* parent)
    : QObject(parent), document_(document), clock_(clock), job_(new NightJob(this))
{
    connect(job_, &NightJob::answeredFor, this, &NightDesk::take);
    connect(job_, &NightJob::failed, this, [this](const Failure& failure) {
        isPlanning_ = false;
        view_ = {};
        view_.headline = words(failure.forCook);
        view_.isRehearsal = rehearsal_.has_value();
        Q_EMIT changed();
    });
    connect(&document, &Document::changed, this, [this](const ChangeSet& changes) {
        if (changes.isOtherOccasion) {
            rehearsal_.reset();
            view_.news.clear();
        }
        if (changes.isPlanTouched && !rehearsal_) {
            look(false);
        }
    });
    constexpr std::chrono::seconds everySecond{1};
    timer_.setInterval(everySecond);
    connect(&timer_, &QTimer::timeout, this, &NightDesk::second);
}

Instant NightDesk::now() const
{
    if (rehearsal_) {
        constexpr qint64 perMinute = 60;
        return rehearsal_->from + Minutes{rehearsal_->seconds / perMinute};
    }
    return clock_.now();
}

void NightDesk::setActive(bool isActive)
{
    if (isActive == isActive_) {
        return;
    }
    isActive_ = isActive;
    if (isActive) {
        timer_.start();
        look(false);
    } else {
        timer_.stop();
    }
}

void NightDesk::second()
{
    if (rehearsal_) {
        rehearsal_->seconds += pace_;
    }
    if (lookedAt_ != now()) {
        look(false);
        Q_EMIT minutePassed();
    }
}

quint64 NightDesk::revision() const
{
    return rehearsal_ ? rehearsed_ : document_.state()->revision;
}

std::optional<OccasionRecord> NightDesk::record() const
{
    if (rehearsal_) {
        return rehearsal_->record;
    }
    const OccasionPtr open = openOccasion(document_.library());
    return open ? std::optional(*open) : std::nullopt;
}

std::optional<PlanInput> NightDesk::input() const
{
    auto input = planInputOf(document_.library());
    if (input && rehearsal_) {
        input->layout = std::make_shared<const Layout>(rehearsal_->record.layout);
    }
    return input;
}

void NightDesk::look(bool mayMove)
{
    if (!isActive_) {
        return;
    }
    // A look may wait until what is being planned is there.
    if (!mayMove && isPlanning_) {
        return;
    }
    const auto from = input();
    const auto open = record();
    if (!from || !open || open->occasion.courses.empty()) {
        view_ = {};
        view_.headline = tr("No evening is open. Open one, and put dishes on its menu.");
        Q_EMIT changed();
        return;
    }
    lookedAt_ = now();
    isPlanning_ = mayMove;
    NightQuestion question;
    question.request = {*from, open->progress, *lookedAt_, {}, revision()};
    question.request.limits.wallClock = longestAttempt;
    question.mayMove = mayMove;
    question.style = readingStyle(document_);
    job_->ask(std::move(question));
}

void NightDesk::take(const NightAnswerPtr& answer, quint64 revision)
{
    isPlanning_ = false;
    if (revision != this->revision()) {
        look(answer->mayMove);
        return;
    }
    answer_ = answer;
    view_.sheet = answer->sheet;
    view_.isRehearsal = rehearsal_.has_value();
    view_.warning = words(passedText(answer->rest(), readingStyle(document_)));
    if (!answer->sheet.mostLate.empty()) {
        view_.warning += (view_.warning.isEmpty() ? QString() : u" "_s) +
                         tr("Latest: %1.").arg(words(answer->sheet.mostLate));
    }
    for (const std::string& food : answer->sheet.foods) {
        view_.warning += (view_.warning.isEmpty() ? QString() : u" "_s) + words(food);
    }
    if (answer->mayMove) {
        offer_ = nullptr;
        if (const auto* plan = std::get_if<RestPlan>(&answer->outcome)) {
            tellPlanned(*plan);
        } else {
            tellNoPlan(std::get<NoRest>(answer->outcome));
        }
    } else if (std::holds_alternative<NoRest>(answer->outcome) && !offer_) {
        view_.warning +=
            (view_.warning.isEmpty() ? QString() : u" "_s) +
            tr("What is left does not fit as it is laid out. Plan the rest to see what "
               "can be done.");
    }
    view_.hasOffer = offer_ != nullptr;
    showStage();
    Q_EMIT changed();
}

void NightDesk::tellPlanned(const RestPlan& plan)
{
    const auto moves = movesOf(plan.rest, plan.plan->schedule);
    const QString changes = words(changesText(plan.rest, *plan.plan, readingStyle(document_)));
    if (!plan.givingWay.isNone()) {
        offer_ = answer_;
        view_.news = words(givingWayText(*plan.rest.whole, plan.givingWay)) + u' ' + changes;
        return;
    }
    view_.news = changes;
    if (!moves.empty()) {
        applyRest(plan.rest, plan.plan);
    }
}

void NightDesk::tellNoPlan(const NoRest& none)
{
    QString reasons;
    for (const Unplaced& unplaced : none.unplaced) {
        reasons +=
            u' ' + words(unplacedSentence(*none.rest.formulation, unplaced.task, unplaced.because));
    }
    view_.news = tr("Nothing that was tried fits.") + reasons +
                 tr(" Leave something out, or serve much later.");
}

void NightDesk::applyRest(const RestOfEvening& rest, const PlanPtr& plan)
{
    auto next = record();
    next->layout = layoutWith(rest, plan->schedule);
    next->progress = withCooks(std::move(next->progress), *plan);
    // What is shown holds for the layout that follows from it: no need to look again at once.
    put(*std::move(next), tr("Plan the rest"));
    planned_ = revision();
}

void NightDesk::takeOffer()
{
    if (!offer_) {
        return;
    }
    const NightAnswerPtr taken = std::exchange(offer_, nullptr);
    const auto& plan = std::get<RestPlan>(taken->outcome);
    auto next = record();
    // Courses that give way are served later from now on.
    for (Course& course : next->occasion.courses) {
        const auto event = plan.plan->formulation->servings.find(course.id);
        if (event == plan.plan->formulation->servings.end()) {
            continue;
        }
        const PlanTime served = *plan.plan->schedule.starts[event->second];
        const CivilTime at = plan.plan->formulation->calendar.civil(served);
        course.serving = std::max(course.serving, at);
    }
    next->progress = withGivenUp(std::move(next->progress), plan.givingWay);
    next->progress = withCooks(std::move(next->progress), *plan.plan);
    next->layout = layoutWith(plan.rest, plan.plan->schedule);
    put(*std::move(next), tr("Plan the rest"));
    planned_ = revision();
    view_.hasOffer = false;
    view_.news = tr("Taken. Undo brings back what was.");
    look(false);
    Q_EMIT changed();
}

void NightDesk::showStage()
{
    const RestOfEvening& rest = answer_->rest();
    const Formulation& left = *rest.formulation;
    std::optional<PlanTime> first;
    TaskIndex firstTask;
    bool isAnyBegun = false;
    for (const TaskIndex task : left.problem.tasks.indices()) {
        const auto& start = answer_->plan()->schedule.starts[task];
        if (start && isReportable(left.tasks[task]) && (!first || *start < *first)) {
            first = start;
            firstTask = task;
        }
    }
    for (const TaskIndex task : rest.whole->tasks.indices()) {
        isAnyBegun = isAnyBegun ||
                     (rest.facts.steps[task].isBegun() && isReportable(rest.whole->tasks[task]));
    }
    view_.undoes = lastReport();
    if (!first) {
        view_.stage = NightStage::Over;
        view_.headline = tr("All is done. Sit down.");
    } else if (!isAnyBegun && *first > planTime(0) + begunAhead) {
        view_.stage = NightStage::Before;
        const PlanCalendar& calendar = left.calendar;
        view_.headline = tr("It begins on %1 at %2: %3.")
                             .arg(words(dayText(calendar.civil(*first).date)),
                                  words(toIso(calendar.civil(*first).clock)), nameOf(firstTask));
    } else {
        view_.stage = NightStage::UnderWay;
        view_.headline.clear();
    }
}

/// What Undo takes back here; what was done elsewhere is not undone from this page.
QString NightDesk::lastReport() const
{
    if (rehearsal_) {
        return rehearsal_->undo.empty() ? QString() : rehearsal_->undo.back().second;
    }
    const QString last = document_.undoStack().undoText();
    return last.startsWith(onTheNight({})) ? last : QString();
}

std::optional<TaskIndex> NightDesk::find(const QString& task) const
{
    if (!answer_) {
        return std::nullopt;
    }
    const Formulation& rest = *answer_->plan()->formulation;
    const auto found = rest.taskById.find(task.toStdString());
    return found == rest.taskById.end() ? std::nullopt : std::optional(found->second);
}

QString NightDesk::nameOf(TaskIndex task) const
{
    const TaskSource& source = answer_->plan()->formulation->tasks[task];
    return words(source.text.empty() ? "Serve " + source.dishName : source.text);
}

template <typename Change>
void NightDesk::report(const QString& task, const QString& text, const Change& change)
{
    const auto index = find(task);
    auto next = record();
    if (!index || !next || view_.stage != NightStage::UnderWay) {
        return;
    }
    next->progress = withCooks(std::move(next->progress), *answer_->plan());
    change(*next, *answer_->plan(), *index);
    offer_ = nullptr;
    put(*std::move(next), text.arg(nameOf(*index)));
    view_.news = tr("Planning the rest…");
    planned_.reset();
    Q_EMIT changed();
    look(true);
}

void NightDesk::put(OccasionRecord next, const QString& text)
{
    const QString known = onTheNight(text);
    if (rehearsal_) {
        rehearsal_->undo.emplace_back(std::exchange(rehearsal_->record, std::move(next)), known);
        ++rehearsed_;
        return;
    }
    document_.apply(withRecord(document_.library(), std::move(next)), known);
}

void NightDesk::started(const QString& task)
{
    report(task, tr("Started: %1"),
           [this](OccasionRecord& next, const Plan& plan, TaskIndex index) {
               next.progress = withStarted(std::move(next.progress), plan, index, now());
               next.layout.starts[plan.formulation->problem.tasks[index].id] = now();
           });
}

void NightDesk::done(const QString& task)
{
    report(task, tr("Done: %1"), [this](OccasionRecord& next, const Plan& plan, TaskIndex index) {
        next.progress = withDone(std::move(next.progress), plan, index, now());
    });
}

void NightDesk::late(const QString& task, int minutes)
{
    report(task, tr("%1 min late: %2").arg(minutes).arg(u"%1"_s),
           [this, minutes](OccasionRecord& next, const Plan& plan, TaskIndex index) {
               next.progress =
                   withLate(std::move(next.progress), plan, index, Minutes{minutes}, now());
           });
}

bool NightDesk::readsFahrenheit() const
{
    return readingStyle(document_).fahrenheit;
}

void NightDesk::readAnew()
{
    look(false);
}

void NightDesk::leaveOut(const QString& task)
{
    report(task, tr("Not doing: %1"), [](OccasionRecord& next, const Plan& plan, TaskIndex index) {
        next.progress = withLeftOut(std::move(next.progress), plan, index);
    });
}

void NightDesk::ovenAt(const QString& oven, int celsius)
{
    auto next = record();
    if (next && view_.stage == NightStage::UnderWay) {
        next->progress = withOvenAt(std::move(next->progress), oven.toStdString(), now(), celsius);
        put(*std::move(next),
            tr("Oven at %1").arg(words(temperatureText(celsius, readingStyle(document_)))));
        look(true);
    }
}

std::vector<std::pair<QString, QString>> NightDesk::ovens() const
{
    std::vector<std::pair<QString, QString>> all;
    if (answer_) {
        const Formulation& rest = *answer_->plan()->formulation;
        for (const OvenIndex oven : rest.problem.ovens.indices()) {
            all.emplace_back(words(rest.problem.ovens[oven].id), words(rest.ovenNames[oven]));
        }
    }
    return all;
}

void NightDesk::asPlannedUntilNow()
{
    auto next = record();
    if (!next || !answer_) {
        return;
    }
    Plan asItWas;
    asItWas.formulation = answer_->rest().whole;
    asItWas.schedule = answer_->rest().planned;
    next->progress = asPlannedUntil(std::move(next->progress), asItWas, now());
    put(*std::move(next), tr("As planned until now"));
    view_.news = tr("Taken as planned until now.");
    look(false);
}

void NightDesk::undo()
{
    if (lastReport().isEmpty()) {
        return;
    }
    if (rehearsal_) {
        if (!rehearsal_->undo.empty()) {
            const bool isPlanned = planned_ == revision() && rehearsal_->undo.size() > 1;
            for (int i = 0; i < (isPlanned ? 2 : 1); ++i) {
                rehearsal_->record = std::move(rehearsal_->undo.back().first);
                rehearsal_->undo.pop_back();
            }
            ++rehearsed_;
        }
    } else {
        // The plan that followed from a report goes with it.
        const bool isPlanned = planned_ == revision();
        document_.undoStack().undo();
        if (isPlanned) {
            document_.undoStack().undo();
        }
    }
    planned_.reset();
    offer_ = nullptr;
    view_.news = tr("Taken back.");
    look(false);
}

void NightDesk::planRest()
{
    if (view_.stage != NightStage::UnderWay) {
        return;
    }
    view_.news = tr("Planning the rest…");
    Q_EMIT changed();
    look(true);
}

void NightDesk::rehearse()
{
    const OccasionPtr open = openOccasion(document_.library());
    const auto serving = open ? firstServing(open->occasion) : std::nullopt;
    if (!serving) {
        return;
    }
    Rehearsal rehearsal;
    rehearsal.record = *open;
    rehearsal.record.progress = {};
    rehearsal.from = *serving - rehearsedAhead;
    rehearsal_ = std::move(rehearsal);
    ++rehearsed_;
    // All that comes before has gone as planned.
    const auto from = input();
    const auto rest = from ? restOfEvening(*from, {}, now()) : Result<RestOfEvening>(Failure{});
    if (rest) {
        Plan asItWas;
        asItWas.formulation = rest->whole;
        asItWas.schedule = rest->planned;
        rehearsal_->record.progress = asPlannedUntil({}, asItWas, now());
    }
    view_.news = tr("A rehearsal: nothing of it is kept.");
    look(false);
}

void NightDesk::endRehearsal()
{
    rehearsal_.reset();
    offer_ = nullptr;
    view_.news.clear();
    look(false);
}

void NightDesk::skip(Minutes by)
{
    if (rehearsal_) {
        rehearsal_->seconds += std::chrono::duration_cast<std::chrono::seconds>(by).count();
        look(false);
    }
}

} // namespace suppertide::ui
