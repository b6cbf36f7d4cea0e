// Clashes of hands, hours, waits and serving times, from the occasion to the sentence, each with
// its absence one minute further on.
#include <gmock/gmock.h>

#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::ElementsAre;
using testing::IsEmpty;

std::vector<std::string> chopAndStir(int minute, Attention first, Attention second)
{
    Supper supper;
    supper.serve(recipe("Salad", {step("Chop the herbs", 10_min, first)}));
    supper.serve(recipe("Polenta", {step("Stir the polenta", 20_min, second)}));
    supper.put("salad/*/chop-the-herbs", 17, 0);
    supper.put("polenta/*/stir-the-polenta", 17, minute);
    return supper.clashes();
}

TEST(HandsClash, NamesTheCookAndBothDeeds)
{
    EXPECT_THAT(chopAndStir(9, handsOn, handsOn),
                ElementsAre("From 17:09 to 17:10 Maren cannot do both at once: “Chop the herbs” "
                            "and “Stir the polenta”."));
    EXPECT_THAT(chopAndStir(10, handsOn, handsOn), IsEmpty());
}

// Common practice: one chops while a pot simmers, but does not leave eggs that are being tempered.
TEST(HandsClash, LetsOneChopWhileAPotSimmersButNotWhileTempering)
{
    EXPECT_THAT(chopAndStir(5, handsOn, keepAnEye), IsEmpty());
    EXPECT_THAT(chopAndStir(5, undivided, keepAnEye),
                ElementsAre("From 17:05 to 17:10 Maren cannot do both at once: “Chop the herbs” "
                            "and “Stir the polenta”."));
    EXPECT_THAT(chopAndStir(5, undivided, unattended), IsEmpty());
}

TEST(HandsClash, AllowsAHundredPercentAndNoMore)
{
    EXPECT_THAT(chopAndStir(5, handsOn, Attention::percent(20)), IsEmpty());
    EXPECT_THAT(chopAndStir(5, handsOn, Attention::percent(21)), testing::SizeIs(1));
}

TEST(HandsClash, GoesAwayWithASecondCook)
{
    Supper supper;
    supper.serve(recipe("Salad", {step("Chop the herbs", 10_min)}));
    supper.serve(recipe("Polenta", {step("Stir the polenta", 20_min)}));
    supper.put("salad/*/chop-the-herbs", 17, 0);
    supper.put("polenta/*/stir-the-polenta", 17, 0);
    EXPECT_THAT(supper.clashes(), testing::SizeIs(1));
    supper.addCook("Jory");
    EXPECT_THAT(supper.clashes(), IsEmpty());
}

TEST(HandsClash, SpreadsWhatIsTooMuchOverTheCooks)
{
    Supper supper;
    supper.addCook("Jory");
    for (const char* name : {"Salad", "Polenta", "Sauce", "Relish"}) {
        supper.serve(recipe(name, {step(std::string("Stir the ") + slug(name), 20_min)}));
        supper.put(slug(name) + "/*/stir-the-" + slug(name), 17, 0);
    }
    const PlanPtr plan = supper.laidOut();
    ASSERT_THAT(plan->clashes, testing::SizeIs(2));
    EXPECT_NE(plan->clashes[0].cook, plan->clashes[1].cook);
    EXPECT_THAT(plan->clashes[0].tasks, testing::SizeIs(2));
    EXPECT_THAT(plan->clashes[1].tasks, testing::SizeIs(2));
}

TEST(CookNotFree, NamesTheCookWhoIsAway)
{
    const auto stirred = [](int minute) {
        Supper supper;
        supper.kitchen.cooks.front().usualHours = {{{16, 0}, {18, 0}, Presence::Free},
                                                   {{18, 0}, {23, 0}, Presence::AtHome}};
        supper.serve(recipe("Polenta", {step("Stir the polenta", 20_min)}));
        supper.put("polenta/*/stir-the-polenta", 17, minute);
        return supper.clashes();
    };
    EXPECT_THAT(stirred(40), IsEmpty());
    EXPECT_THAT(stirred(41), ElementsAre("From 18:00 to 18:01 Maren is not free, and is to do "
                                         "“Stir the polenta”."));
}

TEST(CookNotFree, NamesTheCookWhoAloneMayDoIt)
{
    const auto stirred = [](int minute) {
        Supper supper;
        supper.addCook("Jory").usualHours = {{{16, 0}, {23, 0}, Presence::Free}};
        supper.serve(recipe("Polenta", {step("Stir the polenta", 20_min)})).cook = CookId{"jory"};
        supper.put("polenta/*/stir-the-polenta", 15, minute);
        return supper.clashes();
    };
    EXPECT_THAT(stirred(60), IsEmpty());
    EXPECT_THAT(stirred(59), ElementsAre("From 15:59 to 16:00 Jory is not free, and is to do "
                                         "“Stir the polenta”."));
}

TEST(CookNotFree, SaysThatNobodyHasTheSkill)
{
    Supper supper;
    Step carve = step("Carve the joint", 10_min, undivided);
    carve.skill = "carving";
    supper.serve(recipe("Joint", {carve}));
    EXPECT_THAT(supper.clashes(), ElementsAre("From 19:20 to 19:30 no cook can do “Carve the "
                                              "joint”, which asks for “carving”."));
    supper.kitchen.cooks.front().skills = {"carving"};
    EXPECT_THAT(supper.clashes(), IsEmpty());
    supper.addCook("Jory");
    supper.occasion.courses.front().dishes.front().cook = CookId{"jory"};
    EXPECT_THAT(
        supper.clashes(),
        ElementsAre("From 19:20 to 19:30 “Carve the joint” is given to Jory, who cannot: it "
                    "asks for “carving”."));
}

TEST(CookNotFree, SaysThatAHostIsAtTable)
{
    const auto dessert = [](int minute) {
        Supper supper;
        supper.serve(recipe("Salad", {step("Chop the herbs", 10_min)}));
        supper.addCourse("Dessert", {20, 30});
        supper.serve(recipe("Posset", {step("Whip the cream", 10_min)}));
        supper.put("posset/*/whip-the-cream", 19, minute);
        return supper.clashes();
    };
    // The main course is eaten from 19:30 to 19:55.
    EXPECT_THAT(dessert(55), IsEmpty());
    EXPECT_THAT(dessert(54), ElementsAre("From 19:54 to 19:55 Maren is at table, and is to do "
                                         "“Whip the cream”."));
}

TEST(CookNotFree, LetsAnEyeBeKeptFromTheTable)
{
    const auto kept = [](Minutes out) {
        Supper supper;
        supper.serve(recipe("Salad", {step("Chop the herbs", 10_min)}));
        supper.addCourse("Dessert", {20, 30});
        Step bake = inOven("Bake the crumble", 30_min, 180_degC);
        bake.ovenOut = out;
        supper.serve(recipe("Crumble", {bake}));
        supper.put("crumble/*/bake-the-crumble", 19, 12);
        return supper.clashes();
    };
    EXPECT_THAT(kept(2_min), IsEmpty());
    EXPECT_THAT(kept(3_min), ElementsAre("From 19:42 to 19:45 Maren is at table, and is to do "
                                         "“Crumble out of the oven”."));
}

std::vector<std::string> restedFor(int minutes, std::optional<Minutes> most)
{
    Supper supper;
    Recipe joint =
        recipe("Joint", {step("Sear the joint", 10_min),
                         after(step("Carve the joint", 10_min, undivided), {"Sear the joint"})});
    joint.common.waits = {waitBetween("rests", "Sear the joint", "Carve the joint", 15_min, most)};
    supper.serve(joint);
    supper.put("joint/*/sear-the-joint", 18, 0);
    supper.put("joint/*/carve-the-joint", 18, 10 + minutes);
    return supper.clashes();
}

TEST(WaitClash, SaysWhenAWaitIsTooShort)
{
    EXPECT_THAT(restedFor(15, {}), IsEmpty());
    EXPECT_THAT(restedFor(14, {}),
                ElementsAre("The joint has 14 min for “rests”, from 18:10 to 18:24; it should be "
                            "15 min at least."));
}

TEST(WaitClash, SaysWhenAWaitIsTooLong)
{
    EXPECT_THAT(restedFor(40, 40_min), IsEmpty());
    EXPECT_THAT(restedFor(41, 40_min),
                ElementsAre("The joint has 41 min for “rests”, from 18:10 to 18:51; it should be "
                            "40 min at most."));
}

TEST(WaitClash, SaysWhichStepComesFirst)
{
    const auto ordered = [](int minute) {
        Supper supper;
        supper.serve(recipeInOrder("Polenta", {step("Boil the water", 10_min, unattended),
                                               step("Stir the polenta", 20_min)}));
        supper.put("polenta/*/boil-the-water", 18, 0);
        supper.put("polenta/*/stir-the-polenta", 18, minute);
        return supper.clashes();
    };
    EXPECT_THAT(ordered(10), IsEmpty());
    EXPECT_THAT(ordered(9), ElementsAre("“Stir the polenta” comes 1 min too early: first comes "
                                        "“Boil the water”."));
}

TEST(LateClash, NamesTheCourseItsTimeAndTheMinutes)
{
    const auto stirred = [](int minute) {
        Supper supper;
        supper.kitchen.cooks.front().isHost = false;
        supper.serve(recipe("Polenta", {step("Stir the polenta", 20_min)}));
        supper.put("polenta/*/stir-the-polenta", 19, minute);
        return supper.clashes();
    };
    EXPECT_THAT(stirred(10), IsEmpty());
    EXPECT_THAT(stirred(11), ElementsAre("The main is to be served at 19:30 and is 1 min late: "
                                         "“Stir the polenta”."));
}

TEST(WindowClash, SaysTheHoursGivenForAHouseJob)
{
    const auto laid = [](int minute) {
        Supper supper;
        supper.serve(recipe("Polenta", {step("Stir the polenta", 20_min)}));
        const CivilDate day{2027, 6, 19};
        supper.occasion.houseJobs = {{HouseJobId{"table"},
                                      "Lay the table",
                                      20_min,
                                      handsOn,
                                      {day, {16, 0}},
                                      {day, {18, 0}},
                                      {}}};
        supper.put("job/table", 17, minute);
        return supper.clashes();
    };
    EXPECT_THAT(laid(40), IsEmpty());
    EXPECT_THAT(laid(41), ElementsAre("“Lay the table” is from 17:41 to 18:01, outside what is "
                                      "given for it: 16:00 to 18:00."));
}

} // namespace

} // namespace suppertide::test
