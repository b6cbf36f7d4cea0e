#include "core/advice/why_here.h"

#include <algorithm>
#include <set>

#include "core/assign/live_assign.h"
#include "core/check/live_check.h"
#include "core/plan/clash_finder.h"
#include "core/plan/lay_out.h"
#include "core/plan/live_plan.h"
#include "core/plan/tie_graph.h"
#include "core/problem/timetable.h"

namespace suppertide {

namespace {

class Asking
{
public:
    Asking(const PlanPtr& plan, const PlanInput& input, TaskIndex task, std::stop_token stop)
        : plan_(plan), input_(input), formulation_(*plan->formulation),
          problem_(formulation_.problem), stop_(std::move(stop))
    {
        const auto& start = plan->schedule.starts[task];
        expects(start.has_value(), "a task with a start");
        answer_.task = task;
        answer_.start = *start;
        answer_.group =
            TieGraph(problem_, presentTasks(problem_, plan->schedule.options)).rigidGroup(task);
        answer_.now = {*start, *start + problem_.tasks[task].duration};
        for (const TaskIndex each : answer_.group) {
            const Interval when = *plan->interval(each);
            answer_.now = {std::min(answer_.now.start, when.start),
                           std::max(answer_.now.end, when.end)};
            answer_.isPinned =
                answer_.isPinned || input.layout->pinned.contains(problem_.tasks[each].id);
        }
        for (const Broken& broken : check(problem_, plan->schedule)) {
            brokenNow_.insert(broken.name());
        }
    }

    WhyHere ask()
    {
        answer_.figures =
            figuresOf(formulation_, assign(problem_, plan_->schedule,
                                           assignmentPins(formulation_, *input_.layout)));
        answer_.earlier = hold(Minutes{-1});
        answer_.later = hold(Minutes{1});
        return std::move(answer_);
    }

private:
    [[nodiscard]] bool isNew(const Broken& broken) const
    {
        return !brokenNow_.contains(broken.name());
    }

    Hold hold(Minutes step)
    {
        Hold found;
        LiveAssign assigned(problem_);
        LiveCheck live(problem_, plan_->schedule);
        const AssignmentPins pins = assignmentPins(formulation_, *input_.layout);
        std::optional<Schedule> furthest;
        // The horizon ends this at the latest: each window lies within it.
        for (Minutes by = step; !stop_.stop_requested(); by += step) {
            const std::vector<Broken>& broken = live.update(assigned.assign(movedBy(by), pins));
            if (std::ranges::any_of(broken, [&](const Broken& each) { return isNew(each); })) {
                blame(found, by, broken, live.schedule());
                break;
            }
            found.free += Minutes{1};
            furthest = live.schedule();
        }
        if (furthest) {
            found.at = figuresOf(formulation_, *furthest);
        }
        found.along = along(step, found.free);
        return found;
    }

    [[nodiscard]] Schedule movedBy(Minutes by) const
    {
        Schedule moved = plan_->schedule;
        for (const TaskIndex task : answer_.group) {
            moved.starts[task] = *moved.starts[task] + by;
        }
        return moved;
    }

    void blame(Hold& found, Minutes by, std::vector<Broken> broken, const Schedule& schedule) const
    {
        std::erase_if(broken, [&](const Broken& each) { return !isNew(each); });
        const ClashFinder finder(formulation_);
        found.beyond = judgePlan(plan_->formulation, input_, schedule, plan_->revision);
        if (std::ranges::none_of(broken, isOfHands)) {
            found.clashes = finder.clashes(schedule, broken);
            return;
        }
        // No cook can. Whom that would leave without a cook is chance; who does it now is busy
        // with something that can be named.
        std::erase_if(broken, isOfHands);
        found.clashes = finder.clashes(schedule, broken);
        const Schedule byTheSame = assign(problem_, movedBy(by), sameCooks());
        std::vector<Broken> ofHands = check(problem_, byTheSame);
        std::erase_if(ofHands,
                      [&](const Broken& each) { return !isNew(each) || !isOfHands(each); });
        for (Clash& clash : finder.clashes(byTheSame, ofHands)) {
            found.clashes.push_back(std::move(clash));
        }
    }

    [[nodiscard]] static bool isOfHands(const Broken& broken)
    {
        return broken.kind == BrokenKind::Hands || broken.kind == BrokenKind::Cook;
    }

    [[nodiscard]] AssignmentPins sameCooks() const
    {
        AssignmentPins pins = assignmentPins(formulation_, *input_.layout);
        pins.cooks = plan_->schedule.cooks;
        return pins;
    }

    [[nodiscard]] Minutes along(Minutes step, Minutes free) const
    {
        LivePlan live(plan_, input_);
        const PlanTime start = *plan_->schedule.starts[answer_.task];
        Minutes furthest{0};
        for (Minutes by = step; !stop_.stop_requested() && furthest < furthestAlong; by += step) {
            const std::vector<Clash>& clashes = live.move(answer_.task, start + by);
            const bool isThere = live.schedule().starts[answer_.task] == start + by;
            if (!isThere || std::ranges::any_of(clashes, [&](const Clash& clash) {
                    return std::ranges::any_of(clash.broken, [&](const std::string& name) {
                        return !brokenNow_.contains(name);
                    });
                })) {
                break;
            }
            furthest += Minutes{1};
        }
        return std::max(furthest, free);
    }

    PlanPtr plan_;
    const PlanInput& input_;
    const Formulation& formulation_;
    const Problem& problem_;
    std::stop_token stop_;
    std::set<std::string> brokenNow_;
    WhyHere answer_;
};

} // namespace

WhyHere whyHere(const PlanPtr& plan, const PlanInput& input, TaskIndex task,
                const std::stop_token& stop)
{
    return Asking(plan, input, task, stop).ask();
}

} // namespace suppertide
