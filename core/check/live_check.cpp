#include "core/check/live_check.h"

#include <map>
#include <utility>

#include "core/check/touched.h"

namespace suppertide {

namespace {

/// What differs between two schedules of one problem.
struct Difference
{
    std::vector<ChoiceIndex> choices;
    std::vector<TaskIndex> starts;
    std::vector<TaskIndex> cooks;
    std::vector<DemandIndex> units;
    std::vector<OvenDemandIndex> ovens;
    std::vector<OvenIndex> programs;
};

template <typename Index, typename T>
std::vector<Index> differing(const IndexedVector<Index, T>& before,
                             const IndexedVector<Index, T>& after)
{
    expects(before.size() == after.size(), "a schedule of the same problem");
    std::vector<Index> result;
    for (const Index index : before.indices()) {
        if (before[index] != after[index]) {
            result.push_back(index);
        }
    }
    return result;
}

Difference between(const Schedule& before, const Schedule& after)
{
    Difference result{
        differing(before.options, after.options), differing(before.starts, after.starts),
        differing(before.cooks, after.cooks),     differing(before.units, after.units),
        differing(before.ovens, after.ovens),     differing(before.programs, after.programs)};
    if (before.namedWithoutCooks != after.namedWithoutCooks) {
        for (const auto* tasks : {&before.namedWithoutCooks, &after.namedWithoutCooks}) {
            result.cooks.insert(result.cooks.end(), tasks->begin(), tasks->end());
        }
    }
    return result;
}

} // namespace

class LiveCheck::Parts
{
public:
    Parts(const Problem& problem, Schedule schedule)
        : schedule_(std::move(schedule)), evidence_(problem, schedule_),
          requirements_(problem, evidence_.ties()), touched_(evidence_, requirements_)
    {
        for (RequirementNumber number = 0; number < requirements_.size(); ++number) {
            judge(number);
        }
        collect(requirements_.size());
    }

    void change(const Difference& difference, Schedule&& next)
    {
        touch(difference);
        schedule_ = std::move(next);
        refresh(difference);
        touch(difference);
        judgeTouched();
    }

    /// As `change`, without the copy of a whole schedule.
    void move(std::span<const StartMove> moves)
    {
        Difference difference;
        for (const StartMove& move : moves) {
            if (schedule_.starts[move.task] != move.start) {
                difference.starts.push_back(move.task);
            }
        }
        touch(difference);
        for (const StartMove& move : moves) {
            schedule_.starts[move.task] = move.start;
        }
        refresh(difference);
        judgeTouched();
    }

    [[nodiscard]] const std::vector<Broken>& broken() const { return broken_; }
    [[nodiscard]] const Schedule& schedule() const { return schedule_; }
    [[nodiscard]] std::size_t judgedLast() const { return judgedLast_; }

private:
    void touch(const Difference& difference)
    {
        for (const ChoiceIndex choice : difference.choices) {
            touched_.byChoice(choice);
        }
        for (const TaskIndex task : difference.starts) {
            touched_.byTask(task);
        }
        for (const TaskIndex task : difference.cooks) {
            touched_.byCooksOf(task);
        }
        for (const DemandIndex demand : difference.units) {
            touched_.byUnitOf(demand);
        }
        for (const OvenDemandIndex demand : difference.ovens) {
            touched_.byOvenOf(demand);
        }
        for (const OvenIndex oven : difference.programs) {
            touched_.byProgram(oven);
        }
    }

    void refresh(const Difference& difference)
    {
        const Problem& problem = evidence_.problem();
        if (!difference.choices.empty()) {
            evidence_.refreshPresence();
            for (const CookIndex cook : problem.cooks.indices()) {
                evidence_.refreshTable(cook);
            }
        }
        for (const TaskIndex task : difference.starts) {
            for (const CookIndex cook : evidence_.ties().seatedAfter[task]) {
                evidence_.refreshTable(cook);
            }
        }
        for (const OvenIndex oven : difference.programs) {
            evidence_.refreshCurve(oven);
        }
    }

    void judge(RequirementNumber number)
    {
        Verdict verdict = requirements_.judge(evidence_, number);
        if (verdict.empty()) {
            verdicts_.erase(number);
        } else {
            verdicts_[number] = std::move(verdict);
        }
    }

    void judgeTouched()
    {
        const std::vector<RequirementNumber> numbers = touched_.take();
        for (const RequirementNumber number : numbers) {
            judge(number);
        }
        collect(numbers.size());
    }

    void collect(std::size_t judged)
    {
        judgedLast_ = judged;
        broken_.clear();
        for (const auto& [number, verdict] : verdicts_) {
            broken_.insert(broken_.end(), verdict.begin(), verdict.end());
        }
    }

    Schedule schedule_;
    Evidence evidence_; // looks at schedule_
    Requirements requirements_;
    Touched touched_;                               // looks at evidence_ and requirements_
    std::map<RequirementNumber, Verdict> verdicts_; // only of what is broken
    std::vector<Broken> broken_;
    std::size_t judgedLast_ = 0;
};

LiveCheck::LiveCheck(const Problem& problem, Schedule schedule)
    : parts_(std::make_unique<Parts>(problem, std::move(schedule)))
{}

LiveCheck::~LiveCheck() = default;
LiveCheck::LiveCheck(LiveCheck&&) noexcept = default;
LiveCheck& LiveCheck::operator=(LiveCheck&&) noexcept = default;

const std::vector<Broken>& LiveCheck::update(std::span<const StartMove> moves)
{
    parts_->move(moves);
    return broken();
}

const std::vector<Broken>& LiveCheck::update(Schedule next)
{
    const Difference difference = between(schedule(), next);
    parts_->change(difference, std::move(next));
    return broken();
}

const std::vector<Broken>& LiveCheck::broken() const
{
    return parts_->broken();
}

const Schedule& LiveCheck::schedule() const
{
    return parts_->schedule();
}

std::size_t LiveCheck::judgedLast() const
{
    return parts_->judgedLast();
}

} // namespace suppertide
