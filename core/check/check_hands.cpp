// Hands: has every task the cooks that it needs, are they able and free, and is no cook asked for
// more than all of their attention?
#include <algorithm>

#include "core/check/judges.h"
#include "core/check/overload.h"

namespace suppertide {

namespace {

/// Whom a task has, each once.
std::vector<CookIndex> differentCooks(std::vector<CookIndex> cooks)
{
    std::ranges::sort(cooks);
    cooks.erase(std::unique(cooks.begin(), cooks.end()), cooks.end());
    return cooks;
}

class HandsJudge
{
public:
    HandsJudge(const Evidence& evidence, TaskIndex task)
        : evidence_(&evidence), task_(task), what_(&evidence.problem().tasks[task]),
          when_(evidence.times().interval(task))
    {}

    Verdict judge()
    {
        const Schedule& schedule = evidence_->schedule();
        const std::vector<CookIndex>& cooks = schedule.cooks[task_];
        if (!evidence_->times().isPresent(task_)) {
            const auto& none = schedule.namedWithoutCooks;
            if (!cooks.empty() || std::ranges::find(none, task_) != none.end()) {
                fail(BrokenHow::NotPresent);
            }
            return std::move(verdict_);
        }
        if (!when_) {
            return {};
        }
        const auto number = static_cast<std::int64_t>(differentCooks(cooks).size());
        const std::int64_t needed = what_->needsCooks() ? what_->hands->cooks : 0;
        if (number != needed) {
            Broken& broken = fail(BrokenHow::WrongNumber);
            broken.asked = number;
            broken.allowed = needed;
        }
        if (what_->needsCooks()) {
            for (const CookIndex cook : differentCooks(cooks)) {
                judgeOne(cook);
            }
        }
        return std::move(verdict_);
    }

private:
    Broken& fail(BrokenHow how, std::optional<CookIndex> cook = {})
    {
        Broken& broken = verdict_.emplace_back();
        broken.kind = BrokenKind::Hands;
        broken.how = how;
        broken.id = what_->id;
        broken.tasks = {task_};
        broken.when = when_;
        broken.cook = cook;
        return broken;
    }

    void judgeOne(CookIndex index)
    {
        const Cook& cook = evidence_->problem().cooks[index];
        const auto& skill = what_->hands->skill;
        if (skill && std::ranges::find(cook.skills, *skill) == cook.skills.end()) {
            fail(BrokenHow::NoSkill, index);
        }
        if (std::ranges::none_of(cook.free,
                                 [this](const Interval& free) { return free.contains(*when_); })) {
            fail(BrokenHow::NotFree, index);
        }
        if (!what_->atTable) {
            judgeTable(index);
        }
    }

    void judgeTable(CookIndex index)
    {
        std::optional<Interval> first;
        for (const Interval& seated : evidence_->atTable(index)) {
            if (seated.overlaps(*when_)) {
                const Interval both = seated.common(*when_);
                first = std::min(first.value_or(both), both);
            }
        }
        if (first) {
            fail(BrokenHow::AtTable, index).when = first;
        }
    }

    const Evidence* evidence_;
    TaskIndex task_;
    const Task* what_;
    std::optional<Interval> when_;
    Verdict verdict_;
};

} // namespace

Verdict judgeHands(const Evidence& evidence, TaskIndex task)
{
    return HandsJudge(evidence, task).judge();
}

Verdict judgeCook(const Evidence& evidence, CookIndex cook)
{
    constexpr std::int64_t allOfOneCook = 100; // percent
    const Problem& problem = evidence.problem();
    std::vector<Use> uses;
    for (const TaskIndex task : problem.tasks.indices()) {
        const auto& cooks = evidence.schedule().cooks[task];
        const Task& what = problem.tasks[task];
        if (!what.needsCooks() || std::ranges::find(cooks, cook) == cooks.end()) {
            continue;
        }
        if (const auto when = evidence.times().interval(task)) {
            uses.push_back({*when, what.hands->attention.percent(), {task}, {task}});
        }
    }
    Verdict verdict;
    for (const Overload& overload : overloads(uses, allOfOneCook)) {
        Broken broken{BrokenKind::Cook, BrokenHow::Overloaded, problem.cooks[cook].id};
        broken.tasks = evidence.inOrderOfStart(tasksDuring(uses, overload.when));
        broken.when = overload.when;
        broken.asked = overload.most;
        broken.allowed = allOfOneCook;
        broken.cook = cook;
        verdict.push_back(std::move(broken));
    }
    return verdict;
}

} // namespace suppertide
