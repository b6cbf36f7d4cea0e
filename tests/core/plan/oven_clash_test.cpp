// Clashes of ovens, from the occasion to the sentence, each with its absence at the very edge.
#include <gmock/gmock.h>

#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// In for 88 minutes and out again: the oven is taken for 90 from when it goes in.
Recipe gratin(Celsius low, Celsius high)
{
    return recipe("Potato gratin", {inOven("Bake the gratin", 88_min, low, high)});
}

Recipe roots(Celsius low, Celsius high)
{
    return recipe("Roast roots", {inOven("Roast the roots", 38_min, low, high)});
}

/// The gratin goes in at 16:30 and is out at 18:00; the roots go in at the time given.
Supper gratinThenRoots(int hour, int minute)
{
    Supper supper;
    supper.serve(gratin(150_degC, 150_degC));
    supper.serve(roots(220_degC, 220_degC));
    supper.put("potato-gratin/*/bake-the-gratin.in", 16, 30);
    supper.put("roast-roots/*/roast-the-roots.in", hour, minute);
    return supper;
}

TEST(OvenClash, NamesTwoDishesThatWantOneOvenAtDifferentHeats)
{
    EXPECT_THAT(gratinThenRoots(17, 30).clashes(),
                ElementsAre("From 17:30 to 18:00 the oven is wanted at 150 °C by the potato gratin "
                            "and at 220 °C by the roast roots."));
}

TEST(OvenClash, BeginsWithTheFirstCommonMinute)
{
    EXPECT_THAT(
        gratinThenRoots(17, 59).clashes(),
        testing::Contains("From 17:59 to 18:00 the oven is wanted at 150 °C by the potato gratin "
                          "and at 220 °C by the roast roots."));
}

TEST(OvenClash, LetsTwoDishesShareWhereTheirBandsMeetInOneDegree)
{
    const auto together = [](Celsius highest) {
        Supper supper;
        supper.serve(gratin(140_degC, highest));
        supper.serve(roots(161_degC, 220_degC));
        supper.put("potato-gratin/*/bake-the-gratin.in", 16, 30);
        supper.put("roast-roots/*/roast-the-roots.in", 17, 10);
        return supper.clashes();
    };
    EXPECT_THAT(together(161_degC), IsEmpty());
    EXPECT_THAT(together(160_degC),
                ElementsAre("From 17:10 to 17:50 the oven is wanted at 140 °C to 160 °C by the "
                            "potato gratin and at 161 °C to 220 °C by the roast roots."));
}

// 70 °C at 10 °C a minute: seven minutes.
TEST(OvenClash, SaysWhenThereIsNoTimeToHeat)
{
    EXPECT_THAT(gratinThenRoots(18, 7).clashes(), IsEmpty());
    EXPECT_THAT(gratinThenRoots(18, 6).clashes(),
                ElementsAre("The oven has only 6 min, from 18:00 to 18:06, to change over: it is "
                            "wanted at 150 °C by the potato gratin and then at 220 °C by the roast "
                            "roots."));
}

// 70 °C at 4 °C a minute: 17.5 minutes, so eighteen.
TEST(OvenClash, SaysWhenThereIsNoTimeToCool)
{
    const auto rootsFirst = [](int minute) {
        Supper supper;
        supper.serve(gratin(150_degC, 150_degC));
        supper.serve(roots(220_degC, 220_degC));
        supper.put("roast-roots/*/roast-the-roots.in", 15, 20);
        supper.put("potato-gratin/*/bake-the-gratin.in", 16, minute);
        return supper.clashes();
    };
    EXPECT_THAT(rootsFirst(18), IsEmpty());
    EXPECT_THAT(rootsFirst(17),
                ElementsAre("The oven has only 17 min, from 16:00 to 16:17, to change over: it is "
                            "wanted at 220 °C by the roast roots and then at 150 °C by the potato "
                            "gratin."));
    EXPECT_THAT(rootsFirst(0),
                ElementsAre("The oven has no time, at 16:00, to change over: it is wanted at 220 "
                            "°C by the roast roots and then at 150 °C by the potato gratin."));
}

TEST(OvenClash, SaysWhenADishThatDriesInTheOvenSwitchedOffIsDisturbed)
{
    const auto dried = [](int minute) {
        Supper supper;
        Step dry = step("Dry the meringue", 120_min, unattended);
        supper.serve(
            recipe("Meringue", {with(dry, OvenUse{1, 15_degC, 250_degC, {}, OvenMode::Off})}));
        supper.serve(roots(220_degC, 220_degC));
        supper.put("meringue/*/dry-the-meringue.in", 15, 0); // until 17:02
        supper.put("roast-roots/*/roast-the-roots.in", 17, minute);
        return supper.clashes();
    };
    // From 20 °C to 220 °C: twenty minutes.
    EXPECT_THAT(dried(22), IsEmpty());
    EXPECT_THAT(dried(21),
                ElementsAre("The oven has only 19 min, from 17:02 to 17:21, to change over: it is "
                            "wanted switched off by the meringue and then at 220 °C by the roast "
                            "roots."));
}

TEST(OvenClash, CountsTheShelvesInTheKitchensOwnWords)
{
    const auto thirdTray = [](int minute) {
        Supper supper;
        supper.kitchen.ovens.front().id = KitchenItemId{"oven-grill"};
        supper.kitchen.ovens.front().name = "Small oven";
        Step bake = inOven("Bake the tartlets", 28_min, 180_degC);
        std::get<OvenUse>(bake.uses.front()).shelves = 2;
        supper.serve(recipe("Onion tartlets", {bake}));
        supper.serve(recipe("Stuffed squash", {inOven("Bake the squash", 58_min, 180_degC)}));
        supper.put("stuffed-squash/*/bake-the-squash.in", 17, 0); // until 18:00
        supper.put("onion-tartlets/*/bake-the-tartlets.in", 17, minute);
        return supper.clashes();
    };
    EXPECT_THAT(thirdTray(20),
                ElementsAre("From 17:20 to 17:50 3 shelves of the small oven are wanted by the "
                            "stuffed squash and the onion tartlets; it has 2."));
    EXPECT_THAT(thirdTray(59),
                testing::Contains(testing::HasSubstr("From 17:59 to 18:00 3 shelves")));
}

TEST(OvenClash, LetsTheLastShelfBeTaken)
{
    Supper supper;
    supper.serve(recipe("Onion tartlets", {inOven("Bake the tartlets", 28_min, 180_degC)}));
    supper.serve(recipe("Stuffed squash", {inOven("Bake the squash", 58_min, 180_degC)}));
    supper.put("stuffed-squash/*/bake-the-squash.in", 17, 0);
    supper.put("onion-tartlets/*/bake-the-tartlets.in", 17, 20);
    EXPECT_THAT(supper.clashes(), IsEmpty());
    supper.kitchen.ovens.front().shelves = 1;
    EXPECT_THAT(supper.clashes(),
                ElementsAre("From 17:20 to 17:50 2 shelves of the oven are wanted by the stuffed "
                            "squash and the onion tartlets; it has 1."));
}

TEST(OvenClash, SaysThatTheOvenCannotBeSoHot)
{
    const auto at = [](Celsius heat) {
        Supper supper;
        supper.serve(recipe("Flatbread", {inOven("Bake the flatbread", 8_min, heat)}));
        return supper.clashes();
    };
    EXPECT_THAT(at(250_degC), IsEmpty());
    EXPECT_THAT(at(251_degC),
                ElementsAre("From 19:20 to 19:30 the oven is wanted at 251 °C by the "
                            "flatbread, and cannot be: it goes from 50 °C to 250 °C."));
}

TEST(OvenClash, SaysThatFanAndGrillDoNotGoTogether)
{
    Supper supper;
    supper.kitchen.ovens.front().hasGrill = true;
    Step fan = step("Bake the tart", 38_min, unattended);
    Step grill = step("Grill the peppers", 8_min, unattended);
    supper.serve(recipe("Tart", {with(fan, OvenUse{1, 180_degC, 220_degC, {}, OvenMode::Fan})}));
    supper.serve(
        recipe("Peppers", {with(grill, OvenUse{1, 200_degC, 250_degC, {}, OvenMode::Grill})}));
    supper.put("tart/*/bake-the-tart.in", 17, 0);
    supper.put("peppers/*/grill-the-peppers.in", 17, 20);
    EXPECT_THAT(supper.clashes(),
                ElementsAre("From 17:20 to 17:30 the oven is wanted on “fan” by the tart and on "
                            "“grill” by the peppers."));
    supper.put("peppers/*/grill-the-peppers.in", 17, 40);
    EXPECT_THAT(supper.clashes(), IsEmpty());
}

TEST(OvenClash, SaysThatAPinnedSettingIsInTheWay)
{
    Supper supper;
    supper.serve(roots(220_degC, 220_degC));
    supper.put("roast-roots/*/roast-the-roots.in", 17, 12);
    supper.layout.ovenSettings = {{"oven", supper.instant(16), supper.instant(17), 100}};
    EXPECT_THAT(supper.clashes(), IsEmpty());
    supper.layout.ovenSettings.front().to = supper.instant(17, 1);
    EXPECT_THAT(
        supper.clashes(),
        ElementsAre(
            "The oven has only 11 min, from 17:01 to 17:12, to change over: it is "
            "wanted at 100 °C by the pinned setting and then at 220 °C by the roast roots."));
}

} // namespace

} // namespace suppertide::test
