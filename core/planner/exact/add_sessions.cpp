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

/// One of the others begins no later (earlier, if it is named later, so that no two tasks excuse
/// each other) and ends late enough for the task to go on in its session.
void countStarts(Model& model, const std::vector<Job>& jobs, std::int64_t gap, std::int64_t cost)
{
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
        model.charge(begins, cost);
    }
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
    for (const std::vector<Job>& jobs : byCook) {
        if (jobs.empty()) {
            continue;
        }
        if (jobs.size() * jobs.size() <= mostPairs) {
            countStarts(model, jobs, problem.costs.sessionGap.count(), problem.costs.session);
            continue;
        }
        const Literal any = engine::isTrue(model.engine().newBoolean());
        for (const Job& job : jobs) {
            model.implies(job.mine, {any});
        }
        model.charge(any, problem.costs.session);
    }
}

} // namespace suppertide::exact
