// Evenings across a clock change, by the rules of the tz data base (IANA, file europe): in London
// the clocks go from 01:00 to 02:00 on the last Sunday of March (28 March 2027) and from 02:00 back
// to 01:00 on the last Sunday of October (31 October 2027).
#include <gmock/gmock.h>

#include "core/exchange/problem_json.h"
#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::ElementsAre;
using testing::IsEmpty;

constexpr CivilDate inSpring{2027, 3, 28};
constexpr CivilDate inAutumn{2027, 10, 31};
constexpr CivilDate inSummer{2027, 6, 20};

/// Bread that proves for sixteen hours and is on the table at one o'clock on that day.
Supper bread(const CivilDate& sunday)
{
    Supper supper;
    supper.occasion.courses.front().serving = {sunday, {13, 0}};
    Recipe bread = recipeInOrder(
        "Bread", {step("Knead the dough", 20_min), inOven("Bake the bread", 43_min, 220_degC)});
    bread.common.waits = {
        waitBetween("proves", "Knead the dough", "Bake the bread", 960_min, 960_min)};
    supper.serve(bread);
    return supper;
}

TEST(ClockChange, ANightHasElevenOrThirteenHours)
{
    // In at 12:15, so kneaded until sixteen true hours before that.
    EXPECT_EQ(startText(*bread(inSummer).laidOut(), "bread/*/knead-the-dough"), "19:55");
    EXPECT_EQ(startText(*bread(inSpring).laidOut(), "bread/*/knead-the-dough"), "18:55");
    EXPECT_EQ(startText(*bread(inAutumn).laidOut(), "bread/*/knead-the-dough"), "20:55");
    for (const CivilDate& day : {inSummer, inSpring, inAutumn}) {
        EXPECT_THAT(bread(day).clashes(), IsEmpty());
    }
}

TEST(ClockChange, CooksKeepTheirHoursByTheClockOnTheWall)
{
    for (const CivilDate& day : {inSpring, inAutumn}) {
        const FormulationPtr formulation = bread(day).formulated();
        std::vector<std::string> free;
        for (const Interval& hours : formulation->problem.cooks[CookIndex{0}].free) {
            free.push_back(toIso(formulation->calendar.civil(hours.start).clock) + " " +
                           toIso(formulation->calendar.civil(hours.end).clock));
        }
        EXPECT_THAT(free, testing::SizeIs(testing::Ge(2)));
        // The evening ends four hours after lunch: the last day is cut short by the horizon.
        free.pop_back();
        EXPECT_THAT(free, testing::Each("08:00 23:00"));
    }
}

TEST(ClockChange, ClashesAreReadByTheClockOnTheWall)
{
    Supper supper;
    supper.occasion.courses.front().serving = {inSpring, {13, 0}};
    supper.kitchen.cooks.front().usualHours = {{{0, 0}, {24, 0}, Presence::Free}};
    supper.serve(recipe("Shank", {inOven("Braise the shank", 58_min, 120_degC)}));
    supper.serve(recipe("Roots", {inOven("Roast the roots", 58_min, 220_degC)}));
    supper.put("shank/*/braise-the-shank.in", 0, 30);
    supper.put("roots/*/roast-the-roots.in", 0, 45);
    // Sixty minutes from half past twelve in the night end at half past two.
    EXPECT_THAT(supper.clashes(),
                ElementsAre("From 00:45 to 02:30 the oven is wanted at 120 °C by the shank and at "
                            "220 °C by the roots."));
}

TEST(ClockChange, AServingTimeThatTheClocksJumpOverIsTheMomentOfTheJump)
{
    Supper supper;
    supper.occasion.courses.front().serving = {inSpring, {1, 30}};
    supper.serve(recipe("Toast", {step("Toast the bread", 5_min, unattended)}));
    EXPECT_EQ(startText(*supper.laidOut(), "serve/main"), "02:00");
    EXPECT_EQ(startText(*supper.laidOut(), "toast/*/toast-the-bread"), "00:55");
}

TEST(SameInput, GivesTheSameProblemByteForByte)
{
    const Supper supper = bread(inAutumn);
    const std::string once = writeProblem(supper.formulated()->problem);
    const Supper again = bread(inAutumn);
    EXPECT_EQ(writeProblem(again.formulated()->problem), once);
    EXPECT_EQ(*again.formulated(), *supper.formulated());
    EXPECT_EQ(again.laidOut()->schedule, supper.laidOut()->schedule);
    EXPECT_EQ(again.laidOut()->clashes, supper.laidOut()->clashes);
}

} // namespace

} // namespace suppertide::test
