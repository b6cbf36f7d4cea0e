// Packs hold enough, none of them is too much, and no other choice costs less.
#include <gtest/gtest.h>

#include <functional>
#include <limits>

#include "core/shopping/packs.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::shopping {

namespace {

using Counts = std::vector<std::int64_t>;

Rational held(const Counts& counts, const std::vector<PackSize>& sizes)
{
    Rational sum;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        sum = sum + Rational{counts[i]} * sizes[i].size;
    }
    return sum;
}

std::int64_t costOf(const Counts& counts, const std::vector<PackSize>& sizes)
{
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        sum += counts[i] * sizes[i].price.value_or(0);
    }
    return sum;
}

TEST(Packs, AreNoneForNothing)
{
    EXPECT_EQ(packsFor(Rational{0}, {{Rational{500}, 90}}), Counts{0});
    EXPECT_EQ(packsFor(Rational{-3}, {{Rational{500}, 90}}), Counts{0});
    EXPECT_EQ(packsFor(Rational{5}, {}), Counts{});
}

TEST(Packs, AreRoundedUpAtTheVeryEdge)
{
    const std::vector<PackSize> bag{{Rational{500}, std::nullopt}};
    EXPECT_EQ(packsFor(Rational{1, 1000}, bag), Counts{1});
    EXPECT_EQ(packsFor(Rational{500}, bag), Counts{1});
    EXPECT_EQ(packsFor(Rational{500001, 1000}, bag), Counts{2});
}

TEST(Packs, AreTheCheapestThatWillDo)
{
    // Two small ones for 1.80 against a large one for 1.60: more is left over, and it is cheaper.
    const std::vector<PackSize> priced{{Rational{500}, 90}, {Rational{1500}, 160}};
    EXPECT_EQ(packsFor(Rational{1000}, priced), (Counts{0, 1}));
    EXPECT_EQ(packsFor(Rational{400}, priced), (Counts{1, 0}));
    // Where a price is missing the least is left over.
    const std::vector<PackSize> unpriced{{Rational{500}, 90}, {Rational{1500}, std::nullopt}};
    EXPECT_EQ(packsFor(Rational{1000}, unpriced), (Counts{2, 0}));
}

TEST(Packs, BuyABarrelForAFeast)
{
    const std::vector<PackSize> sizes{{Rational{1, 3}, 1}, {Rational{1000}, 900}};
    const Rational needed{10'000'000};
    const Counts counts = packsFor(needed, sizes);
    EXPECT_GE(held(counts, sizes), needed);
    EXPECT_LT(held(counts, sizes), needed + Rational{1000});
}

/// All irredundant choices, by trying each number of each pack.
std::int64_t cheapestByTrying(const Rational& needed, const std::vector<PackSize>& sizes)
{
    std::int64_t best = std::numeric_limits<std::int64_t>::max();
    Counts counts(sizes.size(), 0);
    const std::function<void(std::size_t)> tryFrom = [&](std::size_t from) {
        if (held(counts, sizes) >= needed) {
            best = std::min(best, costOf(counts, sizes));
            return;
        }
        for (std::size_t i = from; i < sizes.size(); ++i) {
            ++counts[i];
            tryFrom(i);
            --counts[i];
        }
    };
    tryFrom(0);
    return best;
}

TEST(Packs, HoldEnoughAndNotAPackTooMuchForAnyNeed)
{
    test::forEachSeed(500, [](test::Random& random) {
        std::vector<PackSize> sizes;
        const bool isPriced = random.oneIn(2);
        for (std::int64_t i = random.between(1, 3); i > 0; --i) {
            sizes.push_back({Rational{random.between(1, 60), random.between(1, 4)}, std::nullopt});
            if (isPriced) {
                sizes.back().price = random.between(0, 400);
            }
        }
        const Rational needed{random.between(0, 400), random.between(1, 7)};
        const Counts counts = packsFor(needed, sizes);
        EXPECT_GE(held(counts, sizes), needed);
        for (std::size_t i = 0; i < sizes.size(); ++i) {
            ASSERT_GE(counts[i], 0);
            if (counts[i] > 0) {
                EXPECT_LT(held(counts, sizes) - sizes[i].size, needed);
            }
        }
        if (isPriced && needed > Rational{0} && needed < Rational{40}) {
            EXPECT_LE(costOf(counts, sizes), cheapestByTrying(needed, sizes));
        }
    });
}

} // namespace

} // namespace suppertide::shopping
