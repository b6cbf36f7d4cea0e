#include <algorithm>

#include "core/planner/engine/linear.h"
#include "core/planner/engine/session_starts.h"
#include "core/planner/exact/parts.h"

namespace suppertide::exact {

namespace {

using engine::CooksJob;

/// As many at least as of these hold.
void countAtLeast(Model& model, Variable sessions, const Literals& each)
{
    std::vector<engine::WeightedView> terms{{sessions.minus(), 1}};
    for (const Literal literal : each) {
        terms.push_back({literal.variable().plus(), 1});
    }
    engine::LinearPropagator::post(model.engine(), std::move(terms), 0);
}

/// Times of a cook between which nobody could go on with what was begun before:
///
///     free       [--------]  [------]            [-------------]
///     stretches  [-----------------]             [-------------]   more than the gap between them
std::vector<Interval> freeStretches(const Cook& cook, Minutes gap)
{
    std::vector<Interval> result;
    for (const Interval& free : cook.free) {
        if (!result.empty() && free.start - result.back().end <= gap) {
            result.back().end = std::max(result.back().end, free.end);
        } else {
            result.push_back(free);
        }
    }
    return result;
}

/// One for each stretch, that holds if the cook works in it: there is a session in each such one.
Literals stretchesUsed(Model& model, const std::vector<CooksJob>& jobs,
                       const std::vector<Interval>& stretches)
{
    Literals used;
    for (const Interval& stretch : stretches) {
        const auto from = static_cast<Bound>(minuteOf(stretch.start));
        const auto to = static_cast<Bound>(minuteOf(stretch.end));
        const Literal works = engine::isTrue(model.engine().newBoolean());
        for (const CooksJob& job : jobs) {
            model.engine().addClause({~job.mine, engine::atMost(job.from, from - 1),
                                      engine::atLeast(job.from, to), works});
        }
        used.push_back(works);
    }
    return used;
}

} // namespace

void addSessions(Model& model)
{
    const Problem& problem = model.problem();
    if (problem.costs.session == 0) {
        return;
    }
    std::vector<std::vector<CooksJob>> byCook(problem.cooks.size());
    for (const TaskIndex task : problem.tasks.indices()) {
        for (const auto& [cook, mine] : model.cooks[task]) {
            if (!model.isNever(mine)) {
                byCook[cook.value()].push_back({model.point({task, Edge::Start}),
                                                model.point({task, Edge::End}), mine,
                                                engine::isTrue(model.engine().newBoolean())});
            }
        }
    }
    for (const CookIndex cook : problem.cooks.indices()) {
        const std::vector<CooksJob>& jobs = byCook[cook.value()];
        if (jobs.empty()) {
            continue;
        }
        const Variable sessions = model.engine().newVariable(0, static_cast<Bound>(jobs.size()));
        model.implies(model.works[cook], {engine::atLeast(sessions, 1)});
        const auto stretches = freeStretches(problem.cooks[cook], problem.costs.sessionGap);
        countAtLeast(model, sessions, stretchesUsed(model, jobs, stretches));
        Literals begins;
        for (const CooksJob& job : jobs) {
            begins.push_back(job.begins);
        }
        model.implies(model.works[cook], begins);
        countAtLeast(model, sessions, begins);
        // A longer pause than the whole ends nothing either.
        const Minutes gap = std::min(problem.costs.sessionGap, problem.horizon - PlanTime{});
        engine::SessionStartsPropagator::post(model.engine(), jobs, gap.count());
        model.charge(sessions, problem.costs.session);
    }
}

} // namespace suppertide::exact
