#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "core/assign/unit_sweep.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

/// Demands that begin on a busy unit, and units that are not allowed.
std::int64_t judged(const std::vector<UnitWork>& work, const std::vector<std::size_t>& units)
{
    std::int64_t broken = 0;
    for (std::size_t i = 0; i < work.size(); ++i) {
        bool busy = false;
        for (std::size_t j = 0; j < work.size(); ++j) {
            const bool before = work[j].during.start < work[i].during.start ||
                                (work[j].during.start == work[i].during.start && j < i);
            busy =
                busy || (before && units[j] == units[i] && work[j].during.overlaps(work[i].during));
        }
        broken += (busy ? 1 : 0) + (work[i].allowed[units[i]] ? 0 : 1);
    }
    return broken;
}

std::int64_t leastOfAll(const std::vector<UnitWork>& work, std::size_t units,
                        std::vector<std::size_t>& given)
{
    if (given.size() == work.size()) {
        return judged(work, given);
    }
    std::int64_t best = 1000;
    for (std::size_t unit = 0; unit < units; ++unit) {
        const auto& pinned = work[given.size()].pinned;
        if (pinned.empty() || pinned.front() == unit) {
            given.push_back(unit);
            best = std::min(best, leastOfAll(work, units, given));
            given.pop_back();
        }
    }
    return best;
}

} // namespace

TEST(UnitSweep, AgreesWithTryingEveryAssignment)
{
    forEachSeed(200, [](Random& random) {
        const auto units = static_cast<std::size_t>(random.between(1, 3));
        std::vector<std::int64_t> sizes;
        for (std::size_t unit = 0; unit < units; ++unit) {
            sizes.push_back(random.between(1, 2));
        }
        std::vector<UnitWork> work;
        for (std::int64_t i = random.between(1, 6); i > 0; --i) {
            const std::int64_t start = random.between(0, 20);
            UnitWork item{interval(start, start + random.between(1, 12)), {}, {}};
            const std::int64_t least = random.between(1, 2);
            for (const std::int64_t size : sizes) {
                item.allowed.push_back(size >= least);
            }
            if (random.oneIn(5)) {
                item.pinned = {0};
            }
            work.push_back(item);
        }
        const UnitSweepResult found = sweepUnits(work, sizes);
        std::vector<std::size_t> given;
        const std::int64_t best = leastOfAll(work, units, given);
        EXPECT_EQ(found.broken, best);
        EXPECT_EQ(judged(work, found.units), best);
    });
}

TEST(UnitSweep, LeavesTheLargeBurnerForTheLargePan)
{
    const UnitWork small{interval(0, 30), {true, true}, {}};
    const UnitWork large{interval(10, 40), {true, false}, {}};
    EXPECT_EQ(sweepUnits({small, large}, {21, 14}).units, (std::vector<std::size_t>{1, 0}));
}

TEST(UnitSweep, ManyAlikeUnitsStayCheap)
{
    // 12 pans that are alike, 40 demands: told apart they would make 12! states.
    std::vector<UnitWork> work;
    for (std::int64_t i = 0; i < 40; ++i) {
        work.push_back({interval(i, i + 12), std::vector<bool>(12, true), {}});
    }
    EXPECT_EQ(sweepUnits(work, std::vector<std::int64_t>(12, 1)).broken, 0);
}

} // namespace suppertide
