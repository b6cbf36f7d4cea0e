#include <gtest/gtest.h>

#include "core/planner/exact/least_lengths.h"
#include "tests/support/problem/small_problem.h"

namespace suppertide {

namespace {

using exact::leastLengths;

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
    [[nodiscard]] std::int64_t length() const
    {
        return leastLengths(made.problem)[OvenDemandIndex{0}];
    }
    void choose(const std::vector<std::vector<TaskIndex>>& options)
    {
        Choice choice;
        for (const auto& tasks : options) {
            choice.options.push_back({"", tasks, 0});
        }
        made.problem.choices.push_back(choice);
    }
};

TEST(LeastLengths, AreThoseOfWhatIsDoneInBetween)
{
    EXPECT_EQ(Baked().length(), 2 + 40 + 5 + 3);
}

TEST(LeastLengths, FollowFromMostWaitsToo)
{
    Baked baked;
    // The bread is out 80 minutes after it went in, and no more than 10 before the stay ends.
    const TaskIndex bread = baked.made.task("bread", 1);
    baked.made.lag("l3", test::startOf(baked.into), test::startOf(bread), 80, std::nullopt);
    baked.made.lag("l4", test::startOf(baked.out), test::startOf(bread), std::nullopt, 10);
    EXPECT_EQ(baked.length(), 80 - 10 + 3);
}

TEST(LeastLengths, CountOnlyWhatIsThereWithTheStay)
{
    Baked baked;
    const TaskIndex other = baked.made.task("other", 1);
    baked.choose({{baked.bake}, {other}});
    EXPECT_EQ(baked.length(), 0);
    Baked all;
    all.choose({{all.into, all.bake, all.out}, {all.made.task("other", 1)}});
    EXPECT_EQ(all.length(), 50);
}

TEST(LeastLengths, OfLagsThatNoPlanKeepsEnd)
{
    Baked baked;
    baked.made.lag("l3", test::startOf(baked.bake), test::startOf(baked.into), 1, std::nullopt);
    EXPECT_LE(baked.length(), 500);
}

} // namespace

} // namespace suppertide
