#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <set>

#include "core/wording/wording.h"
#include "tests/support/small_evening.h"

namespace suppertide {
namespace {

using test::at;
using test::eve;
using test::SmallEvening;

class ClashSentence : public testing::Test
{
protected:
    ClashSentence()
    {
        evening.serve("Main", at(20, 30));
        gratin = evening.add({"Gratin", "Bake the gratin", at(17, 40), 90, unattended});
        roots = evening.add({"Roast roots", "Roast the roots", at(17, 40), 42, unattended});
        slice = evening.add({"Gratin", "Slice the potatoes", at(17), 30, handsOn, {1}});
        gratinBakes = evening.bake(gratin, 150);
        rootsBake = evening.bake(roots, 220);
    }

    [[nodiscard]] Clash clash(ClashKind kind) const
    {
        Clash result;
        result.kind = kind;
        result.tasks = {gratin, roots};
        result.when = Interval{at(17, 40), at(18, 10)};
        return result;
    }
    [[nodiscard]] std::string said(const Clash& clash, const ReadingStyle& style = {}) const
    {
        return sentence(*evening.plan(), evening.occasion, clash, style);
    }

    SmallEvening evening;
    TaskIndex gratin;
    TaskIndex roots;
    TaskIndex slice;
    OvenDemandIndex gratinBakes;
    OvenDemandIndex rootsBake;
};

TEST_F(ClashSentence, NamesBothDishesTemperaturesAndMinutesOfAnOven)
{
    Clash both = clash(ClashKind::OvenTemperature);
    both.oven = OvenIndex{0};
    both.ovenDemands[0] = gratinBakes;
    both.ovenDemands[1] = rootsBake;
    EXPECT_EQ(said(both), "From 17:40 to 18:10 the oven is wanted at 150 °C by the gratin and at "
                          "220 °C by the roast roots.");
    EXPECT_EQ(said(both, {true, true}), "From 5:40 pm to 6:10 pm the oven is wanted at 300 °F by "
                                        "the gratin and at 430 °F by the roast roots.");
}

TEST_F(ClashSentence, SaysThatAnOvenIsToBeOff)
{
    Clash both = clash(ClashKind::OvenTemperature);
    evening.formulation.problem.ovenDemands[gratinBakes].mode = modeOff;
    both.ovenDemands[0] = gratinBakes;
    both.ovenDemands[1] = rootsBake;
    EXPECT_EQ(said(both), "From 17:40 to 18:10 the oven is wanted switched off by the gratin and "
                          "at 220 °C by the roast roots.");
}

TEST_F(ClashSentence, SaysTheModesThatDoNotAgree)
{
    Clash both = clash(ClashKind::OvenTemperature);
    evening.formulation.problem.ovenDemands[gratinBakes].mode = "fan";
    evening.formulation.problem.ovenDemands[rootsBake].mode = "grill";
    both.ovenDemands[0] = gratinBakes;
    both.ovenDemands[1] = rootsBake;
    both.isMode = true;
    EXPECT_EQ(said(both), "From 17:40 to 18:10 the oven is wanted on “fan” by the gratin and on "
                          "“grill” by the roast roots.");
}

TEST_F(ClashSentence, SaysTheBandWhereNothingIsPreferred)
{
    Clash one = clash(ClashKind::OvenTemperature);
    evening.formulation.problem.ovenDemands[gratinBakes].prefer.reset();
    one.ovenDemands[0] = gratinBakes;
    EXPECT_EQ(said(one),
              "From 17:40 to 18:10 the oven is wanted at 140 °C to 160 °C by the gratin, and is "
              "not.");
}

TEST_F(ClashSentence, CountsTheShelves)
{
    Clash space = clash(ClashKind::OvenSpace);
    space.oven = evening.addOven("Small oven");
    space.asked = 3;
    space.allowed = 2;
    EXPECT_EQ(said(space), "From 17:40 to 18:10 3 shelves of the small oven are wanted by the "
                           "gratin and the roast roots; it has 2.");
}

TEST_F(ClashSentence, SaysHowLittleTimeAnOvenHasToChange)
{
    Clash ramp = clash(ClashKind::OvenRamp);
    ramp.oven = OvenIndex{0};
    ramp.ovenDemands[0] = gratinBakes;
    ramp.ovenDemands[1] = rootsBake;
    ramp.when = Interval{at(18), at(18, 5)};
    EXPECT_EQ(said(ramp), "The oven has only 5 min, from 18:00 to 18:05, to change over: it is "
                          "wanted at 150 °C by the gratin and then at 220 °C by the roast roots.");
    ramp.when = Interval{at(18), at(18)};
    EXPECT_EQ(said(ramp), "The oven has no time, at 18:00, to change over: it is wanted at 150 °C "
                          "by the gratin and then at 220 °C by the roast roots.");
    ramp.ovenDemands[0].reset();
    EXPECT_EQ(said(ramp), "The oven cannot be ready in time: at 18:00 it is wanted at 220 °C by "
                          "the roast roots.");
}

TEST_F(ClashSentence, CountsBurnersAndNamesThoseThatAreTooSmall)
{
    Clash burner = clash(ClashKind::Burner);
    burner.asked = 5;
    burner.allowed = 4;
    EXPECT_EQ(said(burner), "From 17:40 to 18:10 5 burners are wanted by the gratin and the roast "
                            "roots; there are 4.");
    burner.asked = 1;
    burner.allowed = 1;
    burner.tasks = {roots};
    EXPECT_EQ(said(burner),
              "From 17:40 to 18:10 no burner that is wide enough is free for the roast roots.");
}

TEST_F(ClashSentence, NamesASharedApplianceAndVessel)
{
    Clash appliance = clash(ClashKind::Appliance);
    appliance.pool = evening.addPool("blender", ResourceKind::Appliance, 1);
    appliance.asked = 2;
    appliance.allowed = 1;
    EXPECT_EQ(said(appliance), "From 17:40 to 18:10 the blender is wanted 2 times at once, by the "
                               "gratin and the roast roots; there is 1.");
    Clash vessel = appliance;
    vessel.kind = ClashKind::Vessel;
    vessel.pool = evening.addPool("wide pan", ResourceKind::Vessel, 1);
    vessel.asked = 1;
    vessel.tasks = {roots};
    EXPECT_EQ(said(vessel),
              "From 17:40 to 18:10 no wide pan that will do is free for the roast roots.");
}

TEST_F(ClashSentence, SaysLitresOfTheFridge)
{
    Clash cold = clash(ClashKind::ColdSpace);
    cold.count = evening.addCold("fridge", ResourceKind::Fridge, 400);
    cold.asked = 465;
    cold.allowed = 400;
    EXPECT_EQ(said(cold), "From 17:40 to 18:10 the fridge is to hold 46.5 l for the gratin and the "
                          "roast roots; there is room for 40 l.");
}

TEST_F(ClashSentence, NamesTheCookWhoHasTooMuchToDo)
{
    Clash hands = clash(ClashKind::Hands);
    hands.cook = CookIndex{1};
    hands.asked = 160;
    hands.allowed = 100;
    const TaskIndex peel = evening.add({"Roast roots", "Peel the roots", at(17, 10), 30});
    hands.tasks = {slice, peel};
    EXPECT_EQ(said(hands), "From 17:40 to 18:10 Jory cannot do both at once: “Slice the potatoes” "
                           "and “Peel the roots”.");
    hands.cook.reset();
    EXPECT_EQ(said(hands), "From 17:40 to 18:10 there are too few hands for “Slice the potatoes” "
                           "and “Peel the roots”.");
}

TEST_F(ClashSentence, KeepsALongListOfDeedsShort)
{
    Clash hands = clash(ClashKind::Hands);
    hands.cook = CookIndex{1};
    hands.tasks = {slice};
    for (const auto& [deed, minute] : {std::pair{"Peel the roots", 10}, {"Whisk the cream", 20}}) {
        hands.tasks.push_back(evening.add({"Gratin", deed, at(17, minute), 15}));
    }
    EXPECT_EQ(said(hands), "From 17:40 to 18:10 more is asked of Jory than one cook can do, 3 "
                           "things at once: “Slice the potatoes”, “Peel the roots” and “Whisk the "
                           "cream”.");
    hands.tasks.push_back(evening.add({"Gratin", "Grate the cheese", at(17, 30), 10}));
    hands.tasks.push_back(evening.add({"Gratin", "Butter the dish", at(17, 40), 10}));
    EXPECT_EQ(said(hands), "From 17:40 to 18:10 more is asked of Jory than one cook can do, up to "
                           "3 things at once: “Slice the potatoes”, “Peel the roots”, “Whisk the "
                           "cream” and 2 more.");
}

TEST_F(ClashSentence, SaysThatLikeBatchesOverlap)
{
    Clash hands = clash(ClashKind::Hands);
    hands.cook = CookIndex{1};
    hands.tasks = {slice, evening.add({"Gratin", "Slice the potatoes", at(17, 10), 30})};
    EXPECT_EQ(said(hands),
              "From 17:40 to 18:10 Jory cannot do “Slice the potatoes” twice at once.");
}

TEST_F(ClashSentence, TellsACookAtTableFromOneWhoIsAway)
{
    Clash away = clash(ClashKind::CookNotFree);
    away.cook = CookIndex{1};
    away.tasks = {slice};
    EXPECT_EQ(said(away),
              "From 17:40 to 18:10 Jory is not free, and is to do “Slice the potatoes”.");
    evening.formulation.problem.cooks[CookIndex{1}].table = {{at(18), at(18, 30)}};
    EXPECT_EQ(said(away),
              "From 17:40 to 18:10 Jory is at table, and is to do “Slice the potatoes”.");
    away.cook.reset();
    evening.formulation.problem.tasks[slice].hands->skill = "carving";
    evening.formulation.tasks[slice].skill = "carving";
    EXPECT_EQ(said(away), "From 17:40 to 18:10 no cook can do “Slice the potatoes”, which asks for "
                          "“carving”.");
    evening.formulation.problem.cooks[CookIndex{0}].skills = {"carving"};
    EXPECT_EQ(said(away), "From 17:40 to 18:10 no cook is free for “Slice the potatoes”, which "
                          "asks for “carving”.");
}

TEST_F(ClashSentence, SaysWaitsWithTheirLeastAndMost)
{
    const LagIndex wait = evening.tie({slice, Edge::End}, {gratin, Edge::Start},
                                      {Rule::Waits, DishId{"Gratin"}, WaitId{"brown"},
                                       "slices brown", KeepPlace::Counter, Minutes{0}, Minutes{5}});
    Clash tooLong = clash(ClashKind::WaitTooLong);
    tooLong.lag = wait;
    tooLong.asked = 10;
    tooLong.allowed = 5;
    EXPECT_EQ(said(tooLong), "The gratin has 10 min for “slices brown”, from 17:30 to 17:40; it "
                             "should be 5 min at most.");
    tooLong.kind = ClashKind::WaitTooShort;
    tooLong.allowed = 240;
    EXPECT_EQ(said(tooLong), "The gratin has 10 min for “slices brown”, from 17:30 to 17:40; it "
                             "should be 4 h at least.");
}

TEST_F(ClashSentence, SaysAnOrderOfStepsThatIsBroken)
{
    const LagIndex order = evening.tie({slice, Edge::End}, {gratin, Edge::Start}, {});
    Clash early = clash(ClashKind::WaitTooShort);
    early.lag = order;
    early.asked = -10;
    early.allowed = 0;
    EXPECT_EQ(said(early), "“Bake the gratin” comes 10 min too early: first comes “Slice the "
                           "potatoes”.");
    early.kind = ClashKind::WaitTooLong;
    early.asked = 20;
    EXPECT_EQ(said(early), "“Bake the gratin” follows 20 min after “Slice the potatoes”; it should "
                           "be 0 min at most.");
}

TEST_F(ClashSentence, SaysHowLateACourseIs)
{
    Clash late = clash(ClashKind::LateForServing);
    late.course = CourseId{"Main"};
    late.asked = 15;
    late.tasks = {roots};
    EXPECT_EQ(said(late), "The main is to be served at 20:30 and is 15 min late: “Roast the "
                          "roots”.");
}

TEST_F(ClashSentence, SaysTheHoursThatAJobIsOutsideOf)
{
    const TaskIndex job = evening.add({"", "Lay the table", eve(23, 50), 20, handsOn, {0}});
    evening.formulation.problem.tasks[job].window = {at(15), at(19)};
    Clash outside = clash(ClashKind::OutsideWindow);
    outside.tasks = {job};
    EXPECT_EQ(said(outside), "“Lay the table” is from Fri 18 June 23:50 to Sat 19 June 00:10, "
                             "outside what is given for it: 15:00 to 19:00.");
}

TEST_F(ClashSentence, SaysWhatNobodyHasChosen)
{
    Clash open = clash(ClashKind::NothingChosen);
    open.dish = DishId{"Roast roots"};
    EXPECT_EQ(said(open), "For the roast roots a method or place is not chosen yet.");
    Choice choice;
    choice.id = "pan-or-oven";
    choice.options.push_back({"pan", {}, 0});
    evening.formulation.problem.choices.push_back(choice);
    ChoiceSource source;
    source.name = "how the roots are cooked";
    evening.formulation.choices.push_back(source);
    open.broken = {"choice:pan-or-oven"};
    EXPECT_EQ(said(open), "For the roast roots “how the roots are cooked” is not chosen yet.");
}

TEST_F(ClashSentence, NamesGuestDishAndSubstance)
{
    Clash nuts = clash(ClashKind::Allergen);
    nuts.guest = GuestId{"fay"};
    nuts.dish = DishId{"Gratin"};
    nuts.substances = {Substance::Almond, Substance::BrazilNut};
    EXPECT_EQ(said(nuts),
              "Fay is given the gratin, which contains almond and brazil nut: Fay avoids that.");
    nuts.kind = ClashKind::ContentsUnknown;
    nuts.ingredients = {"stock cube"};
    EXPECT_EQ(said(nuts),
              "Nobody has said what “stock cube” in the gratin contains, and Fay avoids "
              "almond and brazil nut.");
    nuts.kind = ClashKind::GuestLeftOut;
    nuts.course = CourseId{"Main"};
    EXPECT_EQ(said(nuts), "Fay gets nothing in the main that suits.");
}

TEST_F(ClashSentence, CountsUtensils)
{
    Clash tins = clash(ClashKind::Utensils);
    tins.pool = evening.addPool("tart tin", ResourceKind::Vessel, 8);
    tins.asked = 12;
    tins.allowed = 8;
    tins.tasks = {gratin};
    EXPECT_EQ(said(tins), "The kitchen has 8 × tart tin; 12 are wanted at once for the gratin.");
}

TEST_F(ClashSentence, SaysHeatThatNobodyWatches)
{
    Clash unwatched = clash(ClashKind::Unwatched);
    unwatched.tasks = {roots};
    EXPECT_EQ(said(unwatched), "From 17:40 to 18:10 nobody is awake at home while something is "
                               "hot: “Roast the roots”.");
}

constexpr std::array allKinds{
    ClashKind::OvenTemperature, ClashKind::OvenSpace,       ClashKind::OvenRamp,
    ClashKind::Burner,          ClashKind::Appliance,       ClashKind::Vessel,
    ClashKind::ColdSpace,       ClashKind::Hands,           ClashKind::CookNotFree,
    ClashKind::WaitTooShort,    ClashKind::WaitTooLong,     ClashKind::LateForServing,
    ClashKind::OutsideWindow,   ClashKind::NothingChosen,   ClashKind::Allergen,
    ClashKind::GuestLeftOut,    ClashKind::ContentsUnknown, ClashKind::Utensils,
    ClashKind::Unwatched,       ClashKind::UnwashedTool};

// Whatever a clash leaves out, it is still a whole sentence.
TEST_F(ClashSentence, IsWholeForEveryKindWithNothingFilledIn)
{
    for (const ClashKind kind : allKinds) {
        Clash bare;
        bare.kind = kind;
        const std::string text = said(bare);
        EXPECT_TRUE(text.ends_with('.')) << text;
        EXPECT_FALSE(text[0] >= 'a' && text[0] <= 'z') << text;
        EXPECT_EQ(text.find("  "), std::string::npos) << text;
    }
}

TEST_F(ClashSentence, KeepsNamesInAnyScriptAsTheyAre)
{
    evening.occasion.guests[0].name = "عُمر “Om” 🍋";
    Clash clash;
    clash.kind = ClashKind::GuestLeftOut;
    clash.guest = GuestId{"ada"};
    clash.course = CourseId{"Main"};
    EXPECT_EQ(said(clash), "عُمر “Om” 🍋 gets nothing in the main that suits.");
}

TEST(ClashNames, AreAllThereAndAllDifferent)
{
    std::set<std::string_view> names;
    for (const ClashKind kind : allKinds) {
        EXPECT_FALSE(nameOf(kind).empty());
        names.insert(nameOf(kind));
    }
    EXPECT_EQ(names.size(), allKinds.size());
    EXPECT_EQ(nameOf(Severity::Unsafe), "unsafe");
}

TEST_F(ClashSentence, SaysItsPlaceAndTime)
{
    const auto place = [this](const Clash& clash) {
        return placeAndTime(*evening.plan(), evening.occasion, clash);
    };
    Clash oven = clash(ClashKind::OvenTemperature);
    oven.oven = OvenIndex{0};
    EXPECT_EQ(place(oven), "Oven, Saturday 17:40 to 18:10");
    Clash night = clash(ClashKind::Hands);
    night.cook = CookIndex{0};
    night.when = Interval{eve(23), at(1)};
    EXPECT_EQ(place(night), "Maren, Friday 23:00 to Saturday 01:00");
    Clash guest;
    guest.kind = ClashKind::Allergen;
    guest.guest = GuestId{"fay"};
    guest.dish = DishId{"Gratin"};
    EXPECT_EQ(place(guest), "Fay, the gratin");
    Clash pool = clash(ClashKind::Vessel);
    pool.pool = evening.addPool("wide pan", ResourceKind::Vessel, 1);
    pool.when = Interval{at(18), at(18)};
    EXPECT_EQ(place(pool), "Wide pan, Saturday 18:00");
}

} // namespace
} // namespace suppertide
