// What a night teaches: computed steps that took another time than was planned.
#include <gmock/gmock.h>

#include "core/night/times_to_learn.h"
#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::IsEmpty;
using testing::SizeIs;

/// A chicken whose roasting time is computed, with its plan.
struct Roast
{
    Roast()
    {
        Recipe chicken = recipe("Chicken", {inOven("Roast the chicken", 80_min, 190_degC)});
        FollowedFood bird;
        bird.id = FollowedFoodId{"bird"};
        bird.name = "bird";
        bird.kind.food = FoodClass::RawPoultry;
        bird.material = "chicken_whole";
        bird.shape = FoodShape::Round;
        bird.thickness = millimetres(75);
        bird.mass = grams(1600);
        bird.scaling = Scaling::Fixed;
        bird.isOnePiece = true;
        FoodTreatment roast;
        roast.step = StepId{"roast-the-chicken"};
        roast.treatment = Treatment::Heat;
        roast.to = 74_degC;
        roast.setsDuration = true;
        bird.steps = {roast};
        chicken.common.foods = {bird};
        supper.serve(chicken);
        plan = supper.laidOut();
    }

    [[nodiscard]] TaskIndex task(const std::string& end) const
    {
        return taskIndex(*plan->formulation, "chicken/*/roast-the-chicken" + end);
    }
    [[nodiscard]] Minutes planned() const
    {
        return plan->formulation->problem.tasks[task("")].duration;
    }
    /// In at 17:00, out `taken` later.
    [[nodiscard]] Progress reported(Minutes taken) const
    {
        Progress progress = withStarted({}, *plan, task(".in"), supper.instant(16, 59));
        progress = withDone(std::move(progress), *plan, task(".in"), supper.instant(17, 0));
        return withStarted(std::move(progress), *plan, task(".out"), supper.instant(17, 0) + taken);
    }
    [[nodiscard]] std::vector<TimeTaken> learned(const Progress& progress) const
    {
        return timesToLearn(*plan->formulation, progress, supper.kitchen);
    }

    Supper supper;
    PlanPtr plan;
};

TEST(TimesToLearn, AreThoseOfComputedStepsThatTookAnotherTime)
{
    const Roast roast;
    const auto times = roast.learned(roast.reported(roast.planned() + 12_min));
    ASSERT_THAT(times, SizeIs(1));
    EXPECT_EQ(times[0].name, "Roast the chicken");
    EXPECT_EQ(times[0].on, roast.supper.kitchen.ovens[0].id);
    EXPECT_EQ(toIso(times[0].date), "2027-06-19");
    EXPECT_EQ(times[0].taken, roast.planned() + 12_min);
    EXPECT_EQ(times[0].computed, roast.planned());
}

TEST(TimesToLearn, LeaveOutWhatTeachesNothing)
{
    const Roast roast;
    EXPECT_THAT(roast.learned({}), IsEmpty());
    EXPECT_THAT(roast.learned(roast.reported(roast.planned())), IsEmpty()) << "as planned";
    EXPECT_THAT(roast.learned(roast.reported(roast.planned() * 5)), IsEmpty()) << "not a roast";
    EXPECT_THAT(roast.learned(roast.reported(roast.planned() * 5 - 1_min)), SizeIs(1));
    const Progress onlyIn =
        withDone({}, *roast.plan, roast.task(".in"), roast.supper.instant(17, 0));
    EXPECT_THAT(roast.learned(onlyIn), IsEmpty()) << "not out yet";
}

TEST(TimesToLearn, AreProposedOnceAndMoveTheNextEstimate)
{
    Roast roast;
    const Progress progress = roast.reported(roast.planned() + 20_min);
    const Minutes before = roast.planned();
    roast.supper.kitchen.timesTaken = roast.learned(progress);
    EXPECT_THAT(roast.supper.kitchen.timesTaken, SizeIs(1));
    EXPECT_THAT(faultsOf(roast.supper.kitchen), IsEmpty());
    EXPECT_THAT(roast.learned(progress), IsEmpty());
    roast.plan = roast.supper.laidOut();
    EXPECT_GT(roast.planned(), before);
    EXPECT_LT(roast.planned(), before + 20_min);
    // What is learned from next is the estimate before learning, not the moved one.
    roast.supper.kitchen.timesTaken[0].date = CivilDate{2027, 6, 12};
    const auto again = roast.learned(roast.reported(roast.planned() + 5_min));
    ASSERT_THAT(again, SizeIs(1));
    EXPECT_EQ(again[0].computed, before);
}

} // namespace

} // namespace suppertide::test
