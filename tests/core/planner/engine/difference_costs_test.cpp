// What gaps cost at least, against the cheapest values found by trying all of them, while things
// are decided and taken back.
#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "core/planner/engine/audit.h"
#include "core/planner/engine/difference_costs.h"
#include "tests/core/planner/engine/tiny.h"

namespace suppertide::engine {

namespace {

using suppertide::test::forEachSeed;
using test::Random;

constexpr std::size_t integers = 4;
constexpr std::size_t booleans = 4;
constexpr Bound plenty = 100'000;

struct Edge
{
    Term from;
    Term to;
    Bound least = 0;
    std::optional<Literal> enabler;
};

/// A few variables with edges and priced gaps among them.
class Case
{
public:
    explicit Case(Random& random)
    {
        for (std::size_t i = 0; i < integers; ++i) {
            const auto least = static_cast<Bound>(random.between(-2, 2));
            variables_.push_back(
                engine_.newVariable(least, least + static_cast<Bound>(random.between(0, 7))));
        }
        for (std::size_t i = 0; i < booleans; ++i) {
            booleans_.push_back(engine_.newBoolean());
        }
        for (std::int64_t i = random.between(1, 7); i > 0; --i) {
            Edge edge{anyTerm(random), anyTerm(random), static_cast<Bound>(random.between(-4, 3)),
                      std::nullopt};
            if (!random.oneIn(4)) {
                edge.enabler = anyBoolean(random);
            }
            engine_.addEdge(edge.from, edge.to, edge.least, edge.enabler);
            edges_.push_back(edge);
        }
        for (std::int64_t i = random.between(1, 5); i > 0; --i) {
            gaps_.push_back(
                {anyTerm(random), anyTerm(random), random.between(0, 4), anyBoolean(random)});
        }
        total_ = engine_.newVariable(0, plenty);
        engine_.audit();
        costs_ = &DifferenceCosts::post(engine_, gaps_, {total_, 0});
    }

    Engine& engine() { return engine_; }
    [[nodiscard]] Bound least() const { return engine_.trail().least(total_); }

    /// Of all values within the bounds that keep the edges in force; absent: none does.
    [[nodiscard]] std::optional<std::int64_t> cheapest() const
    {
        const Trail& trail = engine_.trail();
        std::optional<std::int64_t> best;
        std::vector<Bound> values;
        for (const Variable variable : variables_) {
            values.push_back(trail.least(variable));
        }
        while (true) {
            if (keepsEdges(values)) {
                best = std::min(best.value_or(std::numeric_limits<std::int64_t>::max()),
                                costOf(values));
            }
            std::size_t i = 0;
            while (i < values.size() && values[i] == trail.most(variables_[i])) {
                values[i] = trail.least(variables_[i]);
                ++i;
            }
            if (i == values.size()) {
                return best;
            }
            ++values[i];
        }
    }

    /// Of something that is not settled; absent: all is.
    [[nodiscard]] std::optional<Literal> anyOpen(Random& random) const
    {
        std::vector<Literal> open;
        for (const Variable boolean : booleans_) {
            if (!engine_.trail().isFixed(boolean)) {
                open.push_back(random.oneIn(2) ? isTrue(boolean) : isFalse(boolean));
            }
        }
        for (const Variable variable : variables_) {
            const Bound least = engine_.trail().least(variable);
            const Bound most = engine_.trail().most(variable);
            if (least < most) {
                const auto at = static_cast<Bound>(random.between(least, most - 1));
                open.push_back(random.oneIn(2) ? atMost(variable, at) : atLeast(variable, at + 1));
            }
        }
        if (open.empty()) {
            return std::nullopt;
        }
        return open[static_cast<std::size_t>(
            random.between(0, static_cast<std::int64_t>(open.size()) - 1))];
    }

private:
    [[nodiscard]] Term anyTerm(Random& random) const
    {
        return {variables_[static_cast<std::size_t>(
                    random.between(0, static_cast<std::int64_t>(variables_.size()) - 1))],
                static_cast<Bound>(random.between(-1, 2))};
    }
    [[nodiscard]] Literal anyBoolean(Random& random) const
    {
        const Variable boolean = booleans_[static_cast<std::size_t>(
            random.between(0, static_cast<std::int64_t>(booleans_.size()) - 1))];
        return random.oneIn(2) ? isTrue(boolean) : isFalse(boolean);
    }
    [[nodiscard]] Bound valueOf(const std::vector<Bound>& values, const Term& term) const
    {
        return values[term.variable.index] + term.plus; // they are the engine's first
    }
    [[nodiscard]] bool keepsEdges(const std::vector<Bound>& values) const
    {
        return std::ranges::all_of(edges_, [&](const Edge& edge) {
            return (edge.enabler && !engine_.trail().holds(*edge.enabler)) ||
                   valueOf(values, edge.to) >= valueOf(values, edge.from) + edge.least;
        });
    }
    [[nodiscard]] std::int64_t costOf(const std::vector<Bound>& values) const
    {
        std::int64_t sum = 0;
        for (const PricedGap& gap : gaps_) {
            if (engine_.trail().holds(gap.onlyIf)) {
                sum += gap.price * std::max(0, valueOf(values, gap.to) - valueOf(values, gap.from));
            }
        }
        return sum;
    }

    Engine engine_;
    std::vector<Variable> variables_;
    std::vector<Variable> booleans_;
    std::vector<Edge> edges_;
    std::vector<PricedGap> gaps_;
    Variable total_;
    const DifferenceCosts* costs_ = nullptr;
};

/// As the constraints are differences, whole values are as cheap as any.
TEST(DifferenceCosts, AreTheLeastThatAnyValuesCost)
{
    int compared = 0;
    forEachSeed(2000, [&](Random& random) {
        Case one(random);
        for (int move = 0; move < 12; ++move) {
            if (!one.engine().propagate()) {
                if (one.engine().trail().level() == 0) {
                    return;
                }
                one.engine().backTo(one.engine().trail().level() - 1);
                continue;
            }
            const auto cheapest = one.cheapest();
            ASSERT_TRUE(cheapest) << "the edges keep bounds that some values keep";
            ASSERT_EQ(one.least(), *cheapest);
            ++compared;
            const auto open = one.anyOpen(random);
            if (open && !random.oneIn(4)) {
                one.engine().decide(*open);
            } else if (one.engine().trail().level() > 0) {
                one.engine().backTo(
                    static_cast<std::int32_t>(random.between(0, one.engine().trail().level() - 1)));
            }
        }
    });
    EXPECT_GT(compared, 10'000);
}

/// Bread 30 minutes before the soup, which takes 20 before the gravy; each has a time of its own.
TEST(DifferenceCosts, AddUpAlongAChain)
{
    Engine engine;
    const Variable one = engine.newVariable(1, 1);
    const Variable bread = engine.newVariable(0, 1000);
    const Variable soup = engine.newVariable(0, 1000);
    const Variable gravy = engine.newVariable(0, 1000);
    const Variable order = engine.newBoolean();
    const Variable total = engine.newVariable(0, plenty);
    engine.addEdge({bread, 0}, {soup, 0}, 30, isTrue(order));
    engine.addEdge({soup, 0}, {gravy, 0}, 20);
    const auto around = [&](Variable variable, Bound at, std::int64_t price) {
        return std::vector<PricedGap>{{{one, at - 1}, {variable, 0}, price, isTrue(one)},
                                      {{variable, 0}, {one, at - 1}, price, isTrue(one)}};
    };
    std::vector<PricedGap> gaps = around(bread, 600, 2);
    for (const auto& more : {around(soup, 590, 3), around(gravy, 630, 1)}) {
        gaps.insert(gaps.end(), more.begin(), more.end());
    }
    const DifferenceCosts& costs = DifferenceCosts::post(engine, gaps, {total, 0});
    ASSERT_TRUE(engine.propagate());
    EXPECT_EQ(engine.trail().least(total), 0); // 600, 590 and 630 keep soup and gravy apart
    EXPECT_FALSE(costs.worstConflict(engine.trail())) << "bread need not be before the soup";
    engine.decide(isTrue(order));
    ASSERT_TRUE(engine.propagate());
    // Bread 40 minutes earlier, 560: 80. Or the soup later, at 4 a minute with the gravy beyond
    // 610.
    EXPECT_EQ(engine.trail().least(total), 80);
}

TEST(DifferenceCosts, NameTheOrdersThatAreBrokenMost)
{
    Engine engine;
    const Variable one = engine.newVariable(1, 1);
    const Variable fry = engine.newVariable(0, 1000);
    const Variable boil = engine.newVariable(0, 1000);
    const Variable fryFirst = engine.newBoolean();
    const Variable total = engine.newVariable(0, plenty);
    engine.addEdge({fry, 20}, {boil, 0}, 0, isTrue(fryFirst));
    engine.addEdge({boil, 30}, {fry, 0}, 0, isFalse(fryFirst));
    std::vector<PricedGap> gaps;
    for (const auto& [variable, at] : {std::pair(fry, 100), std::pair(boil, 105)}) {
        gaps.push_back({{one, at - 1}, {variable, 0}, 1, isTrue(one)});
        gaps.push_back({{variable, 0}, {one, at - 1}, 1, isTrue(one)});
    }
    const DifferenceCosts& costs = DifferenceCosts::post(engine, gaps, {total, 0});
    ASSERT_TRUE(engine.propagate());
    EXPECT_EQ(engine.trail().least(total), 0);
    EXPECT_EQ(costs.worstConflict(engine.trail()), isTrue(fryFirst)); // 15 minutes against 35
    engine.decide(isTrue(fryFirst));
    ASSERT_TRUE(engine.propagate());
    EXPECT_EQ(engine.trail().least(total), 15);
    EXPECT_FALSE(costs.worstConflict(engine.trail()));
}

} // namespace

} // namespace suppertide::engine
