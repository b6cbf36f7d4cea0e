#include "tests/core/planner/oracle/formulas.h"

#include <algorithm>

#include "core/base/contracts.h"

namespace suppertide::test {

namespace {

constexpr unsigned bits = 10;       // of minutes, amounts and temperatures: ± 511
constexpr unsigned bitsOfCost = 20; // ± half a million
constexpr unsigned mostSteps = 3'000'000;

} // namespace

SecondReading::Formulas::Formulas(const Problem& problem)
    : problem_(&problem), horizon_(minuteOf(problem.horizon)),
      solver_((z3::tactic(context_, "simplify") & z3::tactic(context_, "propagate-values") &
               z3::tactic(context_, "bit-blast") & z3::tactic(context_, "sat"))
                  .mk_solver())
{
    z3::params limits(context_);
    limits.set("rlimit", mostSteps);
    solver_.set(limits);
}

z3::expr SecondReading::Formulas::number(std::int64_t value)
{
    expects(std::abs(value) < 512, "numbers of tiny problems are small");
    return context_.bv_val(value, bits);
}

z3::expr SecondReading::Formulas::newNumber()
{
    return context_.bv_const(("n" + std::to_string(names_++)).c_str(), bits);
}

z3::expr SecondReading::Formulas::newBool()
{
    return context_.bool_const(("b" + std::to_string(names_++)).c_str());
}

z3::expr SecondReading::Formulas::ifElse(const Expr& condition, const Expr& then,
                                         std::int64_t otherwise)
{
    return z3::ite(condition, then, number(otherwise));
}

z3::expr SecondReading::Formulas::sumOf(const std::vector<Expr>& terms)
{
    Expr sum = number(0);
    for (const Expr& term : terms) {
        sum = sum + term;
    }
    return sum;
}

/// None if the condition does not hold.
void SecondReading::Formulas::exactlyOne(const Expr& condition, const std::vector<Expr>& bools)
{
    Expr any = yes(false);
    for (std::size_t i = 0; i < bools.size(); ++i) {
        any = any || bools[i];
        solver_.add(z3::implies(bools[i], condition));
        for (std::size_t j = 0; j < i; ++j) {
            solver_.add(!(bools[i] && bools[j]));
        }
    }
    solver_.add(z3::implies(condition, any));
}

/// At every minute what is in use adds up to no more than the capacity.
void SecondReading::Formulas::capped(const std::vector<std::pair<Span, std::int64_t>>& uses,
                                     std::int64_t capacity)
{
    for (std::int64_t minute = 0; minute < horizon_; ++minute) {
        std::vector<Expr> load;
        for (const auto& [use, amount] : uses) {
            load.push_back(ifElse(use.covers(number(minute)), number(amount), 0));
        }
        solver_.add(sumOf(load) <= number(capacity));
    }
}

z3::expr SecondReading::Formulas::time(const TaskPoint& point)
{
    const std::int64_t duration = problem_->tasks[point.task].duration.count();
    return start_[point.task] + number(point.edge == Edge::End ? duration : 0);
}

SecondReading::Formulas::Span SecondReading::Formulas::span(const TaskPoint& from,
                                                            const TaskPoint& to)
{
    const Expr counts = present_[from.task] && present_[to.task];
    const Expr begin = time(from);
    const Expr end = time(to);
    return {counts, begin, end, counts && begin < end};
}

SecondReading::Formulas::Span SecondReading::Formulas::spanOf(TaskIndex task)
{
    return span({task, Edge::Start}, {task, Edge::End});
}

void SecondReading::Formulas::charge(const Expr& condition, const Expr& units, std::int64_t rate)
{
    expects(rate < mostCost / 512, "costs of tiny problems are small");
    if (rate > 0) {
        const Expr amount = z3::zext(units, bitsOfCost - bits) * context_.bv_val(rate, bitsOfCost);
        costs_.push_back(z3::ite(condition, amount, context_.bv_val(0, bitsOfCost)));
    }
}

void SecondReading::Formulas::addTasks()
{
    std::vector<Expr> present(problem_->tasks.size(), yes(true));
    for (const Choice& choice : problem_->choices) {
        std::vector<Expr> options;
        for (const Option& option : choice.options) {
            options.push_back(newBool());
            for (const TaskIndex task : option.tasks) {
                present[task.value()] = options.back();
            }
        }
        exactlyOne(yes(true), options);
        options_.push_back(options);
    }
    for (const TaskIndex index : problem_->tasks.indices()) {
        const Task& task = problem_->tasks[index];
        present_.push_back(present[index.value()]);
        start_.push_back(newNumber());
        solver_.add(start_[index] >= number(0) && start_[index] <= number(horizon_));
        solver_.add(
            z3::implies(present_[index], start_[index] >= number(minuteOf(task.window.start)) &&
                                             start_[index] + number(task.duration.count()) <=
                                                 number(minuteOf(task.window.end))));
    }
    for (const Lag& lag : problem_->lags) {
        addLag(lag);
    }
}

void SecondReading::Formulas::addLag(const Lag& lag)
{
    const Span between = span(lag.from, lag.to);
    const Expr gap = between.to - between.from;
    if (lag.min) {
        solver_.add(z3::implies(between.counts, gap >= number(lag.min->count())));
        charge(between.counts, gap - number(lag.min->count()), lag.loss);
    }
    if (lag.max) {
        solver_.add(z3::implies(between.counts, gap <= number(lag.max->count())));
    }
}

void SecondReading::Formulas::addCounts()
{
    for (const CountIndex count : problem_->counts.indices()) {
        std::vector<std::pair<Span, std::int64_t>> uses;
        for (const Demand& demand : problem_->demands) {
            if (demand.count == count) {
                uses.emplace_back(span(demand.from, demand.to), demand.amount);
            }
        }
        capped(uses, problem_->counts[count].capacity);
    }
}

void SecondReading::Formulas::addPools()
{
    struct Held
    {
        Span span;
        PoolIndex pool;
        std::vector<Expr> units;
    };
    std::vector<Held> all;
    for (const Demand& demand : problem_->demands) {
        if (!demand.pool) {
            continue;
        }
        Held held{span(demand.from, demand.to), *demand.pool, {}};
        for (const UnitIndex unit : problem_->pools[held.pool].units.indices()) {
            held.units.push_back(newBool());
            const bool listed =
                !demand.units ||
                std::find(demand.units->begin(), demand.units->end(), unit) != demand.units->end();
            if (!listed || problem_->pools[held.pool].units[unit].size < demand.minSize) {
                solver_.add(!held.units.back());
            }
        }
        exactlyOne(held.span.held, held.units);
        for (const Held& other : all) {
            for (std::size_t unit = 0; other.pool == held.pool && unit < held.units.size();
                 ++unit) {
                solver_.add(
                    !(held.units[unit] && other.units[unit] && held.span.meets(other.span)));
            }
        }
        all.push_back(held);
    }
}

std::optional<std::int64_t> SecondReading::Formulas::costOfAtMost(std::int64_t most)
{
    Expr cost = context_.bv_val(0, bitsOfCost);
    for (const Expr& each : costs_) {
        cost = cost + each;
    }
    solver_.push();
    solver_.add(z3::ule(cost, context_.bv_val(most, bitsOfCost)));
    const z3::check_result result = solver_.check();
    std::optional<std::int64_t> found;
    if (result == z3::sat) {
        const z3::model model = solver_.get_model();
        found = static_cast<std::int64_t>(model.eval(cost, true).get_numeral_uint64());
    }
    solver_.pop();
    if (result == z3::unknown) {
        throw Undecided();
    }
    return found;
}

} // namespace suppertide::test
