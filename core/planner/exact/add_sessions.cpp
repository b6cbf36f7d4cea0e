#include <algorithm>

#include "core/planner/engine/linear.h"
#include "core/planner/exact/parts.h"

namespace suppertide::exact {

namespace {

/// Beyond so many pairs of tasks of one cook a session is counted for each free stretch alone, and
/// the others as the search comes upon them (session_counts.h).
constexpr std::size_t mostPairs = 1600;

struct Job
{
    Term from;
    Term to;
    Literal mine;
};

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
Literals stretchesUsed(Model& model, const std::vector<Job>& jobs,
                       const std::vector<Interval>& stretches)
{
    Literals used;
    for (const Interval& stretch : stretches) {
        const auto from = static_cast<Bound>(minuteOf(stretch.start));
        const auto to = static_cast<Bound>(minuteOf(stretch.end));
        const Literal works = engine::isTrue(model.engine().newBoolean());
        for (const Job& job : jobs) {
            model.engine().addClause({~job.mine, engine::atMost(job.from, from - 1),
                                      engine::atLeast(job.from, to), works});
        }
        used.push_back(works);
    }
    return used;
}

/// One of the others begins no later (earlier, if it is named later, so that no two tasks excuse
/// each other) and ends late enough for the task to go on in its session.
Literals startsOf(Model& model, const std::vector<Job>& jobs, std::int64_t gap)
{
    Literals all;
    const auto& trail = model.engine().trail();
    for (std::size_t i = 0; i < jobs.size(); ++i) {
        Literals goesOn;
        for (std::size_t j = 0; j < jobs.size(); ++j) {
            const std::int64_t earlier = j > i ? 1 : 0;
            const bool possible = j != i &&
                                  trail.least(jobs[j].from) + earlier <= trail.most(jobs[i].from) &&
                                  trail.most(jobs[j].to) + gap >= trail.least(jobs[i].from);
            if (!possible) {
                continue;
            }
            const Literal after = engine::isTrue(model.boolean(jobs[j].mine));
            model.edge(jobs[j].from, jobs[i].from, earlier, after);
            model.edge(jobs[i].from, jobs[j].to, -gap, after);
            goesOn.push_back(after);
        }
        const Literal begins = engine::isTrue(model.engine().newBoolean());
        goesOn.push_back(begins);
        model.implies(jobs[i].mine, goesOn);
        all.push_back(begins);
    }
    return all;
}

} // namespace

void addSessions(Model& model)
{
    const Problem& problem = model.problem();
    if (problem.costs.session == 0) {
        return;
    }
    std::vector<std::vector<Job>> byCook(problem.cooks.size());
    for (const TaskIndex task : problem.tasks.indices()) {
        for (const auto& [cook, mine] : model.cooks[task]) {
            if (!model.isNever(mine)) {
                byCook[cook.value()].push_back(
                    {model.point({task, Edge::Start}), model.point({task, Edge::End}), mine});
            }
        }
    }
    for (const CookIndex cook : problem.cooks.indices()) {
        const std::vector<Job>& jobs = byCook[cook.value()];
        model.sessions.push_back(std::nullopt);
        if (jobs.empty()) {
            continue;
        }
        const Variable sessions = model.engine().newVariable(0, static_cast<Bound>(jobs.size()));
        model.implies(model.works[cook], {engine::atLeast(sessions, 1)});
        const auto stretches = freeStretches(problem.cooks[cook], problem.costs.sessionGap);
        countAtLeast(model, sessions, stretchesUsed(model, jobs, stretches));
        if (jobs.size() * jobs.size() <= mostPairs) {
            const Literals begins = startsOf(model, jobs, problem.costs.sessionGap.count());
            model.implies(model.works[cook], begins);
            countAtLeast(model, sessions, begins);
        }
        model.sessions[cook] = sessions;
        model.charge(sessions, problem.costs.session);
    }
}

} // namespace suppertide::exact
