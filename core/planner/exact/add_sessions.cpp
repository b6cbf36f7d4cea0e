#include "core/planner/engine/linear.h"
#include "core/planner/exact/parts.h"

namespace suppertide::exact {

namespace {

/// Beyond so many pairs of tasks of one cook only the first session of each cook is counted.
constexpr std::size_t mostPairs = 1600;

struct Job
{
    Term from;
    Term to;
    Literal mine;
};

/// At least one if the cook works at all, and as many as begin.
Variable countSessions(Model& model, Literal works, const Literals& begins)
{
    const Variable sessions = model.engine().newVariable(0, static_cast<Bound>(begins.size()));
    model.implies(works, {engine::atLeast(sessions, 1)});
    model.implies(works, begins);
    std::vector<engine::WeightedView> terms{{sessions.minus(), 1}};
    for (const Literal begin : begins) {
        terms.push_back({begin.variable().plus(), 1});
    }
    engine::LinearPropagator::post(model.engine(), std::move(terms), 0);
    return sessions;
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
        if (jobs.empty()) {
            continue;
        }
        if (jobs.size() * jobs.size() <= mostPairs) {
            const Literals begins = startsOf(model, jobs, problem.costs.sessionGap.count());
            model.charge(countSessions(model, model.works[cook], begins), problem.costs.session);
            continue;
        }
        model.charge(model.works[cook], problem.costs.session);
    }
}

} // namespace suppertide::exact
