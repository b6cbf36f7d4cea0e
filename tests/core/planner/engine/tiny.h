// Tiny: a few variables with few values, whose solutions under some constraints can be counted one
// by one, and by the engine.
#pragma once

#include <functional>
#include <vector>

#include "core/planner/engine/search.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::engine::test {

using suppertide::test::Random;
using Values = std::vector<Bound>; // of the variables, by index

class Tiny
{
public:
    /// So many variables of 0…5 or so, and so many Booleans behind them.
    Tiny(Random& random, std::size_t integers, std::size_t booleans);

    [[nodiscard]] Engine& engine() { return engine_; }
    [[nodiscard]] Variable any(Random& random) const;
    [[nodiscard]] Term anyTerm(Random& random) const;
    [[nodiscard]] Literal anyBoolean(Random& random) const;
    /// What the engine has been told, once more in plain words.
    void must(std::function<bool(const Values&)> holds) { checks_.push_back(std::move(holds)); }

    [[nodiscard]] std::vector<Values> solutionsByHand() const;
    /// The engine finds each of these once and nothing else, and on the way nothing that it
    /// explains or learns rules one of them out.
    void expectByEngine(std::vector<Values> expected, bool byActivity);

private:
    void know(const std::vector<Values>& solutions);
    [[nodiscard]] bool keeps(const Values& values) const;

    Engine engine_;
    std::vector<Variable> integers_;
    std::vector<Variable> booleans_;
    std::vector<Bound> least_;
    std::vector<Bound> most_;
    std::vector<std::function<bool(const Values&)>> checks_;
};

[[nodiscard]] Bound valueOf(const Values& values, const Term& term);
[[nodiscard]] bool holds(const Values& values, Literal literal);

} // namespace suppertide::engine::test
