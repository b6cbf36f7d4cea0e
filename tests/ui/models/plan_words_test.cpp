// What is said of a plan and of what is offered in its stead.
#include <gmock/gmock.h>

#include "tests/support/demo_evening.h"
#include "tests/support/small_evening.h"
#include "ui/models/calm_places.h"
#include "ui/models/plan_words.h"

namespace suppertide::ui {
namespace {

using suppertide::test::at;
using suppertide::test::SmallEvening;

QString distance(std::int64_t cost, std::int64_t bound)
{
    return distanceText(Proof{cost, bound});
}

TEST(DistanceText, IsThatOfWhatIsProven)
{
    EXPECT_EQ(distanceText(std::nullopt), "not known yet");
    EXPECT_EQ(distance(500, 500), "best there is");
    EXPECT_EQ(distance(0, 0), "best there is");
    EXPECT_EQ(distance(103, 100), "at most 3 % from the best");
    EXPECT_EQ(distance(1031, 1000), "at most 4 % from the best"); // rounded up: never too good
    EXPECT_EQ(distance(1001, 1000), "at most 1 % from the best");
    EXPECT_EQ(distance(200, 100), "not known yet"); // twice as dear says nothing
    EXPECT_EQ(distance(100, 0), "not known yet");
}

class PlanWords : public testing::Test
{
protected:
    PlanWords()
    {
        slice_ = evening_.add({"Gratin", "Slice", at(17), 20});
        bake_ = evening_.add({"Gratin", "Bake", at(17, 30), 60});
        evening_.formulation.tasks[slice_].step = StepId{"slice"};
        evening_.formulation.tasks[bake_].step = StepId{"bake"};
    }

    [[nodiscard]] PlanPtr moved(Minutes slice, Minutes bake) const
    {
        SmallEvening other = evening_;
        other.schedule.starts[slice_] = *other.schedule.starts[slice_] + slice;
        other.schedule.starts[bake_] = *other.schedule.starts[bake_] + bake;
        return other.plan();
    }

    SmallEvening evening_;
    TaskIndex slice_;
    TaskIndex bake_;
};

TEST_F(PlanWords, SayHowManyStepsMoveAndHowFar)
{
    const PlanPtr now = evening_.plan();
    EXPECT_EQ(changeText(*now, *moved(Minutes{0}, Minutes{-20})), "1 step moves, by 20 min");
    EXPECT_EQ(changeText(*now, *moved(Minutes{5}, Minutes{-20})), "2 steps move, at most 20 min");
    EXPECT_EQ(changeText(*now, *now), "no step moves, only washing up or who does what");
}

TEST_F(PlanWords, SayWhatBecomesOfTheOvenAndTheClashes)
{
    Plan now = *evening_.plan({Clash{}});
    now.figures.ovenChanges = 3;
    Plan offered = *moved(Minutes{0}, Minutes{-90});
    offered.figures.ovenChanges = 2;
    EXPECT_EQ(changeText(now, offered), "1 step moves, by 1 h 30; 1 oven change fewer; nothing "
                                        "collides any more");
    offered.figures.ovenChanges = 5;
    offered.clashes = {Clash{}, Clash{}, Clash{}};
    EXPECT_EQ(changeText(now, offered),
              "1 step moves, by 1 h 30; 2 oven changes more; 2 clashes more");
}

TEST_F(PlanWords, PutFiguresSideBySideWhereTheyDiffer)
{
    auto now = std::make_shared<Plan>(*evening_.plan());
    now->figures.handsOnLastHour = Minutes{41};
    now->figures.sessions = 3;
    auto offered = std::make_shared<Plan>(*now);
    offered->figures.handsOnLastHour = Minutes{35};
    const auto cells = figureCells({now, std::nullopt}, JudgedPlan{offered, Proof{103, 100}});
    ASSERT_EQ(cells.size(), 6U);
    EXPECT_EQ(cells[0].label, "last hour");
    EXPECT_EQ(cells[0].text(), "41 min → 35 min");
    EXPECT_EQ(cells[3].text(), "3");
    EXPECT_EQ(cells[5].text(), "not known yet → at most 3 % from the best");
    for (const FigureCell& cell : cells) {
        EXPECT_FALSE(cell.meaning.isEmpty());
    }
}

TEST_F(PlanWords, CallNothingBestThatClashes)
{
    const auto cells = figureCells({evening_.plan({Clash{}}), Proof{5, 5}}, std::nullopt);
    EXPECT_EQ(cells.back().text(), "it clashes");
}

TEST(CalmPlaces, AreReachedOneAfterTheOther)
{
    EXPECT_EQ(nextCalmPlace(0, 1), 10);
    EXPECT_EQ(nextCalmPlace(10, 1), 50);
    EXPECT_EQ(nextCalmPlace(60, 1), 90);
    EXPECT_EQ(nextCalmPlace(90, 1), 90);
    EXPECT_EQ(nextCalmPlace(100, 1), 100);
    EXPECT_EQ(nextCalmPlace(100, -1), 90);
    EXPECT_EQ(nextCalmPlace(60, -1), 50);
    EXPECT_EQ(nextCalmPlace(10, -1), 10);
    EXPECT_EQ(nextCalmPlace(5, -1), 5);
}

TEST(CalmPlaces, HaveNamesOfTheirOwn)
{
    EXPECT_EQ(calmName(0), calmName(10));
    EXPECT_NE(calmName(10), calmName(50));
    EXPECT_NE(calmName(50), calmName(90));
    EXPECT_EQ(calmName(100), calmName(90));
}

} // namespace
} // namespace suppertide::ui
