// Food safety goes by what was reported, and by what is left as it is planned.
#include <gmock/gmock.h>

#include "core/night/foods_on_the_night.h"
#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

/// A pie baked for an hour and served at 19:30; 25 minutes at table.
Supper pieSupper()
{
    Recipe pie = recipe("Pie", {inOven("Bake", 60_min, 180_degC)});
    FollowedFood food;
    food.id = FollowedFoodId{"pie"};
    food.name = "pie";
    food.kind.food = FoodClass::CookedDish;
    FoodTreatment bake;
    bake.step = StepId{"bake"};
    bake.treatment = Treatment::Heat;
    food.steps = {bake};
    pie.common.foods = {food};
    Supper supper;
    supper.occasion.preferences.rules = safety::RuleBook::UsHome;
    supper.serve(pie);
    return supper;
}

/// What breaks a rule after the pie came out of the oven at that time; looked at right then.
std::vector<std::string> rulesWithPieOutAt(int hour, int minute)
{
    const Supper supper = pieSupper();
    const PlanPtr plan = supper.laidOut();
    const auto task = [&](const char* end) {
        return taskIndex(*plan->formulation, std::string("pie/*/bake") + end);
    };
    const Instant out = supper.instant(hour, minute);
    Progress progress = withStarted({}, *plan, task(".in"), out - 61_min);
    progress = withDone(std::move(progress), *plan, task(".in"), out - 60_min);
    progress = withStarted(std::move(progress), *plan, task(".out"), out);
    progress = withDone(std::move(progress), *plan, task(".out"), out + 1_min);
    const auto rest = restOfEvening(supper.input(), progress, out + 5_min);
    EXPECT_TRUE(rest);
    const PlanPtr whole = foodsOnTheNight(*rest, carriedOn(*rest), supper.input());
    std::vector<std::string> rules;
    for (const Clash& clash : whole->clashes) {
        EXPECT_EQ(clash.kind, ClashKind::FoodSafety);
        rules.push_back(clash.finding->rule);
    }
    return rules;
}

// Two hours between 40 and 140 °F, at table included: USDA FSIS, “Danger Zone”.
TEST(FoodsOnTheNight, AreJudgedByWhenTheyReallyCameOutOfTheOven)
{
    EXPECT_THAT(rulesWithPieOutAt(19, 20), testing::IsEmpty());
    EXPECT_THAT(rulesWithPieOutAt(16, 30), testing::ElementsAre("us_home_danger_zone"));
}

} // namespace

} // namespace suppertide::test
