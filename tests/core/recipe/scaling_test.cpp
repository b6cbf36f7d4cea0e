// How steps follow the number of portions.
#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "core/recipe/recipe.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {
namespace {

Step stepOf(Scaling scaling, Minutes least, Minutes likely, Minutes most)
{
    Step step;
    step.scaling = scaling;
    step.duration = {least, likely, most};
    return step;
}

Portions sum(const std::vector<Portions>& portions)
{
    return std::accumulate(portions.begin(), portions.end(), Portions{0});
}

Step stepInBatches(const Portions& atOnce)
{
    Step step;
    step.portionsPerBatch = atOnce;
    return step;
}

TEST(ScaledDuration, StaysForFixedAndBatchSteps)
{
    for (const Scaling scaling : {Scaling::Fixed, Scaling::PerBatch}) {
        const Step step = stepOf(scaling, 20_min, 25_min, 40_min);
        EXPECT_EQ(scaledDuration(step, Portions{8}, Portions{1}), step.duration);
        EXPECT_EQ(scaledDuration(step, Portions{8}, Portions{500}), step.duration);
    }
}

TEST(ScaledDuration, FollowsPortionsInProportion)
{
    const Step step = stepOf(Scaling::PerPortion, 16_min, 24_min, 40_min);
    EXPECT_EQ(scaledDuration(step, Portions{8}, Portions{12}),
              (DurationRange{24_min, 36_min, 60_min}));
    EXPECT_EQ(scaledDuration(step, Portions{8}, Portions{8}), step.duration);
    EXPECT_EQ(scaledDuration(step, Portions{8}, Portions{0}), DurationRange{});
}

TEST(ScaledDuration, RoundsUpSoThatNothingTakesNoTime)
{
    const Step step = stepOf(Scaling::PerPortion, 1_min, 10_min, 11_min);
    // 10 × 1/3 = 3⅓, 11 × 1/3 = 3⅔.
    EXPECT_EQ(scaledDuration(step, Portions{3}, Portions{1}), (DurationRange{1_min, 4_min, 4_min}));
    EXPECT_EQ(scaledDuration(step, Portions{8}, Portions(1, 2)),
              (DurationRange{1_min, 1_min, 1_min}));
}

TEST(ScaledDuration, NeverFallsAsPortionsRiseAndKeepsItsOrder)
{
    test::forEachSeed(300, [](test::Random& random) {
        const Minutes least{random.between(0, 100)};
        const Minutes likely = least + Minutes{random.between(0, 100)};
        const Step step =
            stepOf(Scaling::PerPortion, least, likely, likely + Minutes{random.between(0, 100)});
        const Portions own{random.between(1, 40), random.between(1, 4)};
        const Portions few{random.between(0, 100), random.between(1, 6)};
        const Portions many = few + Portions{random.between(0, 50)};
        const DurationRange small = scaledDuration(step, own, few);
        const DurationRange large = scaledDuration(step, own, many);
        EXPECT_LE(small.least, small.likely);
        EXPECT_LE(small.likely, small.most);
        EXPECT_LE(small.least, large.least);
        EXPECT_LE(small.most, large.most);
        // Within a minute of the exact proportion, and not below it.
        const double exact = static_cast<double>(likely.count()) * few.toDouble() / own.toDouble();
        EXPECT_GE(static_cast<double>(small.likely.count()), exact - 1e-9);
        EXPECT_LT(static_cast<double>(small.likely.count()), exact + 1);
    });
}

TEST(Batches, AreOneWhereAllFits)
{
    EXPECT_EQ(batchesOf(Step{}, Portions{100}), std::vector{Portions{100}});
    EXPECT_EQ(batchesOf(stepInBatches(Portions{8}), Portions{8}), std::vector{Portions{8}});
}

TEST(Batches, AreAsEvenAsWholePortionsAllow)
{
    EXPECT_EQ(batchesOf(stepInBatches(Portions{4}), Portions{10}),
              (std::vector{Portions{4}, Portions{3}, Portions{3}}));
    EXPECT_EQ(batchesOf(stepInBatches(Portions{6}), Portions{8}),
              (std::vector{Portions{4}, Portions{4}}));
    EXPECT_EQ(batchesOf(stepInBatches(Portions(3, 2)), Portions{4}),
              (std::vector{Portions(3, 2), Portions(3, 2), Portions{1}}));
}

TEST(Batches, HoldAllPortionsFitAndAreAsFewAsCanBe)
{
    test::forEachSeed(500, [](test::Random& random) {
        const Portions atOnce{random.between(1, 24), random.between(1, 4)};
        const Portions portions{random.between(1, 200), random.between(1, 4)};
        const std::vector<Portions> batches = batchesOf(stepInBatches(atOnce), portions);
        EXPECT_EQ(sum(batches), portions);
        EXPECT_EQ(static_cast<std::int64_t>(batches.size()), (portions / atOnce).ceiled());
        for (const Portions& batch : batches) {
            EXPECT_LE(batch, atOnce);
            EXPECT_GT(batch, Portions{0});
        }
        EXPECT_TRUE(std::ranges::is_sorted(batches, std::ranges::greater{}));
        if (portions.isWhole() && atOnce.isWhole()) {
            EXPECT_LE(batches.front() - batches.back(), Portions{1});
        }
    });
}

} // namespace
} // namespace suppertide
