// Where engines of this kind go wrong, each with the smallest case that shows it.
#include <gtest/gtest.h>

#include "core/planner/engine/search.h"
#include "core/planner/engine/timetable.h"

namespace suppertide::engine {

namespace {

bool learnsFrom(Engine& engine)
{
    EXPECT_FALSE(engine.propagate());
    return engine.learn() && engine.propagate();
}

std::optional<Literal> leastFirst(const Trail& trail)
{
    for (std::uint32_t i = 0; i < trail.views() / 2; ++i) {
        if (!trail.isFixed({i})) {
            return atMost(Variable{i}, trail.least(Variable{i}));
        }
    }
    return std::nullopt;
}

} // namespace

//     level 1   x ≤ 5 ──▶ y ──▶ x ≤ 3        the conflict needs x ≤ 3 and z. x ≤ 3 follows from y
//     and level 2   z, x ≤ 3 ──▶ w and not w     y from x ≤ 5; x ≤ 5 follows from x ≤ 3, but later:
//     if
//                                            that counted, x ≤ 3 would be left out, and z be false
TEST(Pitfalls, ABoundDoesNotJustifyItselfThroughALooserOne)
{
    Engine engine;
    engine.audit().know({{9, 0, 0, 1}}); // z with x = 9
    const Variable x = engine.newVariable(0, 10);
    const Variable y = engine.newBoolean();
    const Variable w = engine.newBoolean();
    const Variable z = engine.newBoolean();
    engine.addClause({atLeast(x, 6), isTrue(y)});
    engine.addClause({isFalse(y), atMost(x, 3)});
    engine.addClause({atLeast(x, 4), isFalse(z), isTrue(w)});
    engine.addClause({atLeast(x, 4), isFalse(z), isFalse(w)});
    ASSERT_TRUE(engine.propagate());
    engine.decide(atMost(x, 5));
    ASSERT_TRUE(engine.propagate());
    ASSERT_TRUE(engine.trail().holds(atMost(x, 3)));
    engine.decide(isTrue(z));
    ASSERT_TRUE(learnsFrom(engine));
    engine.backTo(0);
    EXPECT_FALSE(engine.trail().fails(isTrue(z)));
}

//     d ──▶ u ──▶ a      the conflict of a and b goes back to u twice; u is the first point that
//     all
//           u ──▶ b      paths go through, and so u is false, not only d
TEST(Pitfalls, AnEventNeededTwiceDoesNotHideTheFirstImplicationPoint)
{
    Engine engine;
    engine.audit();
    const Variable d = engine.newBoolean();
    const Variable u = engine.newVariable(0, 9);
    const Variable a = engine.newBoolean();
    const Variable b = engine.newBoolean();
    engine.addClause({isFalse(d), atMost(u, 4)});
    engine.addClause({atLeast(u, 5), isTrue(a)});
    engine.addClause({atLeast(u, 7), isTrue(b)}); // a looser bound of the same event
    engine.addClause({isFalse(a), isFalse(b)});
    ASSERT_TRUE(engine.propagate());
    engine.decide(isTrue(d));
    ASSERT_TRUE(learnsFrom(engine));
    EXPECT_EQ(engine.trail().level(), 0);
    EXPECT_TRUE(engine.trail().holds(atLeast(u, 5)));
    EXPECT_FALSE(engine.trail().isFixed(d) && engine.trail().least(d) == 1);
}

//     full    [================ ... =====]      an item of no sure length is pushed to its least
//     item    [=▶                               end, where it may be empty, and no further
TEST(Pitfalls, AnItemOfVariableLengthIsNotPushedForEver)
{
    constexpr Bound far = 1'000'000;
    Engine engine;
    engine.audit();
    const Variable begin = engine.newVariable(0, 0);
    const Variable start = engine.newVariable(0, far);
    const Variable end = engine.newVariable(3, far);
    TimetablePropagator::post(
        engine, {{{begin, 0}, {begin, far}, 1, {}}, {{start, 0}, {end, 0}, 1, {}}}, 1);
    ASSERT_TRUE(engine.propagate());
    EXPECT_EQ(engine.trail().least(start), 3);
    EXPECT_LT(engine.steps(), 20);
    Search search(engine, leastFirst, [](std::int64_t) { return true; });
    EXPECT_EQ(search.run({}, {1000, true}), Search::End::Found);
    EXPECT_LE(search.values()[end.index], search.values()[start.index]);
}

// Two bounds that push each other one at a time under a Boolean that nothing has decided yet: there
// is an end to what the engine keeps, and it says so instead of taking all memory.
TEST(Pitfalls, TheEngineTakesNoMoreMemoryThanItMay)
{
    class Crawl : public Propagator
    {
    public:
        explicit Crawl(Variable x) : x_(x) {}
        bool propagate(Engine& engine) override
        {
            while (engine.trail().least(x_) < engine.trail().most(x_)) {
                if (!engine.imply(atLeast(x_, engine.trail().least(x_) + 1), {})) {
                    return false;
                }
            }
            return true;
        }

    private:
        Variable x_;
    };
    Engine engine;
    engine.limitRoom(10'000);
    const Variable x = engine.newVariable(0, 2'000'000'000);
    engine.add(std::make_unique<Crawl>(x), {x.plus(), x.minus()});
    EXPECT_THROW(static_cast<void>(engine.propagate()), OutOfRoom);
}

//     x ≤ 3 or x ≤ 5 or y or z: x ≥ 6 makes both that are watched fail at once; then y and z are
TEST(Pitfalls, AClauseFindsOtherWatchesThoughBothFailAtOnce)
{
    Engine engine;
    engine.audit();
    const Variable x = engine.newVariable(0, 10);
    const Variable y = engine.newBoolean();
    const Variable z = engine.newBoolean();
    engine.addClause({atMost(x, 3), atMost(x, 5), isTrue(y), isTrue(z)});
    ASSERT_TRUE(engine.propagate());
    for (const auto& [first, second] : {std::pair(y, z), std::pair(z, y)}) {
        engine.decide(atLeast(x, 6));
        ASSERT_TRUE(engine.propagate());
        engine.decide(isFalse(first));
        ASSERT_TRUE(engine.propagate());
        EXPECT_TRUE(engine.trail().holds(isTrue(second)));
        engine.backTo(0);
    }
}

} // namespace suppertide::engine
