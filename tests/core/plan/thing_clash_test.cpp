// Clashes of burners, appliances, vessels and cold places, from the occasion to the sentence, each
// with its absence at the very edge.
#include <gmock/gmock.h>

#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::ElementsAre;
using testing::IsEmpty;

Recipe simmered(const std::string& name, Length pan)
{
    return recipe(name,
                  {with(step("Simmer the " + slug(name), 20_min, keepAnEye), BurnerUse{pan})});
}

TEST(ThingClash, CountsBurners)
{
    const auto threePans = [](int minute) {
        Supper supper;
        for (const char* name : {"Stock", "Sauce", "Compote"}) {
            supper.serve(simmered(name, 14_cm));
        }
        supper.put("stock/*/simmer-the-stock", 17, 0);
        supper.put("sauce/*/simmer-the-sauce", 17, 5);
        supper.put("compote/*/simmer-the-compote", 17, minute);
        return supper.clashes();
    };
    EXPECT_THAT(threePans(20), IsEmpty());
    EXPECT_THAT(threePans(19),
                ElementsAre("From 17:19 to 17:20 3 burners are wanted by the stock, the sauce and "
                            "the compote; there are 2."));
}

TEST(ThingClash, SaysThatOnlyTheSmallBurnerIsFree)
{
    const auto twoPans = [](Length second) {
        Supper supper;
        supper.serve(simmered("Stock", 21_cm));
        supper.serve(simmered("Sauce", second));
        supper.put("stock/*/simmer-the-stock", 17, 0);
        supper.put("sauce/*/simmer-the-sauce", 17, 5);
        return supper.clashes();
    };
    EXPECT_THAT(twoPans(15_cm), IsEmpty());
    EXPECT_THAT(twoPans(16_cm),
                ElementsAre("From 17:05 to 17:20 2 burners are wanted by the stock and the sauce; "
                            "only 1 will do."));
}

TEST(ThingClash, SaysThatNoBurnerTakesSoWideAPan)
{
    Supper supper;
    supper.serve(simmered("Stock", 21_cm));
    EXPECT_THAT(supper.clashes(), IsEmpty());
    supper.serve(simmered("Paella", 22_cm));
    supper.put("stock/*/simmer-the-stock", 15, 0);
    EXPECT_THAT(supper.clashes(),
                ElementsAre("The kitchen has no burner that is wide enough for the paella."));
}

TEST(ThingClash, NamesTheApplianceThatTwoDishesWant)
{
    const auto blended = [](int minute) {
        Supper supper;
        // Blending takes an eye, so that one cook can mind both.
        supper.serve(recipe("Soup", {with(step("Blend the soup", 10_min, keepAnEye),
                                          ApplianceUse{"blender", 0_min})}));
        supper.serve(recipe("Sauce", {with(step("Blend the sauce", 10_min, keepAnEye),
                                           ApplianceUse{"blender", 0_min})}));
        supper.put("soup/*/blend-the-soup", 17, 0);
        supper.put("sauce/*/blend-the-sauce", 17, minute);
        return supper.clashes();
    };
    EXPECT_THAT(blended(10), IsEmpty());
    EXPECT_THAT(blended(9), ElementsAre("From 17:09 to 17:10 the blender is wanted 2 times at "
                                        "once, by the soup and the sauce; there is 1."));
}

TEST(ThingClash, HoldsTheBlenderUntilItIsWashed)
{
    const auto blended = [](int minute) {
        Supper supper;
        supper.serve(
            recipe("Soup", {with(step("Blend the soup", 10_min), ApplianceUse{"blender", 5_min})}));
        supper.serve(recipe(
            "Sauce", {with(step("Blend the sauce", 10_min), ApplianceUse{"blender", 5_min})}));
        supper.put("soup/*/blend-the-soup", 17, 0);
        supper.put("soup/*/blend-the-soup.wash", 17, 10);
        supper.put("sauce/*/blend-the-sauce", 17, minute);
        return supper.clashes();
    };
    EXPECT_THAT(blended(15), IsEmpty());
    EXPECT_THAT(blended(14),
                testing::Contains("From 17:14 to 17:15 the blender is wanted 2 times at once, by "
                                  "the soup and the sauce; there is 1."));
}

TEST(ThingClash, NamesTheApplianceThatTheKitchenLacks)
{
    Supper supper;
    supper.serve(recipe(
        "Meringue", {with(step("Whisk the whites", 10_min), ApplianceUse{"stand mixer", 0_min})}));
    EXPECT_THAT(supper.clashes(), ElementsAre("The kitchen has no stand mixer for the meringue."));
    supper.kitchen.appliances.push_back({KitchenItemId{"mixer"}, "Mixer", "stand mixer"});
    EXPECT_THAT(supper.clashes(), IsEmpty());
}

TEST(ThingClash, NamesTheVesselThatTwoDishesWant)
{
    const auto seared = [](int minute) {
        Supper supper;
        supper.serve(recipe("Steak", {with(step("Rest in the pan", 10_min, keepAnEye),
                                           VesselUse{"wide pan", 2_l, 1, 0_min})}));
        supper.serve(recipe("Onions", {with(step("Sweat the onions", 10_min, keepAnEye),
                                            VesselUse{"wide pan", 2_l, 1, 0_min})}));
        supper.put("steak/*/rest-in-the-pan", 17, 0);
        supper.put("onions/*/sweat-the-onions", 17, minute);
        return supper.clashes();
    };
    EXPECT_THAT(seared(10), IsEmpty());
    EXPECT_THAT(seared(9), ElementsAre("From 17:09 to 17:10 the wide pan is wanted 2 times at "
                                       "once, by the steak and the onions; there is 1."));
}

TEST(ThingClash, SaysThatNoVesselIsLargeEnough)
{
    const auto cooked = [](Litres volume) {
        Supper supper;
        supper.serve(recipe("Risotto", {with(step("Stir the rice", 20_min),
                                             VesselUse{"wide pan", volume, 1, 0_min})}));
        return supper.clashes();
    };
    EXPECT_THAT(cooked(3_l), IsEmpty());
    EXPECT_THAT(cooked(decilitres(31)),
                ElementsAre("The kitchen has no wide pan that is large enough for the risotto."));
}

TEST(ThingClash, SaysThatThereAreNotEnoughOfAUtensil)
{
    const auto tins = [](int count) {
        Supper supper;
        supper.kitchen.vessels.push_back(
            {KitchenItemId{"tin"}, "Tart tin", "tart tin", decilitres(2), 10_cm, 6});
        supper.serve(
            recipe("Tartlets", {with(step("Line the tins", 20_min),
                                     VesselUse{"tart tin", decilitres(2), count, 0_min})}));
        return supper.clashes();
    };
    EXPECT_THAT(tins(6), IsEmpty());
    EXPECT_THAT(tins(7), ElementsAre("The kitchen has 6 × tart tin; 7 are wanted at once for the "
                                     "tartlets."));
}

TEST(ThingClash, SaysHowManyLitresTheFridgeLacks)
{
    const auto chilled = [](Litres second) {
        Supper supper;
        for (const auto& [name, litres] : {std::pair{"Trifle", 25_l}, std::pair{"Jelly", second}}) {
            Recipe cold = recipe(name, {step("Fill the bowl", 10_min)});
            Wait wait = waitBetween("chills", "Fill the bowl", "", 60_min);
            wait.keep = {inFridge(litres)};
            cold.common.waits = {wait};
            supper.serve(cold);
        }
        supper.put("trifle/*/fill-the-bowl", 15, 0);
        supper.put("jelly/*/fill-the-bowl", 17, 0);
        return supper.clashes();
    };
    EXPECT_THAT(chilled(15_l), IsEmpty());
    EXPECT_THAT(chilled(16_l), ElementsAre("From 17:10 to 19:30 the fridge is to hold 41 l for the "
                                           "trifle and the jelly; there is room for 40 l."));
}

TEST(ThingClash, SaysThatNobodyIsAwakeWhileSomethingIsHot)
{
    const auto braised = [](int minute) {
        Supper supper; // Maren is up until 23:00 and from 8:00 on
        supper.serve(recipe("Shoulder", {inOven("Braise the shoulder", 600_min, 110_degC)}));
        supper.layout.starts["shoulder/*/braise-the-shoulder.in"] = supper.instant(7, minute);
        return supper.clashes();
    };
    EXPECT_THAT(braised(59),
                ElementsAre("From 07:59 to 08:00 Maren is not free, and is to do “Shoulder into "
                            "the oven”.",
                            "From 07:59 to 08:00 nobody is awake at home while something is hot: "
                            "“Shoulder into the oven”."));
    EXPECT_THAT(braised(60), IsEmpty());
}

} // namespace

} // namespace suppertide::test
