#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/for_each_seed.h"
#include "ui/print/stretch_cut.h"

namespace suppertide::ui {
namespace {

using testing::SizeIs;

/// Steps at these minutes of an hour, one list a column; each is ten high.
struct Hour
{
    explicit Hour(const std::vector<std::vector<int>>& minutes)
    {
        std::size_t count = 0;
        for (const auto& column : minutes) {
            count += column.size();
        }
        steps.reserve(count); // entries point into it
        stretch.when = interval(0, 60);
        for (const auto& column : minutes) {
            stretch.columns.emplace_back();
            for (const int minute : column) {
                SheetStep step;
                step.start = planTime(minute);
                steps.push_back(step);
                stretch.columns.back().emplace_back(&steps.back());
            }
        }
    }

    std::vector<SheetStep> steps;
    Stretch stretch;
};

double tenHigh(const SheetEntry& /*entry*/, std::size_t /*column*/)
{
    return 10;
}

TEST(StretchCut, LeavesAStretchThatFitsAsItIs)
{
    const Hour hour{{{0, 10}, {5}}};
    const auto parts = cutToFit(hour.stretch, tenHigh, 20);
    ASSERT_THAT(parts, SizeIs(1));
    EXPECT_EQ(parts[0].when, hour.stretch.when);
    EXPECT_EQ(parts[0].columns, hour.stretch.columns);
}

TEST(StretchCut, CutsAtTheTimeOfTheFirstEntryThatDoesNotFit)
{
    const Hour hour{{{0, 10, 30}, {40}}};
    const auto parts = cutToFit(hour.stretch, tenHigh, 20);
    ASSERT_THAT(parts, SizeIs(2));
    EXPECT_EQ(parts[0].when, interval(0, 30));
    EXPECT_THAT(parts[0].columns[0], SizeIs(2));
    EXPECT_THAT(parts[0].columns[1], SizeIs(0)); // 40 is later than the cut
    EXPECT_EQ(parts[1].when, interval(30, 60));
    EXPECT_THAT(parts[1].columns[0], SizeIs(1));
    EXPECT_THAT(parts[1].columns[1], SizeIs(1));
}

TEST(StretchCut, GivesAnEntryThatIsTooHighAPartOfItsOwn)
{
    const Hour hour{{{0, 10}}};
    EXPECT_THAT(cutToFit(hour.stretch, tenHigh, 5), SizeIs(2));
}

TEST(StretchCut, KeepsEveryEntryAndTurnOnceAndInOrder)
{
    test::forEachSeed(200, [](test::Random& random) {
        std::vector<std::vector<int>> minutes(static_cast<std::size_t>(random.between(1, 3)));
        for (auto& column : minutes) {
            int minute = 0;
            for (std::int64_t left = random.between(0, 12); left > 0; --left) {
                minute += static_cast<int>(random.between(0, 5));
                column.push_back(minute);
            }
        }
        Hour hour{minutes};
        std::vector<SheetOvenTurn> turns(static_cast<std::size_t>(random.between(0, 4)));
        for (SheetOvenTurn& turn : turns) {
            turn.at = planTime(random.between(0, 59));
            hour.stretch.turns.push_back(&turn);
        }
        const double room = static_cast<double>(random.between(5, 60));
        const auto parts = cutToFit(hour.stretch, tenHigh, room);

        Stretch joined;
        joined.columns.resize(minutes.size());
        PlanTime from = hour.stretch.when.start;
        std::size_t turnCount = 0;
        for (const Stretch& part : parts) {
            EXPECT_EQ(part.when.start, from);
            from = part.when.end;
            turnCount += part.turns.size();
            for (std::size_t column = 0; column < minutes.size(); ++column) {
                EXPECT_LE(static_cast<double>(part.columns[column].size()) * 10,
                          std::max(room, 10.0));
                joined.columns[column].insert(joined.columns[column].end(),
                                              part.columns[column].begin(),
                                              part.columns[column].end());
            }
        }
        EXPECT_EQ(from, hour.stretch.when.end);
        EXPECT_EQ(joined.columns, hour.stretch.columns);
        EXPECT_EQ(turnCount, turns.size());
    });
}

} // namespace
} // namespace suppertide::ui
