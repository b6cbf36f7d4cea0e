#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>
#include <utility>

#include "core/assign/reached_heat.h"
#include "core/assign/setting_levels.h"
#include "tests/core/assign/small_ovens.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;
using Level = LevelRow::Level;

constexpr std::int64_t most = 70; // cost
constexpr Level unbounded = LevelRow::unbounded;

/// By column and cost, each by itself.
using Plain = std::vector<std::vector<Level>>;

std::size_t groupOf(const LevelRow& row, std::size_t column)
{
    std::size_t group = 0;
    while (row.endOf(group) <= column) {
        ++group;
    }
    return group;
}

Plain plainOf(const LevelRow& row)
{
    Plain plain(row.endOf(row.groups() - 1));
    for (std::size_t column = 0; column < plain.size(); ++column) {
        for (std::int64_t cost = 0; cost < most; ++cost) {
            plain[column].push_back(row.at(groupOf(row, column), cost));
        }
    }
    return plain;
}

Level paid(const std::vector<Level>& levels, std::int64_t cost)
{
    return cost < 0 ? unbounded : levels[static_cast<std::size_t>(cost)];
}

/// A minute at one setting, or off, from what is needed after it: how hot it must be as it begins.
struct PlainMinute
{
    const Oven& oven;
    const AskedOfMinute& asked;

    [[nodiscard]] Level on(const SettingColumn& column, Level need) const
    {
        const bool risesTooFar = asked.low + oven.heatMilliCPerMin > asked.highNext &&
                                 std::int64_t{column.coolest} * 1000 > asked.highNext;
        if (asked.off || risesTooFar || need > asked.highNext) {
            return unbounded;
        }
        const std::int64_t rate =
            need > column.hottest * 1000 ? oven.coolMilliCPerMin : -oven.heatMilliCPerMin;
        return static_cast<Level>(need + rate);
    }
    [[nodiscard]] Level off(Level need) const
    {
        if (need > asked.highNext) {
            return unbounded;
        }
        return need > oven.ambientC * 1000 ? static_cast<Level>(need + oven.coolMilliCPerMin)
                                           : -unbounded;
    }
    [[nodiscard]] Level within(Level level) const
    {
        const Level low = std::max(level, static_cast<Level>(asked.low));
        const int hottest = std::max({oven.maxC, oven.startC, oven.ambientC}) * 1000;
        const int coldest = std::min({oven.minC, oven.startC, oven.ambientC}) * 1000;
        if (low > std::min<std::int64_t>(asked.high, hottest)) {
            return unbounded;
        }
        return low <= coldest ? -unbounded : low;
    }
};

Plain plainBefore(const Oven& oven, const OvenProgramStyle& style, const SettingLevels& levels,
                  const AskedOfMinute& asked, const Plain& after)
{
    const PlainMinute minute{oven, asked};
    const SettingLevels::Prices prices = levels.pricesOf(asked);
    const auto& columns = levels.columns();
    const auto onAt = [&](std::size_t column, std::int64_t cost) {
        const std::int64_t price = prices.on.empty() ? style.onMinute : prices.on[column];
        return minute.on(columns[column], paid(after[column], cost - price));
    };
    Plain before(after.size());
    for (std::int64_t cost = 0; cost < most; ++cost) {
        const auto any = [&](std::int64_t has) {
            Level best = unbounded;
            for (std::size_t i = 0; i < columns.size(); ++i) {
                best = std::min(best, onAt(i, has));
            }
            return best;
        };
        for (std::size_t i = 0; i < after.size(); ++i) {
            const bool isNone = i == columns.size();
            const Level on = isNone ? any(cost) : std::min(onAt(i, cost), any(cost - style.change));
            const Level off = minute.off(paid(after[i], cost - prices.off));
            before[i].push_back(minute.within(std::min(on, off)));
        }
    }
    return before;
}

AskedOfMinute anyMinute(Random& random, const AskedOfMinute& next)
{
    AskedOfMinute asked{-unbounded, unbounded, next.high, random.oneIn(12), {}};
    if (random.oneIn(2)) {
        asked.low = random.between(20, 90) * 1000;
        asked.high = asked.low + random.between(3, 30) * 1000;
        asked.highNext = std::min(asked.highNext, asked.high + random.between(0, 9) * 1000);
    }
    if (random.oneIn(5)) {
        asked.preferred.push_back(static_cast<int>(random.between(50, 110)));
    }
    return asked;
}

TEST(SettingLevels, AreAsForEachSettingByItself)
{
    std::int64_t compared = 0;
    std::int64_t groups = 0;
    std::int64_t columns = 0;
    forEachSeed(200, [&](Random& random) {
        const Oven oven = test::coldOven(random, 2, 110, {4'000, 15'000, 2'000, 8'000});
        OvenProgramStyle style;
        style.onMinute = random.oneIn(8) ? 20 : random.between(1, 2); // more than a lane, too
        style.change = random.between(0, 25);
        style.preferC = random.between(0, 2);
        std::vector<OvenStay> stays;
        for (int i = 0; i < 2; ++i) {
            OvenStay stay;
            stay.prefer = static_cast<int>(random.between(50, 110));
            stay.acceptHigh = *stay.prefer + 5;
            stays.push_back(stay);
        }
        const SettingLevels levels(oven, stays, style, most, 0);
        LevelRow row = levels.atEnd(random.between(20, 90) * 1000);
        Plain plain = plainOf(row);
        AskedOfMinute asked{-unbounded, unbounded, unbounded, false, {}};
        for (int minutes = 0; minutes < 25; ++minutes) {
            asked = anyMinute(random, asked);
            row = levels.before(asked, row, most);
            plain = plainBefore(oven, style, levels, asked, plain);
            ASSERT_EQ(plainOf(row), plain);
            compared += static_cast<std::int64_t>(plain.size()) * most;
            groups += static_cast<std::int64_t>(row.groups());
            columns += static_cast<std::int64_t>(plain.size());
            if (!SettingLevels::isAny(row)) {
                break;
            }
        }
    });
    EXPECT_GT(compared, 1'000'000);
    EXPECT_LT(3 * groups, columns); // what keeping them in groups is for
}

/// A minute on costs more than is told apart: not even that being on would do may be denied.
TEST(SettingLevels, SayNothingOfTooManyCosts)
{
    Random random(1);
    const Oven oven = test::coldOven(random, 2, 110, {4'000, 15'000, 2'000, 8'000});
    const auto isUnknown = [&](std::int64_t onMinute, std::int64_t need) {
        const OvenProgramStyle style{.onMinute = onMinute};
        const SettingLevels levels(oven, {}, style, SettingLevels::plenty, 0);
        const AskedOfMinute asked{-unbounded, unbounded, unbounded, false, {}};
        return levels.before(asked, levels.atEnd(need), SettingLevels::plenty).isUnknown();
    };
    EXPECT_FALSE(isUnknown(1, 90'000));
    EXPECT_TRUE(isUnknown(5'000, 90'000));
    EXPECT_TRUE(isUnknown(5'000, 110'000)); // off will not do at all
}

LevelRow anyLevels(Random& random)
{
    const auto costs = static_cast<std::size_t>(random.between(1, 40));
    const std::size_t stride = (costs / LevelLanes::lane + 1) * LevelLanes::lane;
    std::vector<std::size_t> ends;
    for (std::size_t end = 1; end < 8; ++end) {
        if (random.oneIn(2) || end == 7) {
            ends.push_back(end);
        }
    }
    ends.push_back(8);
    std::vector<Level> levels((ends.size() + 1) * stride, 0);
    for (std::size_t i = 0; i < ends.size(); ++i) {
        auto level = static_cast<Level>(random.between(90, 99));
        for (std::size_t k = 0; k < costs; ++k) {
            level -= static_cast<Level>(random.between(0, 1));
            levels[i * stride + k] = level;
        }
        if (i > 0 && random.oneIn(3)) {
            std::copy_n(&levels[(i - 1) * stride], costs, &levels[i * stride]);
        }
    }
    return {random.between(0, 30), costs, ends, levels.data(), stride};
}

TEST(LevelRow, TheLowerOfTwoIsLowerAtEach)
{
    forEachSeed(300, [&](Random& random) {
        const LevelRow one = anyLevels(random);
        const LevelRow two = anyLevels(random);
        const Plain ones = plainOf(one);
        const Plain twos = plainOf(two);
        const Plain lower = plainOf(LevelRow::lower(one, two));
        ASSERT_EQ(lower.size(), ones.size());
        for (std::size_t i = 0; i < lower.size(); ++i) {
            for (std::size_t cost = 0; cost < lower[i].size(); ++cost) {
                ASSERT_EQ(lower[i][cost], std::min(ones[i][cost], twos[i][cost]));
            }
        }
    });
}

TEST(LevelRow, KeepsGroupsThatAreNoDifferentAsOne)
{
    const std::vector<std::size_t> ends{3, 5, 9, 10};
    std::vector<Level> levels(5 * LevelLanes::lane, 7);
    levels[2 * LevelLanes::lane + 1] = 6;
    const LevelRow two(4, 2, ends, levels.data(), LevelLanes::lane);
    ASSERT_EQ(two.groups(), 3u);
    EXPECT_EQ(two.endOf(0), 5u);
    EXPECT_EQ(two.at(0, 4), 7);
    EXPECT_EQ(two.at(1, 5), 6);
    EXPECT_EQ(two.at(1, 3), unbounded);
    // One cost less, and they are the same; none so far stays apart.
    const LevelRow one(4, 1, ends, levels.data(), LevelLanes::lane);
    ASSERT_EQ(one.groups(), 2u);
    EXPECT_EQ(one.endOf(0), 9u);
}

/// The greatest temperature by cost, in thousandths of a degree.
using Hottest = std::map<std::int64_t, std::int64_t>;

/// Whether off or on.
Hottest hottestAfter(const Oven& oven, std::int64_t onMinute, const AskedOfMinute& asked,
                     const Hottest& before)
{
    Hottest after;
    const auto reach = [&](std::int64_t cost, std::int64_t milliC) {
        const std::int64_t level = std::min(milliC, asked.highNext);
        const auto [best, isNew] = after.try_emplace(cost, level);
        best->second = std::max(best->second, level);
    };
    for (const auto& [cost, milliC] : before) {
        reach(cost, std::max(milliC - oven.coolMilliCPerMin, std::int64_t{oven.ambientC} * 1000));
        if (!asked.off) {
            reach(cost + onMinute,
                  std::min(milliC + oven.heatMilliCPerMin, std::int64_t{oven.maxC} * 1000));
        }
    }
    return after;
}

Level levelAt(const ReachedHeat::Row& row, std::int64_t cost)
{
    const std::int64_t place = std::min(cost - row.first, static_cast<std::int64_t>(row.costs) - 1);
    return place < 0 ? -unbounded : row.levels[LevelLanes::lane + static_cast<std::size_t>(place)];
}

TEST(ReachedHeat, IsTheMostThatSoManyMinutesOnLeadTo)
{
    forEachSeed(60, [&](Random& random) {
        const Oven oven = test::coldOven(random, 2, 110, {4'000, 15'000, 2'000, 8'000});
        OvenProgramStyle style;
        style.onMinute = random.oneIn(4) ? 20 : 1; // more than a lane, too
        const ReachedHeat reached(oven, style);
        ReachedHeat::Row row = reached.atStart();
        Hottest plain{{0, std::int64_t{oven.startC} * 1000}};
        for (int minutes = 0; minutes < 30; ++minutes) {
            AskedOfMinute asked{-unbounded, unbounded, unbounded, random.oneIn(8), {}};
            if (random.oneIn(6)) {
                asked.highNext = random.between(30, 100) * 1000;
            }
            plain = hottestAfter(oven, style.onMinute, asked, plain);
            row = reached.after(asked, row, 100'000);
            std::int64_t best = -unbounded;
            for (const auto& [cost, milliC] : plain) {
                best = std::max(best, milliC);
                ASSERT_EQ(levelAt(row, cost), best);
            }
        }
    });
}

} // namespace

} // namespace suppertide
