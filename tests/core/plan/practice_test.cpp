// Trade facts as a recipe states them (common practice unless a source stands beside them): the
// plan holds at their limits and a minute further on it does not.
#include <gmock/gmock.h>

#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::ElementsAre;
using testing::IsEmpty;

// A roast rests ten to twenty minutes before it is carved.
TEST(Practice, ARoastRestsTenToTwentyMinutes)
{
    const auto rested = [](int minutes) {
        Supper supper;
        Recipe joint = recipeInOrder("Joint", {inOven("Roast the joint", 58_min, 180_degC),
                                               step("Carve the joint", 10_min, undivided)});
        joint.common.waits = {
            waitBetween("rests", "Roast the joint", "Carve the joint", 10_min, 20_min)};
        supper.serve(joint);
        supper.put("joint/*/roast-the-joint.in", 17, 0);
        supper.put("joint/*/carve-the-joint", 18, minutes);
        return supper.clashes();
    };
    EXPECT_THAT(rested(9), testing::SizeIs(1));
    EXPECT_THAT(rested(10), IsEmpty());
    EXPECT_THAT(rested(20), IsEmpty());
    EXPECT_THAT(rested(21),
                ElementsAre("The joint has 21 min for “rests”, from 18:00 to 18:21; it should be "
                            "20 min at most."));
}

// Baked at 120 °C, a meringue then dries for hours where it is, the oven switched off.
TEST(Practice, AMeringueDriesInTheOvenSwitchedOff)
{
    Supper supper;
    Step bake = inOven("Bake the meringue", 60_min, 110_degC, 125_degC);
    bake.ovenOut = 0_min;
    Step dry = with(step("Dry the meringue", 480_min, unattended),
                    OvenUse{1, 20_degC, 125_degC, {}, OvenMode::Off});
    dry.ovenIn = 0_min;
    Recipe meringue = recipeInOrder("Meringue", {bake, dry});
    Wait shut = waitBetween("stays shut in", "Bake the meringue", "Dry the meringue", 0_min, 0_min);
    meringue.common.waits = {shut};
    supper.serve(meringue);
    supper.put("meringue/*/bake-the-meringue.in", 8, 0); // dry at 17:02
    const PlanPtr plan = supper.laidOut();
    EXPECT_THAT(plan->clashes, IsEmpty());
    EXPECT_EQ(plan->schedule.ovens[OvenDemandIndex{0}], plan->schedule.ovens[OvenDemandIndex{1}]);
    const OvenProgram& program = plan->schedule.programs[OvenIndex{0}];
    ASSERT_EQ(program.size(), 2U);
    EXPECT_FALSE(program.back().setC);
    EXPECT_EQ(toIso(plan->formulation->calendar.civil(program.back().at).clock), "09:01");
    // A roast meanwhile would end the drying.
    supper.serve(recipe("Roots", {inOven("Roast the roots", 40_min, 220_degC)}));
    supper.put("roots/*/roast-the-roots.in", 16, 0);
    EXPECT_THAT(supper.clashes(),
                ElementsAre("From 16:00 to 16:42 the oven is wanted switched off by the meringue "
                            "and at 220 °C by the roots."));
}

// Baked custard chills four hours at least; 3 to 4 days in the fridge at most (foodsafety.gov, cold
// food storage chart).
TEST(Practice, ABakedCustardChillsFourHoursAndKeepsThreeDays)
{
    const auto chilled = [](Minutes before) {
        Supper supper;
        Recipe custard = recipeInOrder("Custard", {step("Cover the custards", 5_min),
                                                   step("Burn the tops", 10_min, undivided)});
        Wait wait =
            waitBetween("chills", "Cover the custards", "Burn the tops", 240_min, 3 * 1440_min);
        wait.keep = {inFridge(4_l)};
        custard.common.waits = {wait};
        supper.serve(custard);
        supper.put("custard/*/burn-the-tops", 19, 0);
        supper.layout.starts["custard/*/cover-the-custards"] = supper.instant(19) - before - 5_min;
        return supper.clashes();
    };
    EXPECT_THAT(chilled(239_min), ElementsAre("The custard has 3 h 59 for “chills”, from 15:01 to "
                                              "19:00; it should be 4 h at least."));
    EXPECT_THAT(chilled(240_min), IsEmpty());
    EXPECT_THAT(chilled(3 * 1440_min), IsEmpty());
    EXPECT_THAT(chilled(3 * 1440_min + 1_min),
                ElementsAre(testing::EndsWith("it should be 3 days at most.")));
}

// A crust of caramel weeps: burnt no more than half an hour before it is served.
TEST(Practice, ACaramelCrustIsMadeAtTheLastMoment)
{
    const auto burnt = [](int minute) {
        Supper supper;
        Recipe custard = recipe("Custard", {step("Burn the tops", 10_min, undivided)});
        custard.common.waits = {waitBetween("keeps its crust", "Burn the tops", "", 2_min, 30_min)};
        supper.serve(custard);
        supper.put("custard/*/burn-the-tops", 18, minute);
        return supper.clashes();
    };
    EXPECT_THAT(burnt(50), IsEmpty());
    EXPECT_THAT(burnt(49), ElementsAre("The custard has 31 min for “keeps its crust”, from 18:59 "
                                       "to 19:30; it should be 30 min at most."));
}

} // namespace

} // namespace suppertide::test
