#include <gtest/gtest.h>

#include "core/planner/exact/stay_lengths.h"
#include "tests/support/problem/small_problem.h"

namespace suppertide {

namespace {

using exact::stayLengths;

/// Into the oven, bake, out of it again.
struct Baked
{
    test::SmallProblem made{500};
    TaskIndex into = made.task("into", 2);
    TaskIndex bake = made.task("bake", 40);
    TaskIndex out = made.task("out", 3);

    Baked()
    {
        made.oven("o", 1);
        made.inOven("stay", into, 170, 190, 180).to = test::endOf(out);
        made.lag("l1", test::endOf(into), test::startOf(bake), 0, 0);
        made.lag("l2", test::endOf(bake), test::startOf(out), 5, std::nullopt);
    }
    [[nodiscard]] exact::StayLength lengths() const
    {
        return stayLengths(made.problem)[OvenDemandIndex{0}];
    }
    [[nodiscard]] std::int64_t length() const { return lengths().least; }
    void choose(const std::vector<std::vector<TaskIndex>>& options)
    {
        Choice choice;
        for (const auto& tasks : options) {
            choice.options.push_back({"", tasks, 0});
        }
        made.problem.choices.push_back(choice);
    }
};

TEST(StayLengths, AreThoseOfWhatIsDoneInBetween)
{
    EXPECT_EQ(Baked().length(), 2 + 40 + 5 + 3);
}

TEST(StayLengths, FollowFromMostWaitsToo)
{
    Baked baked;
    // The bread is out 80 minutes after it went in, and no more than 10 before the stay ends.
    const TaskIndex bread = baked.made.task("bread", 1);
    baked.made.lag("l3", test::startOf(baked.into), test::startOf(bread), 80, std::nullopt);
    baked.made.lag("l4", test::startOf(baked.out), test::startOf(bread), std::nullopt, 10);
    EXPECT_EQ(baked.length(), 80 - 10 + 3);
}

TEST(StayLengths, AreNoMoreThanTheWaitsAllow)
{
    Baked baked;
    EXPECT_FALSE(baked.lengths().most);
    EXPECT_FALSE(baked.lengths().isFixed());
    baked.made.lag("l3", test::endOf(baked.bake), test::startOf(baked.out), std::nullopt, 9);
    EXPECT_EQ(baked.lengths().most, 2 + 40 + 9 + 3);
    EXPECT_FALSE(baked.lengths().isFixed());
    baked.made.lag("l4", test::endOf(baked.bake), test::startOf(baked.out), std::nullopt, 5);
    EXPECT_TRUE(baked.lengths().isFixed());
    EXPECT_EQ(baked.lengths().most, 50);
}

/// What is there only with another option says nothing of how long it lasts.
TEST(StayLengths, AreNotHeldDownByWhatNeedNotBe)
{
    Baked baked;
    baked.made.lag("l3", test::endOf(baked.bake), test::startOf(baked.out), std::nullopt, 5);
    const TaskIndex other = baked.made.task("other", 1);
    baked.choose({{baked.bake}, {other}});
    EXPECT_FALSE(baked.lengths().most);
}

TEST(StayLengths, CountOnlyWhatIsThereWithTheStay)
{
    Baked baked;
    const TaskIndex other = baked.made.task("other", 1);
    baked.choose({{baked.bake}, {other}});
    EXPECT_EQ(baked.length(), 0);
    Baked all;
    all.choose({{all.into, all.bake, all.out}, {all.made.task("other", 1)}});
    EXPECT_EQ(all.length(), 50);
}

TEST(StayLengths, OfLagsThatNoPlanKeepsEnd)
{
    Baked baked;
    baked.made.lag("l3", test::startOf(baked.bake), test::startOf(baked.into), 1, std::nullopt);
    EXPECT_LE(baked.length(), 500);
}

} // namespace

} // namespace suppertide
