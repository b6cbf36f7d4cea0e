// What the propagator remembers of earlier looks changes nothing that it finds.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/planner/engine/timetable.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::engine {

namespace {

using suppertide::test::forEachSeed;
using suppertide::test::Random;

constexpr Bound horizon = 16;

/// Tasks that share something of limited capacity, some of which need not be.
struct Shared
{
    struct Task
    {
        Bound length = 1;
        Bound amount = 1;
        bool mayBeAbsent = false;
    };
    std::vector<Task> tasks;
    Bound capacity = 2;
};

Shared anyShared(Random& random)
{
    Shared shared;
    shared.capacity = static_cast<Bound>(random.between(1, 4));
    for (std::int64_t i = random.between(4, 8); i > 0; --i) {
        shared.tasks.push_back({static_cast<Bound>(random.between(2, 9)),
                                static_cast<Bound>(random.between(0, shared.capacity)),
                                random.oneIn(3)});
    }
    return shared;
}

/// An engine with nothing but these; the same variables in the same order each time.
struct Made
{
    explicit Made(const Shared& shared)
    {
        std::vector<TimetableItem> items;
        for (const Shared::Task& task : shared.tasks) {
            const Variable start = engine.newVariable(0, horizon);
            const Variable there = engine.newBoolean();
            variables.insert(variables.end(), {start, there});
            TimetableItem item{{start, 0}, {start, task.length}, task.amount, std::nullopt};
            if (task.mayBeAbsent) {
                item.present = isTrue(there);
            }
            items.push_back(item);
        }
        TimetablePropagator::post(engine, std::move(items), shared.capacity);
    }
    Engine engine;
    std::vector<Variable> variables;
};

Literal anyDecision(const Made& made, Random& random)
{
    const auto place = random.between(0, static_cast<std::int64_t>(made.variables.size()) - 1);
    const Variable variable = made.variables[static_cast<std::size_t>(place)];
    const Trail& trail = made.engine.trail();
    const Bound least = trail.least(variable);
    const Bound most = trail.most(variable);
    const auto at = static_cast<Bound>(random.between(least, std::max(least, most - 1)));
    return random.oneIn(2) ? atMost(variable, at) : atLeast(variable, at + 1);
}

/// The same decided at once.
void expectTheSameAnew(const Shared& shared, const Made& made, bool holds, const Literals& decided)
{
    Made anew(shared);
    for (const Literal literal : decided) {
        anew.engine.addFact(literal);
    }
    ASSERT_EQ(anew.engine.propagate(), holds);
    for (std::size_t i = 0; holds && i < made.variables.size(); ++i) {
        const Variable variable = made.variables[i];
        EXPECT_EQ(made.engine.trail().least(variable), anew.engine.trail().least(variable));
        EXPECT_EQ(made.engine.trail().most(variable), anew.engine.trail().most(variable));
    }
}

TEST(Timetable, FindsTheSameAsIfItLookedForTheFirstTime)
{
    int held = 0;
    int failed = 0;
    int wentBack = 0;
    forEachSeed(400, [&](Random& random) {
        const Shared shared = anyShared(random);
        Made made(shared);
        Literals decided;
        std::vector<std::size_t> levels{0}; // at which all that follows has been found
        Literals undone;
        for (int turn = 0; turn < 30; ++turn) {
            Literals next; // sometimes the same as before going back
            if (random.oneIn(2)) {
                next.swap(undone);
            }
            if (next.empty()) {
                next.resize(static_cast<std::size_t>(random.between(1, 4)));
                std::ranges::generate(next, [&] { return anyDecision(made, random); });
            }
            for (const Literal literal : next) {
                const Trail& trail = made.engine.trail();
                if (!trail.holds(literal) && !trail.fails(literal)) {
                    made.engine.decide(literal);
                    decided.push_back(literal);
                }
            }
            const bool holds = made.engine.propagate();
            ++(holds ? held : failed);
            expectTheSameAnew(shared, made, holds, decided);
            levels.push_back(decided.size());
            if (!holds || random.oneIn(4)) {
                levels.resize(static_cast<std::size_t>(
                    random.between(1, static_cast<std::int64_t>(levels.size()) - 1)));
                undone.assign(decided.begin() + static_cast<std::ptrdiff_t>(levels.back()),
                              decided.end());
                decided.resize(levels.back());
                made.engine.backTo(static_cast<std::int32_t>(decided.size()));
                ++wentBack;
            }
        }
    });
    EXPECT_GT(held, 1'000);
    EXPECT_GT(failed, 200);
    EXPECT_GT(wentBack, 1'000);
}

} // namespace

} // namespace suppertide::engine
