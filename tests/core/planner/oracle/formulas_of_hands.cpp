#include <algorithm>

#include "tests/core/planner/oracle/formulas.h"

namespace suppertide::test {

void SecondReading::Formulas::addHands()
{
    for (const CookIndex cook : problem_->cooks.indices()) {
        does_.push_back({});
        for (const TaskIndex task : problem_->tasks.indices()) {
            does_[cook].push_back(problem_->tasks[task].needsCooks() ? newBool() : yes(false));
        }
        addCook(cook);
    }
    for (const TaskIndex task : problem_->tasks.indices()) {
        if (!problem_->tasks[task].needsCooks()) {
            continue;
        }
        std::vector<Expr> cooks;
        for (const CookIndex cook : problem_->cooks.indices()) {
            const Expr& does = does_[cook][task.value()];
            solver_.add(z3::implies(does, present_[task]));
            cooks.push_back(ifElse(does, number(1), 0));
        }
        solver_.add(z3::implies(present_[task],
                                sumOf(cooks) == number(problem_->tasks[task].hands->cooks)));
    }
}

void SecondReading::Formulas::addCook(CookIndex index)
{
    const Cook& cook = problem_->cooks[index];
    std::vector<std::pair<Span, std::int64_t>> work;
    for (const TaskIndex taskIndex : problem_->tasks.indices()) {
        const Task& task = problem_->tasks[taskIndex];
        if (!task.needsCooks()) {
            continue;
        }
        const Expr& does = does_[index][taskIndex.value()];
        Span own = spanOf(taskIndex);
        own.held = does;
        work.emplace_back(own, task.hands->attention.percent());
        const auto& skill = task.hands->skill;
        if (skill && std::count(cook.skills.begin(), cook.skills.end(), *skill) == 0) {
            solver_.add(!does);
        }
        Expr isFree = yes(false);
        for (const Interval& free : cook.free) {
            isFree = isFree || (number(minuteOf(free.start)) <= own.from &&
                                own.to <= number(minuteOf(free.end)));
        }
        solver_.add(z3::implies(does, isFree));
        if (task.atTable) {
            continue;
        }
        for (const Interval& table : cook.table) {
            solver_.add(z3::implies(does, own.to <= number(minuteOf(table.start)) ||
                                              own.from >= number(minuteOf(table.end))));
        }
        for (const TableAfter& after : cook.tableAfter) {
            const Expr& sits = start_[after.event];
            const Expr rises = sits + number(after.minutes.count());
            solver_.add(z3::implies(does && present_[after.event] && sits < rises,
                                    own.to <= sits || own.from >= rises));
        }
    }
    capped(work, 100);
}

} // namespace suppertide::test
