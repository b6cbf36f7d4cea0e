// Conflicts, ways out and reasons as a cook reads them.
#include <gmock/gmock.h>

#include "core/propose/make_plan.h"
#include "core/wording/advice_wording.h"
#include "tests/core/advice/advice_suppers.h"

namespace suppertide {
namespace {

using test::findWay;
using test::inOven;
using test::recipeInOrder;
using test::step;
using test::Supper;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::StartsWith;

std::vector<std::string> conflictOf(const Supper& supper)
{
    const auto outcome = makePlan({supper.input(), test::enough()});
    const auto* none = outcome ? std::get_if<NoPlan>(&*outcome) : nullptr;
    if (none == nullptr || none->conflict.empty()) {
        return {"no conflict was proven"};
    }
    return conflictSentences(*none->formulation, supper.occasion, none->conflict);
}

TEST(ConflictSentences, SayWhenSomethingHotNeedsSomebodyWhoIsNotThere)
{
    EXPECT_THAT(
        conflictOf(test::custardTooLate()),
        ElementsAre("The custard: 42 min with somebody awake at home, “chills” for 4 h to 5 h, "
                    "“stands” for at most 30 min, serving the main at 15:00; so between "
                    "08:43 and 10:55.",
                    "From Fri 18 June 22:00 to Sat 19 June 11:30 nobody is awake at home.",
                    "That does not fit: heat needs somebody awake at home."));
}

TEST(ConflictSentences, CountTheTimeFromTheCooksComingToTheServing)
{
    Supper supper = test::custardTooLate();
    supper.kitchen.cooks.front().usualHours = {{{7, 0}, {11, 30}, Presence::AtHome},
                                               {{11, 30}, {22, 0}, Presence::Free}};
    EXPECT_THAT(
        conflictOf(supper),
        ElementsAre("“Bake the custard” cannot begin before 11:30, when Maren is free, then it "
                    "takes 42 min, then “chills” for at least 4 h, then “Turn it out” takes "
                    "5 min; that makes 16:17 at the earliest.",
                    "The main is to be served at 15:00: 1 h 17 too late."));
}

TEST(ConflictSentences, SayWhatTwoDishesWantOfOneThingAtOneTime)
{
    Supper supper;
    supper.kitchen.appliances = {{KitchenItemId{"blender"}, "Blender", "blender"}};
    supper.addCook("Jory");
    for (const char* name : {"Soup", "Sauce"}) {
        const std::string deed = std::string("Blend the ") + name;
        Recipe recipe =
            recipeInOrder(name, {test::with(step(deed, 20_min), ApplianceUse{"blender"})});
        recipe.common.waits.push_back(test::waitBetween("stands", deed, "", 0_min, 10_min));
        supper.serve(recipe);
    }
    EXPECT_THAT(
        conflictOf(supper),
        ElementsAre("The soup and the sauce: each 20 min with a blender, “stands” for at most 10 "
                    "min, serving the main at 19:30; so, whenever it is begun, from 19:10 to "
                    "19:20.",
                    "From 19:10 to 19:20 that is all of it at once, but there is one "
                    "blender."));
}

TEST(ConflictSentences, SayThatThereAreTooFewHands)
{
    Supper supper;
    for (const char* name : {"Fish", "Greens"}) {
        const std::string deed = std::string("Fry the ") + name;
        Recipe recipe = recipeInOrder(name, {step(deed, 20_min)});
        recipe.common.waits.push_back(test::waitBetween("stays crisp", deed, "", 0_min, 5_min));
        supper.serve(recipe);
    }
    EXPECT_EQ(conflictOf(supper).back(),
              "From 19:10 to 19:25 that is all of it at once, but only Maren is free then.");
}

TEST(ConflictSentences, SayByHowMuchAPinIsTooLate)
{
    Supper supper;
    supper.serve(recipeInOrder("Gratin", {inOven("Bake the gratin", 60_min, 150_degC)}));
    supper.pin("gratin/*/bake-the-gratin.in", 19, 0);
    EXPECT_THAT(conflictOf(supper),
                ElementsAre("“Bake the gratin” is pinned at 19:00, then it takes 1 h 02; that "
                            "makes 20:02 at the earliest.",
                            "The main is to be served at 19:30: 32 min too late."));
}

TEST(ConflictSentences, SayWhatTheKitchenLacks)
{
    Supper supper;
    supper.kitchen.ovens.clear();
    supper.serve(recipeInOrder("Gratin", {inOven("Bake the gratin", 60_min, 150_degC)}));
    EXPECT_THAT(conflictOf(supper),
                ElementsAre("The gratin: 1 h 02 on a shelf of an oven at 150 °C.",
                            "The kitchen has no oven."));
}

TEST(ConflictSentences, SayTheTemperaturesThatOneOvenCannotHaveAtOnce)
{
    Supper supper;
    Recipe gratin = recipeInOrder("Gratin", {inOven("Bake the gratin", 60_min, 150_degC)});
    gratin.common.waits.push_back(test::waitBetween("sets", "Bake the gratin", "", 10_min, 20_min));
    Recipe roots = recipeInOrder("Roots", {inOven("Roast the roots", 40_min, 220_degC)});
    roots.common.waits.push_back(
        test::waitBetween("stay crisp", "Roast the roots", "", 0_min, 10_min));
    supper.serve(gratin);
    supper.serve(roots);
    EXPECT_THAT(
        conflictOf(supper),
        ElementsAre("The gratin: 1 h 02 on a shelf of an oven at 150 °C, “sets” for 10 min to 20 "
                    "min, serving the main at 19:30; so, whenever it is begun, from 18:18 "
                    "to 19:10.",
                    "The roots: 42 min on a shelf of an oven at 220 °C, “stay crisp” for at "
                    "most 10 min, serving the main at 19:30; so, whenever it is begun, "
                    "from 18:48 to 19:20.",
                    "From 18:48 to 19:10 that is all of it at once, but there is only the "
                    "oven with 2 shelves, and no temperature suits all of it."));
}

TEST(ConflictSentences, SayWhenTheCookIsThereAndWhenTheyWouldHaveToBe)
{
    Supper supper;
    supper.kitchen.cooks.front().usualHours = {{{18, 30}, {22, 0}, Presence::Free}};
    Recipe stew = recipeInOrder("Stew", {step("Chop it", 30_min),
                                         step("Simmer it", 60_min, Attention::percent(10)),
                                         step("Finish it", 10_min)});
    stew.common.waits.push_back(test::waitBetween("rests", "Chop it", "Simmer it", 0_min, 10_min));
    stew.common.waits.push_back(
        test::waitBetween("stands", "Simmer it", "Finish it", 0_min, 10_min));
    stew.common.waits.push_back(test::waitBetween("waits", "Finish it", "", 0_min, 10_min));
    supper.serve(stew);
    EXPECT_THAT(
        conflictOf(supper),
        ElementsAre("“Chop it” cannot begin before 18:30, when Maren is free, then it takes "
                    "30 min, then “Simmer it” takes 1 h, then “Finish it” takes 10 min; "
                    "that makes 20:10 at the earliest.",
                    "The main is to be served at 19:30: 40 min too late."));
}

TEST(ConflictSentences, SayThatNoMethodIsLeft)
{
    Supper supper;
    supper.kitchen.ovens.clear();
    Recipe roots = test::recipe("Roots", {});
    MethodChoice how;
    how.id = MethodChoiceId{"how"};
    how.name = "how the roots are cooked";
    Method oven{MethodId{"oven"}, "in the oven", 0, {}};
    oven.part.steps = {inOven("Roast the roots", 40_min, 220_degC)};
    Method pan{MethodId{"pan"}, "in a pan", 0, {}};
    pan.part.steps = {test::with(step("Fry the roots", 25_min), VesselUse{"wok", litres(2), 1})};
    how.methods = {oven, pan};
    roots.methods = {how};
    supper.serve(roots);
    EXPECT_THAT(conflictOf(supper),
                ElementsAre("The roots “in a pan”: 25 min with a wok.",
                            "The roots “in the oven”: 42 min on a shelf of an oven at 220 °C.",
                            "That does not fit: the kitchen has no oven and the kitchen has no wok "
                            "that will do.",
                            "Nothing is left for “how the roots are cooked” of the roots: not “in "
                            "the oven”, not “in a pan”."));
}

TEST(ChangeSentence, SaysBeforeAndAfter)
{
    const auto advice = findWaysOut(test::adviceFor(test::custardTooLate()));
    ASSERT_TRUE(advice);
    const WayOut* later = findWay<ServeLater>(*advice);
    ASSERT_NE(later, nullptr);
    EXPECT_EQ(changeSentence(*later), "Serve the main at 16:20 instead of 15:00.");
    EXPECT_EQ(changeSentence(*later, {false, true}),
              "Serve the main at 4:20 pm instead of 3:00 pm.");
    EXPECT_EQ(changeTitle(*later), "Serve the main at 16:20 instead of 15:00");
    const WayOut* cook = findWay<FreeCook>(*advice);
    ASSERT_NE(cook, nullptr);
    EXPECT_THAT(changeSentence(*cook), StartsWith("Have Maren free on the day, "));
    EXPECT_THAT(changeSentence(*cook), HasSubstr(" to 11:30."));
}

/// Chopped at 17:00, fried at 17:30, served at 19:30.
Supper fritters()
{
    Supper supper;
    supper.kitchen.cooks.front().usualHours = {{{16, 0}, {22, 0}, Presence::Free}};
    Recipe recipe =
        recipeInOrder("Fritters", {step("Chop the roots", 20_min), step("Fry them", 20_min)});
    recipe.common.waits.push_back(test::waitBetween("stay warm", "Fry them", "", 0_min, 150_min));
    supper.serve(recipe);
    supper.put("fritters/*/chop-the-roots", 17, 0);
    supper.put("fritters/*/fry-them", 17, 30);
    return supper;
}

TEST(WhyHereSentences, NameWhatHoldsEachWay)
{
    const Supper supper = fritters();
    const PlanPtr plan = supper.laidOut();
    const auto ask = [&](const std::string& task) {
        return whyHere(plan, supper.input(), test::taskIndex(*plan->formulation, task));
    };
    const WhyHere fry = ask("fritters/*/fry-them");
    EXPECT_EQ(earlierSentence(fry, *plan, supper.occasion),
              "It could start up to 10 min earlier, at 17:20, at no cost; before that “Chop the "
              "roots” comes first.");
    EXPECT_THAT(laterSentence(fry, *plan, supper.occasion),
                StartsWith("It could start up to 1 h 40 later, at 19:10, but then 16 min more "
                           "hands-on work falls in the last hour; after that "));
    EXPECT_EQ(alongSentence(fry), "With what is tied to it moving along: 50 min earlier.");
    const WhyHere chop = ask("fritters/*/chop-the-roots");
    EXPECT_THAT(earlierSentence(chop, *plan, supper.occasion),
                testing::EndsWith("before that Maren is not free."));
}

TEST(WhyHereSentences, SayThatItIsPinned)
{
    Supper supper = fritters();
    supper.pin("fritters/*/fry-them", 17, 30);
    const PlanPtr plan = supper.laidOut();
    const WhyHere why =
        whyHere(plan, supper.input(), test::taskIndex(*plan->formulation, "fritters/*/fry-them"));
    EXPECT_EQ(earlierSentence(why, *plan, supper.occasion),
              "It cannot start earlier: it is pinned here.");
}

} // namespace
} // namespace suppertide
