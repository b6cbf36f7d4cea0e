// Each constraint alone and all together: the engine finds exactly the solutions that there are,
// and every explanation on the way holds.
#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>
#include <memory>
#include <optional>

#include "core/planner/engine/difference_costs.h"
#include "core/planner/engine/energy.h"
#include "core/planner/engine/forbidden.h"
#include "core/planner/engine/linear.h"
#include "core/planner/engine/overlap.h"
#include "core/planner/engine/session_starts.h"
#include "core/planner/engine/timetable.h"
#include "tests/core/planner/engine/tiny.h"

namespace suppertide::engine {

namespace {

using suppertide::test::forEachSeed;
using test::holds;
using test::Random;
using test::Tiny;
using test::valueOf;
using test::Values;

constexpr int cases = 1000; // of each kind

void addClause(Tiny& tiny, Random& random)
{
    Literals literals{tiny.anyBoolean(random)};
    for (std::int64_t i = random.between(1, 2); i > 0; --i) {
        const auto value = static_cast<Bound>(random.between(-1, 4));
        literals.push_back(random.oneIn(2) ? atMost(tiny.any(random), value)
                                           : atLeast(tiny.any(random), value));
    }
    tiny.engine().addClause(literals);
    tiny.must([literals](const Values& values) {
        return std::any_of(literals.begin(), literals.end(),
                           [&](Literal literal) { return holds(values, literal); });
    });
}

void addEdge(Tiny& tiny, Random& random)
{
    const Term from = tiny.anyTerm(random);
    const Term to = tiny.anyTerm(random);
    const auto least = static_cast<Bound>(random.between(-3, 3));
    std::optional<Literal> enabler;
    if (!random.oneIn(3)) {
        enabler = tiny.anyBoolean(random);
    }
    tiny.engine().addEdge(from, to, least, enabler);
    tiny.must([=](const Values& values) {
        return (enabler && !holds(values, *enabler)) ||
               valueOf(values, to) >= valueOf(values, from) + least;
    });
}

void addLinear(Tiny& tiny, Random& random)
{
    std::vector<WeightedView> terms;
    std::vector<std::pair<Variable, Bound>> plain;
    for (int i = 0; i < 3; ++i) {
        const Variable variable = tiny.any(random);
        if (std::any_of(plain.begin(), plain.end(),
                        [&](const auto& term) { return term.first == variable; })) {
            continue;
        }
        const auto weight = static_cast<Bound>(random.between(1, 3));
        const bool plus = random.oneIn(2);
        terms.push_back({plus ? variable.plus() : variable.minus(), weight});
        plain.emplace_back(variable, plus ? weight : -weight);
    }
    const std::int64_t most = random.between(-4, 10);
    LinearPropagator::post(tiny.engine(), terms, most);
    tiny.must([=](const Values& values) {
        std::int64_t sum = 0;
        for (const auto& [variable, weight] : plain) {
            sum += std::int64_t{weight} * values[variable.index];
        }
        return sum <= most;
    });
}

/// What gaps cost is at most a variable.
void addDifferenceCosts(Tiny& tiny, Random& random)
{
    std::vector<PricedGap> gaps;
    for (std::int64_t i = random.between(1, 4); i > 0; --i) {
        gaps.push_back({tiny.anyTerm(random), tiny.anyTerm(random), random.between(0, 3),
                        tiny.anyBoolean(random)});
    }
    const Term total{tiny.any(random), static_cast<Bound>(random.between(0, 4))};
    DifferenceCosts::post(tiny.engine(), gaps, total);
    tiny.must([=](const Values& values) {
        std::int64_t sum = 0;
        for (const PricedGap& gap : gaps) {
            if (holds(values, gap.onlyIf)) {
                sum += gap.price * std::max(0, valueOf(values, gap.to) - valueOf(values, gap.from));
            }
        }
        return sum <= valueOf(values, total);
    });
}

/// Items of no length, of fixed and of variable length, some of them optional.
void addTimetable(Tiny& tiny, Random& random)
{
    std::vector<TimetableItem> items;
    for (std::int64_t i = random.between(2, 4); i > 0; --i) {
        TimetableItem item;
        item.start = tiny.anyTerm(random);
        item.end = item.start;
        item.end.plus += static_cast<Bound>(random.between(0, 3));
        if (random.oneIn(3)) {
            item.end = tiny.anyTerm(random);
        }
        item.amount = static_cast<Bound>(random.between(0, 3));
        if (random.oneIn(2)) {
            item.present = tiny.anyBoolean(random);
        }
        items.push_back(item);
    }
    const auto capacity = static_cast<Bound>(random.between(1, 4));
    TimetablePropagator::post(tiny.engine(), items, capacity);
    tiny.must([=](const Values& values) {
        for (Bound minute = -6; minute < 16; ++minute) {
            Bound load = 0;
            for (const TimetableItem& item : items) {
                const bool there = (!item.present || holds(values, *item.present)) &&
                                   valueOf(values, item.start) <= minute &&
                                   minute < valueOf(values, item.end);
                load += there ? item.amount : 0;
            }
            if (load > capacity) {
                return false;
            }
        }
        return true;
    });
}

/// Items of fixed length that are there for sure, by the timetable and by energy.
void addEnergy(Tiny& tiny, Random& random)
{
    std::vector<EnergyItem> items;
    for (std::int64_t i = random.between(2, 4); i > 0; --i) {
        items.push_back({tiny.anyTerm(random), static_cast<Bound>(random.between(1, 4)),
                         static_cast<Bound>(random.between(1, 3))});
    }
    const auto capacity = static_cast<Bound>(random.between(2, 5));
    std::vector<TimetableItem> same;
    for (const EnergyItem& item : items) {
        same.push_back({item.start,
                        {item.start.variable, item.start.plus + item.length},
                        item.amount,
                        std::nullopt});
    }
    EnergyPropagator::post(tiny.engine(), items, capacity, 1000);
    TimetablePropagator::post(tiny.engine(), same, capacity);
    tiny.must([=](const Values& values) {
        for (Bound minute = -6; minute < 16; ++minute) {
            Bound load = 0;
            for (const EnergyItem& item : items) {
                const Bound start = valueOf(values, item.start);
                load += start <= minute && minute < start + item.length ? item.amount : 0;
            }
            if (load > capacity) {
                return false;
            }
        }
        return true;
    });
}

void addForbidden(Tiny& tiny, Random& random)
{
    const Variable variable = tiny.any(random);
    const Literal enabler = tiny.anyBoolean(random);
    std::vector<ValueRange> ranges;
    for (std::int64_t i = random.between(1, 3); i > 0; --i) {
        const auto first = static_cast<Bound>(random.between(-3, 5));
        ranges.push_back({first, first + static_cast<Bound>(random.between(-1, 3))});
    }
    ForbiddenPropagator::post(tiny.engine(), variable, ranges, enabler);
    tiny.must([=](const Values& values) {
        const Bound value = values[variable.index];
        return !holds(values, enabler) ||
               std::none_of(ranges.begin(), ranges.end(), [&](const ValueRange& range) {
                   return range.first <= value && value <= range.last;
               });
    });
}

void addOverlap(Tiny& tiny, Random& random)
{
    Overlap overlap;
    overlap.shared = tiny.any(random);
    overlap.start = tiny.anyTerm(random);
    overlap.length = static_cast<Bound>(random.between(1, 4));
    overlap.reference = tiny.anyTerm(random);
    overlap.window = static_cast<Bound>(random.between(1, 4));
    overlap.present = tiny.anyBoolean(random);
    OverlapPropagator::post(tiny.engine(), overlap);
    tiny.must([=](const Values& values) {
        const Bound start = valueOf(values, overlap.start);
        const Bound reference = valueOf(values, overlap.reference);
        const Bound shared = std::min(start + overlap.length, reference) -
                             std::max(start, reference - overlap.window);
        return !holds(values, overlap.present) || values[overlap.shared.index] >= shared ||
               shared <= 0;
    });
}

/// Tasks of a fixed length. Where a session begins by its definition (in order of start, more than
/// the gap after the latest end so far), the literal holds.
void addSessionStarts(Tiny& tiny, Random& random)
{
    std::vector<CooksJob> jobs;
    for (std::int64_t i = random.between(1, 4); i > 0; --i) {
        CooksJob job{tiny.anyTerm(random), {}, tiny.anyBoolean(random), tiny.anyBoolean(random)};
        job.to = job.from;
        job.to.plus += static_cast<Bound>(random.between(0, 2));
        jobs.push_back(job);
    }
    const auto gap = static_cast<Bound>(random.between(0, 2));
    SessionStartsPropagator::post(tiny.engine(), jobs, gap);
    tiny.must([=](const Values& values) {
        std::vector<CooksJob> done;
        std::ranges::copy_if(jobs, std::back_inserter(done),
                             [&](const CooksJob& job) { return holds(values, job.mine); });
        std::ranges::stable_sort(done, {},
                                 [&](const CooksJob& job) { return valueOf(values, job.from); });
        std::optional<Bound> latest;
        for (const CooksJob& job : done) {
            if ((!latest || valueOf(values, job.from) > *latest + gap) &&
                !holds(values, job.begins)) {
                return false;
            }
            latest = std::max(latest.value_or(valueOf(values, job.to)), valueOf(values, job.to));
        }
        return true;
    });
}

using Add = void (*)(Tiny&, Random&);

void expectSameSolutions(const std::vector<Add>& kinds, std::int64_t most)
{
    std::size_t all = 0;
    int without = 0;
    forEachSeed(cases, [&](Random& random) {
        Tiny tiny(random, random.oneIn(4) ? 4 : 3, 2);
        for (std::int64_t i = random.between(1, most); i > 0; --i) {
            kinds[static_cast<std::size_t>(
                random.between(0, static_cast<std::int64_t>(kinds.size()) - 1))](tiny, random);
        }
        const std::vector<Values> expected = tiny.solutionsByHand();
        all += expected.size();
        without += expected.empty() ? 1 : 0;
        tiny.expectByEngine(expected, random.oneIn(2));
    });
    EXPECT_GT(all, std::size_t{cases}); // the cases say something
    EXPECT_GT(without, 0);
}

} // namespace

TEST(Solutions, OfClauses)
{
    expectSameSolutions({addClause}, 5);
}

TEST(Solutions, OfEdges)
{
    expectSameSolutions({addEdge}, 5);
}

TEST(Solutions, OfSums)
{
    expectSameSolutions({addLinear}, 3);
}

TEST(Solutions, OfTimetables)
{
    expectSameSolutions({addTimetable}, 2);
}

TEST(Solutions, OfEnergy)
{
    expectSameSolutions({addEnergy}, 2);
}

TEST(Solutions, OfCostsOfDifferences)
{
    expectSameSolutions({addEdge, addDifferenceCosts}, 5);
}

TEST(Solutions, OfForbiddenValues)
{
    expectSameSolutions({addForbidden}, 4);
}

TEST(Solutions, OfOverlaps)
{
    expectSameSolutions({addOverlap}, 3);
}

TEST(Solutions, OfStartsOfSessions)
{
    expectSameSolutions({addSessionStarts}, 2);
    expectSameSolutions({addClause, addEdge, addSessionStarts}, 4);
}

TEST(Solutions, OfAllTogether)
{
    expectSameSolutions({addClause, addEdge, addEdge, addLinear, addTimetable, addEnergy,
                         addForbidden, addOverlap, addDifferenceCosts, addSessionStarts},
                        7);
}

} // namespace suppertide::engine
