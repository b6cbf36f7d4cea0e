#include <gtest/gtest.h>

#include <algorithm>

#include "core/planner/engine/search.h"
#include "core/planner/engine/timetable.h"

namespace suppertide::engine {

namespace {

std::optional<Literal> leastFirst(const Trail& trail)
{
    for (std::uint32_t i = 0; i < trail.views() / 2; ++i) {
        if (!trail.isFixed({i})) {
            return atMost(Variable{i}, trail.least(Variable{i}));
        }
    }
    return std::nullopt;
}

bool always(std::int64_t)
{
    return true;
}

} // namespace

//  a [==]                 two of three minutes of 0…4 for each, one at a time: there is room for
//  b    [==]              two of them
//  c       [==]
TEST(Search, NamesTheAssumptionsThatFailTogether)
{
    Engine engine;
    std::vector<Variable> present;
    std::vector<TimetableItem> items;
    for (int i = 0; i < 4; ++i) {
        const Variable start = engine.newVariable(0, i == 3 ? 0 : 2);
        present.push_back(engine.newBoolean());
        items.push_back({{start, 0}, {start, i == 3 ? 0 : 2}, 1, isTrue(present.back())});
    }
    TimetablePropagator::post(engine, items, 1);
    Search search(engine, leastFirst, always);
    Literals assumed;
    for (const Variable boolean : present) {
        assumed.push_back(isTrue(boolean));
    }
    ASSERT_EQ(search.run(assumed, {1000, true}), Search::End::Infeasible);
    Literals core = search.core();
    std::sort(core.begin(), core.end());
    EXPECT_EQ(core, (Literals{assumed[0], assumed[1], assumed[2]}));
    assumed.erase(assumed.begin());
    EXPECT_EQ(search.run(assumed, {1000, true}), Search::End::Found);
    EXPECT_FALSE(engine.isInfeasible());
}

// x ≥ y + 1 and y ≥ x + 1 push each other for ever if nobody looks: a week has ten thousand
// minutes.
TEST(Search, ExplainsACycleByWhatEnablesIt)
{
    Engine engine;
    const Variable x = engine.newVariable(0, 1'000'000);
    const Variable y = engine.newVariable(0, 1'000'000);
    const Variable a = engine.newBoolean();
    const Variable b = engine.newBoolean();
    engine.addEdge({x, 0}, {y, 0}, 1, isTrue(a));
    engine.addEdge({y, 0}, {x, 0}, 1, isTrue(b));
    Search search(engine, leastFirst, always);
    EXPECT_EQ(search.run({isTrue(a), isTrue(b)}, {1000, true}), Search::End::Infeasible);
    EXPECT_LT(engine.steps(), 1000);
}

TEST(Trail, KnowsWhatHoldsWhateverIsDecided)
{
    Engine engine;
    const Variable x = engine.newVariable(0, 10);
    engine.addFact(atMost(x, 8));
    engine.decide(atMost(x, 5));
    engine.decide(atMost(x, 3));
    EXPECT_EQ(engine.trail().mostAlways(x.plus()), 8);
    EXPECT_EQ(engine.trail().mostAlways(x.minus()), 0);
    engine.backTo(1);
    EXPECT_EQ(engine.trail().mostAlways(x.plus()), 8);
}

TEST(Search, StopsAtItsLimits)
{
    Engine engine;
    const Variable x = engine.newVariable(0, 10);
    engine.addFact(atLeast(x, 3));
    Search search(engine, leastFirst, [](std::int64_t) { return false; });
    EXPECT_EQ(search.run({}, {1000, true}), Search::End::Given);
    EXPECT_FALSE(engine.isInfeasible());
}

} // namespace suppertide::engine
