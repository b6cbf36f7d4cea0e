#include "core/planner/exact/session_counts.h"

#include <algorithm>

#include "core/planner/exact/reading.h"

namespace suppertide::exact {

namespace {

struct Job
{
    Term from;
    Term to;
    Literal mine;
    Bound start = 0;
    Bound end = 0;
};

/// Of one cook, in order of start; and what says that all others are done by somebody else.
struct Work
{
    std::vector<Job> jobs;
    Literals others;
};

Work workOf(const Model& model, const std::vector<Bound>& values, CookIndex cook)
{
    Work work;
    const auto valueOf = [&](const Term& term) { return values[term.variable.index] + term.plus; };
    for (const TaskIndex task : model.problem().tasks.indices()) {
        for (const auto& [candidate, mine] : model.cooks[task]) {
            if (candidate != cook) {
                continue;
            }
            if (!holds(values, mine)) {
                work.others.push_back(mine);
                continue;
            }
            const Term from = model.point({task, Edge::Start});
            const Term to = model.point({task, Edge::End});
            work.jobs.push_back({from, to, mine, valueOf(from), valueOf(to)});
        }
    }
    std::ranges::stable_sort(work.jobs, {}, &Job::start);
    return work;
}

} // namespace

std::vector<Literals> sessionsLeftOut(const Model& model, const std::vector<Bound>& values)
{
    std::vector<Literals> clauses;
    const std::int64_t gap = model.problem().costs.sessionGap.count();
    for (const CookIndex cook : model.sessions.indices()) {
        const auto& sessions = model.sessions[cook];
        if (!sessions) {
            continue;
        }
        const Work work = workOf(model, values, cook);
        Literals clause = work.others;
        Bound count = 0;
        for (auto first = work.jobs.begin(); first != work.jobs.end(); ++count) {
            Bound end = first->end;
            auto next = first;
            for (; next != work.jobs.end() && next->start <= end + gap; ++next) {
                end = std::max(end, next->end);
            }
            for (auto job = first; job != next; ++job) { // anywhere within the session
                clause.push_back(~job->mine);
                clause.push_back(~engine::atLeast(job->from, first->start));
                clause.push_back(~engine::atMost(job->to, end));
            }
            first = next;
        }
        if (count > values[sessions->index]) {
            clause.push_back(engine::atLeast(*sessions, count));
            clauses.push_back(std::move(clause));
        }
    }
    return clauses;
}

} // namespace suppertide::exact
