#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <tuple>

#include "core/assign/cook_sweep.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

using Given = std::vector<std::vector<std::size_t>>;

/// Broken and sessions, written anew from the definitions, minute by minute.
std::pair<std::int64_t, std::int64_t> judged(const std::vector<CookWork>& work, const Given& given,
                                             std::size_t cooks, Minutes gap)
{
    std::int64_t broken = 0;
    std::int64_t sessions = 0;
    for (std::size_t cook = 0; cook < cooks; ++cook) {
        std::vector<std::size_t> theirs;
        for (std::size_t i = 0; i < work.size(); ++i) {
            if (std::count(given[i].begin(), given[i].end(), cook) != 0) {
                theirs.push_back(i);
            }
        }
        std::stable_sort(theirs.begin(), theirs.end(), [&](std::size_t a, std::size_t b) {
            return work[a].during.start < work[b].during.start;
        });
        std::optional<PlanTime> latest;
        for (std::size_t n = 0; n < theirs.size(); ++n) {
            const CookWork& item = work[theirs[n]];
            int load = item.attention;
            for (std::size_t m = 0; m < n; ++m) {
                load +=
                    work[theirs[m]].during.end > item.during.start ? work[theirs[m]].attention : 0;
            }
            broken += (load > 100 ? 1 : 0) + item.faults[cook];
            sessions += !latest || item.during.start > *latest + gap ? 1 : 0;
            latest = latest ? std::max(*latest, item.during.end) : item.during.end;
        }
    }
    return {broken, sessions};
}

void tryAll(const std::vector<CookWork>& work, std::size_t cooks, Minutes gap, Given& given,
            std::pair<std::int64_t, std::int64_t>& best)
{
    const std::size_t item = given.size();
    if (item == work.size()) {
        best = std::min(best, judged(work, given, cooks, gap));
        return;
    }
    for (std::size_t mask = 0; mask < std::size_t{1} << cooks; ++mask) {
        std::vector<std::size_t> chosen;
        for (std::size_t cook = 0; cook < cooks; ++cook) {
            if ((mask >> cook & 1U) != 0) {
                chosen.push_back(cook);
            }
        }
        const bool fits = work[item].pinned.empty()
                              ? chosen.size() == static_cast<std::size_t>(work[item].cooks)
                              : chosen == work[item].pinned;
        if (fits) {
            given.push_back(chosen);
            tryAll(work, cooks, gap, given, best);
            given.pop_back();
        }
    }
}

CookWork anyWork(Random& random, std::size_t cooks)
{
    CookWork work;
    const std::int64_t start = random.between(0, 40);
    work.during = interval(start, start + random.between(1, 15));
    work.attention = static_cast<int>(random.between(1, 10)) * 10;
    work.cooks = static_cast<int>(random.between(1, static_cast<std::int64_t>(cooks)));
    for (std::size_t cook = 0; cook < cooks; ++cook) {
        work.faults.push_back(random.oneIn(5) ? 1 : 0);
    }
    if (random.oneIn(6)) {
        work.cooks = 1;
        work.pinned = {static_cast<std::size_t>(random.between(0, 1))};
    }
    return work;
}

} // namespace

TEST(CookSweep, AgreesWithTryingEveryAssignment)
{
    forEachSeed(150, [](Random& random) {
        const std::size_t cooks = random.oneIn(2) ? 2 : 3;
        const Minutes gap{random.between(0, 10)};
        std::vector<CookWork> work;
        for (std::int64_t i = random.between(1, 6); i > 0; --i) {
            work.push_back(anyWork(random, cooks));
        }
        const CookSweepResult found = sweepCooks(work, cooks, gap);
        std::pair<std::int64_t, std::int64_t> best{1000, 1000};
        Given given;
        tryAll(work, cooks, gap, given, best);
        EXPECT_EQ(std::pair(found.broken, found.sessions), best);
        EXPECT_EQ(judged(work, found.cooks, cooks, gap), best);
    });
}

TEST(CookSweep, GivesNothingToNobody)
{
    EXPECT_EQ(sweepCooks({}, 0, Minutes{0}).cooks.size(), 0U);
    CookWork work;
    work.during = interval(0, 10);
    work.attention = 100;
    EXPECT_EQ(sweepCooks({work}, 0, Minutes{0}).cooks, Given{{}});
}

} // namespace suppertide
