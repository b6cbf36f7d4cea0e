#include "tests/core/planner/engine/tiny.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace suppertide::engine::test {

Bound valueOf(const Values& values, const Term& term)
{
    return values[term.variable.index] + term.plus;
}

bool holds(const Values& values, Literal literal)
{
    const Bound value = values[literal.variable().index];
    return ((literal.view & 1U) == 0 ? value : -value) <= literal.bound;
}

Tiny::Tiny(Random& random, std::size_t integers, std::size_t booleans)
{
    engine_.audit();
    for (std::size_t i = 0; i < integers + booleans; ++i) {
        const bool integer = i < integers;
        least_.push_back(integer ? static_cast<Bound>(random.between(-2, 1)) : 0);
        most_.push_back(integer ? least_.back() + static_cast<Bound>(random.between(0, 5)) : 1);
        (integer ? integers_ : booleans_)
            .push_back(engine_.newVariable(least_.back(), most_.back()));
    }
}

Variable Tiny::any(Random& random) const
{
    return integers_[static_cast<std::size_t>(
        random.between(0, static_cast<std::int64_t>(integers_.size()) - 1))];
}

Term Tiny::anyTerm(Random& random) const
{
    return {any(random), static_cast<Bound>(random.between(-1, 2))};
}

Literal Tiny::anyBoolean(Random& random) const
{
    const Variable boolean = booleans_[static_cast<std::size_t>(
        random.between(0, static_cast<std::int64_t>(booleans_.size()) - 1))];
    return random.oneIn(2) ? isTrue(boolean) : isFalse(boolean);
}

bool Tiny::keeps(const Values& values) const
{
    return std::all_of(checks_.begin(), checks_.end(),
                       [&](const auto& check) { return check(values); });
}

std::vector<Values> Tiny::solutionsByHand() const
{
    std::vector<Values> solutions;
    Values values = least_;
    while (true) {
        if (keeps(values)) {
            solutions.push_back(values);
        }
        std::size_t i = 0;
        while (i < values.size() && values[i] == most_[i]) {
            values[i] = least_[i];
            ++i;
        }
        if (i == values.size()) {
            return solutions;
        }
        ++values[i];
    }
}

/// A few of them, spread evenly, are enough to look at each time.
void Tiny::know(const std::vector<Values>& solutions)
{
    constexpr std::size_t most = 16;
    const std::size_t stride = solutions.size() / most + 1;
    std::vector<Values> some;
    for (std::size_t i = 0; i < solutions.size(); i += stride) {
        some.push_back(solutions[i]);
    }
    engine_.audit().know(std::move(some));
}

void Tiny::expectByEngine(std::vector<Values> expected, bool byActivity)
{
    const auto firstOpen = [this](const Trail& trail) -> std::optional<Literal> {
        for (std::uint32_t i = 0; i < least_.size(); ++i) {
            if (!trail.isFixed({i})) {
                const Bound middle = (trail.least(Variable{i}) + trail.most(Variable{i}) - 1) / 2;
                return atMost(Variable{i}, std::max(middle, trail.least(Variable{i})));
            }
        }
        return std::nullopt;
    };
    Search search(engine_, firstOpen, [](std::int64_t) { return true; });
    std::sort(expected.begin(), expected.end());
    know(expected);
    while (search.run({}, {1'000'000, byActivity}) == Search::End::Found) {
        const auto found = std::lower_bound(expected.begin(), expected.end(), search.values());
        ASSERT_TRUE(found != expected.end() && *found == search.values())
            << "no solution, or one that was found before";
        expected.erase(found);
        know(expected); // the clause to come rules it out
        Literals other;
        for (std::uint32_t i = 0; i < least_.size(); ++i) {
            other.push_back(atMost(Variable{i}, search.values()[i] - 1));
            other.push_back(atLeast(Variable{i}, search.values()[i] + 1));
        }
        engine_.addClause(std::move(other));
    }
    EXPECT_TRUE(engine_.isInfeasible());
    EXPECT_EQ(expected.size(), 0U) << "solutions that the engine does not find";
}

} // namespace suppertide::engine::test
