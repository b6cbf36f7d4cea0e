#include "tests/core/planner/oracle/formulas.h"

namespace suppertide::test {

void SecondReading::Formulas::addCosts()
{
    const Costs& costs = problem_->costs;
    for (const ChoiceIndex choice : problem_->choices.indices()) {
        for (const OptionIndex option : problem_->choices[choice].options.indices()) {
            charge(options_[choice][option.value()],
                   problem_->choices[choice].options[option].cost);
        }
    }
    for (const Quiet& quiet : costs.quiet) {
        addQuiet(quiet);
    }
    for (const CookIndex cook : problem_->cooks.indices()) {
        addSessions(cook);
    }
    for (const BeforeStart& before : costs.before) {
        const Expr later = start_[before.task] - number(minuteOf(before.start));
        const Expr moved = z3::ite(later >= number(0), later, -later);
        charge(present_[before.task], moved, costs.beforeRate);
        charge(present_[before.task] && moved != number(0), costs.beforeMoved);
    }
    addOvenCosts();
}

void SecondReading::Formulas::addQuiet(const Quiet& quiet)
{
    const Expr applies = quiet.before ? present_[*quiet.before] : yes(true);
    const Expr to = quiet.before ? start_[*quiet.before] : number(minuteOf(quiet.when.end));
    const Expr from =
        quiet.before ? to - number(quiet.minutes.count()) : number(minuteOf(quiet.when.start));
    for (const TaskIndex index : problem_->tasks.indices()) {
        const auto& hands = problem_->tasks[index].hands;
        if (!hands) {
            continue;
        }
        const Span work = spanOf(index);
        const Expr first = z3::ite(work.from >= from, work.from, from);
        const Expr last = z3::ite(work.to <= to, work.to, to);
        charge(applies && present_[index] && first < last, last - first,
               quiet.rate * hands->attention.percent() * hands->cooks);
    }
}

/// A task begins a session if all that its cook began before it (of those that begin at once, the
/// one that stands first) has ended more than the gap before.
void SecondReading::Formulas::addSessions(CookIndex cook)
{
    const Costs& costs = problem_->costs;
    const auto& does = does_[cook];
    for (std::size_t i = 0; i < does.size(); ++i) {
        const Span own = spanOf(TaskIndex{i});
        Expr begins = does[i];
        for (std::size_t j = 0; j < does.size(); ++j) {
            if (i == j) {
                continue;
            }
            const Span other = spanOf(TaskIndex{j});
            const Expr earlier = j < i ? other.from <= own.from : other.from < own.from;
            begins = begins && z3::implies(does[j] && earlier,
                                           other.to + number(costs.sessionGap.count()) < own.from);
        }
        charge(begins, costs.session);
    }
}

} // namespace suppertide::test
