#include "core/night/facts.h"

#include <algorithm>

#include "core/problem/timetable.h"

namespace suppertide {

namespace {

/// Work that should have ended so long ago is done, though nobody has said so: a cook has other
/// things to do than to report.
constexpr Minutes forgottenAfter{30};

/// The time of the evening itself fixes these.
bool isByTheClock(TaskRole role)
{
    return role == TaskRole::Target || role == TaskRole::Watch || role == TaskRole::OvenSetting;
}

class FactFinder
{
public:
    FactFinder(const Formulation& formulation, const Schedule& planned, const Progress& progress,
               Instant now)
        : formulation_(formulation), problem_(formulation.problem), planned_(planned),
          times_(problem_, planned), progress_(progress), into_(problem_.tasks.size()),
          outOf_(problem_.tasks.size())
    {
        facts_.now = formulation.calendar.planTime(now);
        facts_.steps.resize(problem_.tasks.size());
        for (const TaskIndex task : problem_.tasks.indices()) {
            facts_.steps[task].earliest = facts_.now;
        }
        for (const LagIndex lag : problem_.lags.indices()) {
            if (times_.bothPresent(problem_.lags[lag].from, problem_.lags[lag].to)) {
                into_[problem_.lags[lag].to.task].push_back(lag);
                outOf_[problem_.lags[lag].from.task].push_back(lag);
            }
        }
    }

    EveningFacts find()
    {
        for (const TaskIndex task : problem_.tasks.indices()) {
            if (times_.isPresent(task)) {
                takeReport(task);
                goByTheClock(task);
            }
        }
        leaveOutWithThem();
        // What one thing implies may imply the next; each turn settles at least one task.
        while (settlePredecessors() || settleByThemselves()) {
        }
        return std::move(facts_);
    }

private:
    [[nodiscard]] const StepReport* reportOf(TaskIndex task) const
    {
        const auto said = progress_.steps.find(problem_.tasks[task].id);
        return said == progress_.steps.end() ? nullptr : &said->second;
    }
    [[nodiscard]] Minutes longerBy(TaskIndex task) const
    {
        const StepReport* report = reportOf(task);
        return report == nullptr ? Minutes{0} : report->longer;
    }
    [[nodiscard]] std::optional<PlanTime> passed(const std::optional<Instant>& said) const
    {
        if (!said) {
            return std::nullopt;
        }
        const PlanTime at = formulation_.calendar.planTime(*said);
        return at <= facts_.now ? std::optional(at) : std::nullopt;
    }

    void setDone(TaskIndex task, PlanTime start, PlanTime end)
    {
        StepFact& fact = facts_.steps[task];
        fact.state = StepState::Done;
        fact.when = {std::min(start, end), end};
    }

    /// Begun at `start`; what should have ended by now is at its last minute.
    void setUnderWay(TaskIndex task, PlanTime start)
    {
        const Minutes takes = problem_.tasks[task].duration + longerBy(task);
        if (problem_.tasks[task].duration == Minutes{0}) {
            setDone(task, start, start);
            return;
        }
        StepFact& fact = facts_.steps[task];
        fact.state = StepState::UnderWay;
        fact.when = {start, std::max(start + takes, facts_.now + Minutes{1})};
        fact.overdue = std::max(Minutes{0}, facts_.now - (start + takes));
    }

    void takeReport(TaskIndex task)
    {
        const StepReport* report = reportOf(task);
        if (report == nullptr) {
            return;
        }
        StepFact& fact = facts_.steps[task];
        if (report->isLeftOut) {
            fact.state = StepState::LeftOut;
            return;
        }
        const auto started = passed(report->started);
        if (const auto done = passed(report->done)) {
            setDone(task, started.value_or(*done - problem_.tasks[task].duration), *done);
        } else if (started) {
            setUnderWay(task, *started);
        } else if (report->notBefore) {
            fact.earliest =
                std::max(facts_.now, formulation_.calendar.planTime(*report->notBefore));
        }
    }

    void goByTheClock(TaskIndex task)
    {
        const Interval& window = problem_.tasks[task].window;
        if (!isByTheClock(formulation_.tasks[task].role) || window.start > facts_.now) {
            return;
        }
        StepFact& fact = facts_.steps[task];
        fact.state = window.end <= facts_.now ? StepState::Done : StepState::UnderWay;
        fact.when = window;
    }

    // --- not being done

    void leaveOutWithThem()
    {
        std::vector<TaskIndex> reported;
        for (const TaskIndex task : problem_.tasks.indices()) {
            if (facts_.steps[task].state == StepState::LeftOut) {
                reported.push_back(task);
            }
        }
        for (const TaskIndex left : reported) {
            for (const TaskIndex task : problem_.tasks.indices()) {
                if (areOneBatch(formulation_.tasks[left], formulation_.tasks[task]) &&
                    isOpen(task)) {
                    facts_.steps[task].state = StepState::LeftOut;
                }
            }
        }
        bool isMore = !reported.empty();
        while (isMore) {
            isMore = false;
            for (const TaskIndex task : problem_.tasks.indices()) {
                if (times_.isPresent(task) && isOpen(task) && followsOnlyWhatIsLeftOut(task)) {
                    facts_.steps[task].state = StepState::LeftOut;
                    isMore = true;
                }
            }
        }
    }

    [[nodiscard]] bool isOpen(TaskIndex task) const
    {
        return facts_.steps[task].state == StepState::ToCome;
    }

    /// A step of whose food nothing is left; a serving, a trip or a house job is never that.
    [[nodiscard]] bool followsOnlyWhatIsLeftOut(TaskIndex task) const
    {
        const TaskSource& source = formulation_.tasks[task];
        if (source.role == TaskRole::Serving || source.role == TaskRole::Trip ||
            source.role == TaskRole::HouseJob || isByTheClock(source.role)) {
            return false;
        }
        bool isAny = false;
        for (const LagIndex index : into_[task]) {
            const Lag& lag = problem_.lags[index];
            const TaskSource& before = formulation_.tasks[lag.from.task];
            const bool isFood = before.dish == source.dish || before.recipe == source.recipe;
            if (!lag.min || *lag.min < Minutes{0} || !isFood || lag.from.task == task ||
                before.role == TaskRole::Washing || before.role == TaskRole::Trip ||
                before.role == TaskRole::Serving || before.role == TaskRole::Target) {
                continue;
            }
            if (facts_.steps[lag.from.task].state != StepState::LeftOut) {
                return false;
            }
            isAny = true;
        }
        return isAny;
    }

    // --- what must have come before

    [[nodiscard]] PlanTime timeOf(const TaskPoint& point) const
    {
        const Interval& when = facts_.steps[point.task].when;
        return point.edge == Edge::Start ? when.start : when.end;
    }

    /// Whether the time of this point has come, and is known.
    [[nodiscard]] bool isPast(const TaskPoint& point) const
    {
        const StepFact& fact = facts_.steps[point.task];
        return fact.state == StepState::Done ||
               (fact.state == StepState::UnderWay && point.edge == Edge::Start);
    }

    bool settlePredecessors()
    {
        bool isAny = false;
        for (const LagIndex index : problem_.lags.indices()) {
            const Lag& lag = problem_.lags[index];
            const StepFact& before = facts_.steps[lag.from.task];
            if (!times_.bothPresent(lag.from, lag.to) || !isPast(lag.to) || isPast(lag.from) ||
                !lag.min || *lag.min < Minutes{0} || before.state == StepState::LeftOut ||
                isByTheClock(formulation_.tasks[lag.from.task].role)) {
                continue;
            }
            const PlanTime latest = timeOf(lag.to) - *lag.min;
            if (lag.from.edge == Edge::Start) {
                setUnderWay(lag.from.task, latest);
            } else if (before.state == StepState::UnderWay) {
                setDone(lag.from.task, before.when.start, std::max(before.when.start, latest));
            } else {
                setDone(lag.from.task, latest - problem_.tasks[lag.from.task].duration, latest);
            }
            isAny = true;
        }
        return isAny;
    }

    // --- what begins and ends by itself

    bool settleByThemselves()
    {
        bool isAny = false;
        for (const TaskIndex task : problem_.tasks.indices()) {
            if (!times_.isPresent(task)) {
                continue;
            }
            const StepState state = facts_.steps[task].state;
            if (state == StepState::ToCome) {
                isAny = beginsByItself(task) || isAny;
            } else if (state == StepState::UnderWay) {
                isAny = endsByItself(task) || isAny;
            }
        }
        return isAny;
    }

    /// What goes on without a gap begins at once; what needs nobody, at its time if all that comes
    /// before it is done.
    bool beginsByItself(TaskIndex task)
    {
        const TaskRole role = formulation_.tasks[task].role;
        if (role == TaskRole::Serving || isByTheClock(role) ||
            facts_.steps[task].earliest > facts_.now) {
            return false;
        }
        const auto start =
            problem_.tasks[task].duration == Minutes{0} ? rigidTime(task) : startByItself(task);
        if (!start || *start > facts_.now) {
            return false;
        }
        setUnderWay(task, *start);
        return true;
    }

    /// When what happened before puts it, if it is tied to that without play.
    [[nodiscard]] std::optional<PlanTime> rigidTime(TaskIndex task) const
    {
        for (const LagIndex index : into_[task]) {
            const Lag& lag = problem_.lags[index];
            if (lag.min && lag.min == lag.max && isPast(lag.from)) {
                return timeOf(lag.from) + *lag.min;
            }
        }
        return std::nullopt;
    }

    [[nodiscard]] std::optional<PlanTime> startByItself(TaskIndex task) const
    {
        std::optional<PlanTime> start;
        bool isContinued = false;
        for (const LagIndex index : into_[task]) {
            const Lag& lag = problem_.lags[index];
            if (!lag.min || *lag.min < Minutes{0} ||
                facts_.steps[lag.from.task].state == StepState::LeftOut) {
                continue;
            }
            if (!isPast(lag.from)) {
                return std::nullopt;
            }
            const PlanTime at =
                timeOf(lag.from) + *lag.min -
                (lag.to.edge == Edge::End ? problem_.tasks[task].duration : Minutes{0});
            start = std::max(start.value_or(at), at);
            isContinued = isContinued || (lag.max == lag.min && goesOn(lag.from.task, task));
        }
        if (isContinued || !start) {
            return start;
        }
        if (problem_.tasks[task].needsCooks()) {
            return std::nullopt;
        }
        return std::max(*start, planned_.starts[task].value_or(*start));
    }

    /// The same step, from piece to piece, or from going into the oven to its time there.
    [[nodiscard]] bool goesOn(TaskIndex from, TaskIndex to) const
    {
        return formulation_.tasks[to].role == TaskRole::Step &&
               areOneBatch(formulation_.tasks[from], formulation_.tasks[to]);
    }

    /// Its time is over, and no cook must end it, or long over.
    bool endsByItself(TaskIndex task)
    {
        const StepFact& fact = facts_.steps[task];
        const PlanTime end = fact.when.start + problem_.tasks[task].duration + longerBy(task);
        if (end > facts_.now || isByTheClock(formulation_.tasks[task].role)) {
            return false;
        }
        const bool isContinued = std::ranges::any_of(outOf_[task], [&](LagIndex index) {
            const Lag& lag = problem_.lags[index];
            return lag.from.edge == Edge::End && lag.min && lag.min == lag.max &&
                   goesOn(task, lag.to.task);
        });
        const bool isAwaited = std::ranges::any_of(outOf_[task], [&](LagIndex index) {
            const Lag& lag = problem_.lags[index];
            return lag.from.edge == Edge::End && lag.min && lag.min == lag.max &&
                   problem_.tasks[lag.to.task].needsCooks();
        });
        const bool isForgotten =
            problem_.tasks[task].needsCooks() && end + forgottenAfter <= facts_.now;
        if (isContinued || isForgotten || (!problem_.tasks[task].needsCooks() && !isAwaited)) {
            setDone(task, fact.when.start, end);
            return true;
        }
        return false;
    }

    const Formulation& formulation_;
    const Problem& problem_;
    const Schedule& planned_;
    Timetable times_;
    const Progress& progress_;
    IndexedVector<TaskIndex, std::vector<LagIndex>> into_;
    IndexedVector<TaskIndex, std::vector<LagIndex>> outOf_;
    EveningFacts facts_;
};

} // namespace

bool areOneBatch(const TaskSource& one, const TaskSource& other)
{
    return one.step && one.step == other.step && one.dish == other.dish &&
           one.recipe == other.recipe && one.batch == other.batch &&
           one.variants == other.variants && one.role != TaskRole::Washing &&
           other.role != TaskRole::Washing;
}

EveningFacts factsOf(const Formulation& formulation, const Schedule& planned,
                     const Progress& progress, Instant now)
{
    return FactFinder(formulation, planned, progress, now).find();
}

} // namespace suppertide
