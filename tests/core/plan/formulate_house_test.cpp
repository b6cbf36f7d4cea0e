// Rules 11 to 15: trips, house jobs, cooks, pins, and where everything comes from.
#include <gmock/gmock.h>

#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::ElementsAre;
using testing::IsEmpty;

constexpr CivilDate friday{2027, 6, 18};
constexpr CivilDate saturday{2027, 6, 19};

Supper salad()
{
    Supper supper;
    supper.serve(recipe("Salad", {step("Dress the leaves", 5_min)}));
    return supper;
}

ShoppingTrip market()
{
    ShoppingTrip trip;
    trip.id = HouseJobId{"market"};
    trip.name = "Market";
    trip.earliest = {saturday, {9, 0}};
    trip.latest = {saturday, {12, 0}};
    trip.freshness = 600_min;
    return trip;
}

TEST(Trips, ComeBeforeTheFirstUseAndNoEarlierThanFreshnessAllows)
{
    Supper supper = salad();
    supper.occasion.trips = {market()};
    const FormulationPtr formulation = supper.formulated();
    const Task& trip = taskOf(*formulation, "trip/market");
    EXPECT_EQ(trip.duration, 60_min);
    EXPECT_EQ(trip.hands->attention, undivided);
    EXPECT_EQ(toIso(formulation->calendar.civil(trip.window.start)), "2027-06-19T09:00");
    EXPECT_EQ(toIso(formulation->calendar.civil(trip.window.end)), "2027-06-19T12:00");
    EXPECT_THAT(lagsBetween(*formulation, "trip/market:end", "salad/*/dress-the-leaves:start"),
                ElementsAre("0…600"));
    EXPECT_EQ(sourceOf(*formulation, "trip/market").rule, Rule::BeforeTheDay);
}

TEST(Trips, AreAChoiceWhereThereAreSeveralDays)
{
    Supper supper = salad();
    ShoppingTrip trip = market();
    trip.earliest = {friday, {9, 0}};
    trip.freshness.reset();
    supper.occasion.trips = {trip};
    const FormulationPtr formulation = supper.formulated();
    ASSERT_EQ(formulation->problem.choices.size(), 1U);
    EXPECT_EQ(formulation->choices[ChoiceIndex{0}].kind, ChoiceKind::Trip);
    EXPECT_THAT(formulation->choices[ChoiceIndex{0}].optionNames,
                ElementsAre("2027-06-19T08:00", "2027-06-18T09:00"));
}

TEST(Trips, WhatTheyBringTakesRoomInTheFridge)
{
    Supper supper = salad();
    ShoppingTrip trip = market();
    trip.fridge = 12_l;
    supper.occasion.trips = {trip};
    const FormulationPtr formulation = supper.formulated();
    const Demand& held =
        formulation->problem.demands[demandIndex(*formulation, "trip/market:fridge")];
    EXPECT_EQ(held.amount, 120);
    EXPECT_EQ(pointText(*formulation, held.from), "trip/market:end");
    EXPECT_EQ(pointText(*formulation, held.to), "salad/*/dress-the-leaves:start");
}

TEST(Trips, LeaveNothingHotBehindIfNobodyElseIsThere)
{
    const auto heatAndShop = [](bool withJory) {
        Supper supper = salad();
        supper.serve(recipe("Stock", {inOven("Bake the bones", 120_min, 200_degC)}));
        supper.occasion.trips = {market()};
        supper.occasion.trips.front().forDishes = {DishId{"salad"}};
        if (withJory) {
            supper.addCook("Jory");
        }
        supper.put("stock/*/bake-the-bones.in", 9, 0);
        supper.put("trip/market", 9, 30);
        return supper.clashes();
    };
    EXPECT_THAT(heatAndShop(false),
                ElementsAre("From 09:30 to 10:30 nobody is awake at home while something is hot: "
                            "“Stock into the oven” and “Market”."));
    EXPECT_THAT(heatAndShop(true), IsEmpty());
}

TEST(HouseJobs, AreTasksWithinTheirHours)
{
    Supper supper = salad();
    supper.occasion.houseJobs = {{HouseJobId{"table"},
                                  "Lay the table",
                                  20_min,
                                  handsOn,
                                  {saturday, {16, 0}},
                                  {saturday, {18, 30}},
                                  CookId{"maren"}}};
    const FormulationPtr formulation = supper.formulated();
    const Task& job = taskOf(*formulation, "job/table");
    EXPECT_EQ(job.duration, 20_min);
    EXPECT_EQ(toIso(formulation->calendar.civil(job.window.start)), "2027-06-19T16:00");
    EXPECT_EQ(toIso(formulation->calendar.civil(job.window.end)), "2027-06-19T18:30");
    const TaskSource& source = sourceOf(*formulation, "job/table");
    EXPECT_EQ(source.rule, Rule::House);
    EXPECT_EQ(source.text, "Lay the table");
    EXPECT_THAT(source.onlyBy, ElementsAre("Maren"));
}

TEST(Cooks, AreFreeWhenTheySayAndOnTheirDaysOtherwise)
{
    Supper supper = salad();
    supper.occasion.hours[CookId{"maren"}] = {
        {saturday, {{{10, 0}, {12, 0}, Presence::Free}, {{13, 0}, {22, 0}, Presence::Free}}}};
    const FormulationPtr formulation = supper.formulated();
    std::vector<std::string> free;
    for (const Interval& hours : formulation->problem.cooks[CookIndex{0}].free) {
        free.push_back(toIso(formulation->calendar.civil(hours.start)) + " " +
                       toIso(formulation->calendar.civil(hours.end).clock));
    }
    EXPECT_THAT(free, ElementsAre("2027-06-18T08:00 23:00", "2027-06-19T10:00 12:00",
                                  "2027-06-19T13:00 22:00"));
}

Supper braise(bool mayRunUnwatched)
{
    Supper supper;
    Step braise = inOven("Braise the shank", 300_min, 120_degC);
    braise.mayRunUnwatched = mayRunUnwatched;
    supper.serve(recipe("Shank", {braise}));
    return supper;
}

TEST(Cooks, OneMustBeAwakeAtHomeWhileSomethingIsHot)
{
    const FormulationPtr formulation = braise(false).formulated();
    const DemandIndex watched = demandIndex(*formulation, "shank/*/braise-the-shank:watch");
    EXPECT_EQ(formulation->demands[watched].rule, Rule::Cooks);
    EXPECT_THAT(taskIds(*formulation), testing::Contains(testing::StartsWith("unwatched/")));
    EXPECT_TRUE(braise(true).formulated()->problem.demands.empty());
}

TEST(Cooks, AskForASkillOrForOneByName)
{
    Supper supper;
    supper.addCook("Jory").skills = {"carving"};
    Step carve = step("Carve the joint", 10_min, undivided);
    carve.skill = "carving";
    supper.serve(recipe("Joint", {carve}));
    supper.serve(recipe("Salad", {step("Dress the leaves", 5_min)})).cook = CookId{"maren"};
    supper.put("salad/*/dress-the-leaves", 19, 0);
    const PlanPtr plan = supper.laidOut();
    EXPECT_THAT(plan->clashes, IsEmpty());
    const auto whoDoes = [&](const char* id) {
        return plan->schedule.cooks[taskIndex(*plan->formulation, id)];
    };
    EXPECT_THAT(whoDoes("joint/*/carve-the-joint"), ElementsAre(CookIndex{1}));
    EXPECT_THAT(whoDoes("salad/*/dress-the-leaves"), ElementsAre(CookIndex{0}));
}

TEST(Pins, OfAStartAreItsWindow)
{
    Supper supper = salad();
    supper.pin("salad/*/dress-the-leaves", 18, 10);
    const FormulationPtr formulation = supper.formulated();
    const Interval window = taskOf(*formulation, "salad/*/dress-the-leaves").window;
    EXPECT_EQ(toIso(formulation->calendar.civil(window.start).clock), "18:10");
    EXPECT_EQ(window.length(), 5_min);
    EXPECT_EQ(sourceOf(*formulation, "salad/*/dress-the-leaves").rule, Rule::Pins);
}

TEST(Pins, OfAnOvenAndABurnerLeaveNoOther)
{
    Supper supper;
    KitchenOven second = supper.kitchen.ovens.front();
    second.id = KitchenItemId{"second"};
    second.name = "Second oven";
    supper.kitchen.ovens.push_back(second);
    supper.serve(recipe("Roots", {inOven("Roast the roots", 40_min, 220_degC)}));
    supper.serve(
        recipe("Sauce", {with(step("Warm the sauce", 10_min, keepAnEye), BurnerUse{12_cm})}));
    supper.layout.ovens["roots/*/roast-the-roots:oven"] = "second";
    supper.layout.units["sauce/*/warm-the-sauce:burner"] = "front";
    const PlanPtr plan = supper.laidOut();
    EXPECT_THAT(plan->clashes, IsEmpty());
    EXPECT_EQ(
        plan->schedule.ovens[ovenDemandIndex(*plan->formulation, "roots/*/roast-the-roots:oven")],
        OvenIndex{1});
    EXPECT_EQ(
        plan->schedule.units[demandIndex(*plan->formulation, "sauce/*/warm-the-sauce:burner")],
        UnitIndex{0});
}

TEST(Pins, OfAnOvensSettingAreAFixedTaskWithoutRoom)
{
    Supper supper = salad();
    supper.layout.ovenSettings = {{"oven", supper.instant(17), supper.instant(18), 180}};
    const FormulationPtr formulation = supper.formulated();
    const OvenDemand& setting =
        formulation->problem.ovenDemands[ovenDemandIndex(*formulation, "setting/oven/1")];
    EXPECT_EQ(setting.shelves, 0);
    EXPECT_EQ(setting.acceptLow, 180);
    EXPECT_EQ(setting.acceptHigh, 180);
    EXPECT_EQ(taskOf(*formulation, "setting/oven/1").duration, 60_min);
    const PlanPtr plan = supper.laidOut();
    EXPECT_THAT(plan->clashes, IsEmpty());
}

TEST(Pins, OfWhatIsNoLongerThereAreForgotten)
{
    Supper supper = salad();
    supper.pin("soup/*/stir-the-soup", 18, 0);
    supper.layout.options["soup/how"] = "in-a-pan";
    supper.layout.pinned.insert("soup/how");
    supper.layout.cooks["soup/*/stir-the-soup"] = {"nobody"};
    supper.layout.units["soup/*/stir-the-soup:burner"] = "none";
    supper.layout.ovens["soup:oven"] = "none";
    supper.layout.ovenSettings = {{"none", supper.instant(17), supper.instant(18), 180}};
    EXPECT_THAT(supper.clashes(), IsEmpty());
}

TEST(Names, StandBesideEveryTaskLagAndDemand)
{
    Supper supper = braise(false);
    supper.occasion.trips = {market()};
    const FormulationPtr formulation = supper.formulated();
    const Problem& problem = formulation->problem;
    EXPECT_EQ(formulation->tasks.size(), problem.tasks.size());
    EXPECT_EQ(formulation->lags.size(), problem.lags.size());
    EXPECT_EQ(formulation->demands.size(), problem.demands.size());
    EXPECT_EQ(formulation->ovenDemands.size(), problem.ovenDemands.size());
    EXPECT_EQ(formulation->choices.size(), problem.choices.size());
    EXPECT_EQ(formulation->taskById.size(), problem.tasks.size());
    for (const TaskIndex task : problem.tasks.indices()) {
        const TaskSource& source = formulation->tasks[task];
        const bool isOfADish = source.role == TaskRole::Step || source.role == TaskRole::OvenIn ||
                               source.role == TaskRole::OvenOut;
        if (isOfADish) {
            EXPECT_TRUE(source.dish && source.step && source.recipe && source.course)
                << problem.tasks[task].id;
        }
    }
}

} // namespace

} // namespace suppertide::test
