// The formulas of SecondReading, by the parts of the format. Private to this folder.
#pragma once

#include <z3++.h>

#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "tests/core/planner/oracle/second_reading.h"

namespace suppertide::test {

struct SecondReading::Formulas
{
    explicit Formulas(const Problem& problem);

    /// More than any tiny problem costs, and far from the end of the words.
    static constexpr std::int64_t mostCost = 200'000;

    void addTasks(); // choices, windows, lags
    void addCounts();
    void addPools();
    void addHands();
    void addOvens();
    void addCosts();

    struct Undecided : std::runtime_error
    {
        Undecided() : std::runtime_error("not decided in so many steps") {}
    };
    /// The cost of some schedule that costs no more; absent: there is none.
    [[nodiscard]] std::optional<std::int64_t> costOfAtMost(std::int64_t most);

private:
    using Expr = z3::expr;

    /// From one point to another; `held` if all its tasks are present and it has a length.
    struct Span
    {
        Expr counts;
        Expr from;
        Expr to;
        Expr held;
        [[nodiscard]] Expr covers(const Expr& minute) const
        {
            return held && from <= minute && minute < to;
        }
        [[nodiscard]] Expr meets(const Span& other) const
        {
            return held && other.held && from < other.to && other.from < to;
        }
    };
    /// An oven at each minute.
    struct Heat
    {
        std::vector<Expr> on;
        std::vector<Expr> setting; // °C; while it is off, the last one
        std::vector<Expr> warmth;  // in units of `perDegree` a degree; one minute more
        std::int64_t perDegree = 1;
    };

    [[nodiscard]] Expr number(std::int64_t value);
    [[nodiscard]] Expr newNumber();
    [[nodiscard]] Expr newBool();
    [[nodiscard]] Expr yes(bool value) { return context_.bool_val(value); }
    [[nodiscard]] Expr ifElse(const Expr& condition, const Expr& then, std::int64_t otherwise);
    [[nodiscard]] Expr sumOf(const std::vector<Expr>& terms);
    void exactlyOne(const Expr& condition, const std::vector<Expr>& bools);
    void capped(const std::vector<std::pair<Span, std::int64_t>>& uses, std::int64_t capacity);
    [[nodiscard]] Expr time(const TaskPoint& point);
    [[nodiscard]] Span span(const TaskPoint& from, const TaskPoint& to);
    [[nodiscard]] Span spanOf(TaskIndex task);
    /// So many units, none of them negative, at a rate each.
    void charge(const Expr& condition, const Expr& units, std::int64_t rate);
    void charge(const Expr& condition, std::int64_t amount)
    {
        charge(condition, number(1), amount);
    }

    void addLag(const Lag& lag);
    void addCook(CookIndex cook);
    void addHeat(const Oven& oven);
    void addStay(OvenDemandIndex index);
    void addModes();
    void addQuiet(const Quiet& quiet);
    void addSessions(CookIndex cook);
    void addOvenCosts();

    const Problem* problem_;
    std::int64_t horizon_;
    z3::context context_;
    z3::solver solver_;
    int names_ = 0;
    IndexedVector<ChoiceIndex, std::vector<Expr>> options_;
    IndexedVector<TaskIndex, Expr> present_;
    IndexedVector<TaskIndex, Expr> start_;
    IndexedVector<CookIndex, std::vector<Expr>> does_; // by task
    std::vector<Heat> heats_;
    std::vector<Span> stays_;
    IndexedVector<OvenDemandIndex, std::vector<Expr>> inside_; // by oven
    std::vector<Expr> costs_;
};

} // namespace suppertide::test
