// Followed foods: their tracks through the problem, the temperatures that follow from a schedule,
// and what of it breaks a rule.
#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

#include "core/plan/food_safety.h"
#include "core/plan/fridge_order.h"
#include "core/plan/live_plan.h"
#include "core/science/dinner_foods.h"
#include "core/science/water.h"
#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::DoubleNear;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

FoodTreatment does(const std::string& text, Treatment treatment)
{
    FoodTreatment result;
    result.step = StepId{slug(text)};
    result.treatment = treatment;
    return result;
}

FoodTreatment to(FoodTreatment treatment, Celsius middle)
{
    treatment.to = middle;
    return treatment;
}

FollowedFood followed(const std::string& name, FoodClass kind, std::vector<FoodTreatment> steps)
{
    FollowedFood food;
    food.id = FollowedFoodId{slug(name)};
    food.name = name;
    food.kind.food = kind;
    food.steps = std::move(steps);
    return food;
}

FollowedFood made(FollowedFood food, const std::string& material, FoodShape shape, Length thickness,
                  Grams mass)
{
    food.material = material;
    food.shape = shape;
    food.thickness = thickness;
    food.mass = mass;
    return food;
}

/// Boiled, and then kept in the fridge until it is heated up again; six litres in one pot.
Recipe stock(bool inIcedWater)
{
    std::vector<Step> steps{with(step("Boil bones", 60_min, keepAnEye), BurnerUse{20_cm})};
    FollowedFood pot =
        made(followed("stock", FoodClass::GravyOrBroth, {does("Boil bones", Treatment::Boil)}),
             "stock", FoodShape::Stirred, 16_cm, 6000_g);
    pot.isOnePiece = true;
    pot.scaling = Scaling::Fixed;
    std::string last = "Boil bones";
    if (inIcedWater) {
        steps.push_back(step("Stir over ice", 100_min, keepAnEye));
        pot.steps.push_back(does("Stir over ice", Treatment::IceBath));
        last = "Stir over ice";
    }
    steps.push_back(with(step("Heat up", 10_min, keepAnEye), BurnerUse{20_cm}));
    FoodTreatment again = does("Heat up", Treatment::Boil);
    again.isReheating = true;
    pot.steps.push_back(again);
    Recipe result = recipeInOrder("Stock", std::move(steps));
    Wait wait = waitBetween("chills", last, "Heat up", 1_min, 2000_min);
    wait.keep = {inFridge(6_l)};
    result.common.waits = {wait};
    result.common.foods = {pot};
    return result;
}

Supper stockSupper(bool inIcedWater, safety::RuleBook book)
{
    Supper supper;
    supper.occasion.preferences.rules = book;
    supper.serve(stock(inIcedWater));
    supper.put("stock/*/boil-bones", 9, 0);
    supper.put("stock/*/stir-over-ice", 10, 0);
    supper.put("stock/*/heat-up", 19, 20);
    return supper;
}

std::vector<std::string> rulesOf(const Plan& plan)
{
    std::vector<std::string> rules;
    for (const Clash& clash : plan.clashes) {
        if (clash.kind == ClashKind::FoodSafety) {
            rules.push_back(clash.finding->rule);
        }
    }
    return rules;
}

TEST(FoodTrack, NamesItsStagesKeepsAndServing)
{
    const FormulationPtr formulation = stockSupper(true, safety::RuleBook::UsHome).formulated();
    ASSERT_THAT(formulation->foods, SizeIs(1));
    const TrackedFood& pot = formulation->foods[FoodIndex{0}];
    EXPECT_EQ(pot.key, "stock/*/stock");
    EXPECT_EQ(pot.dishName, "Stock");
    ASSERT_THAT(pot.stages, SizeIs(3));
    EXPECT_EQ(pot.stages[1].first, taskIndex(*formulation, "stock/*/stir-over-ice"));
    EXPECT_TRUE(pot.stages[0].isOnBurner);
    ASSERT_THAT(pot.keeps, SizeIs(1));
    EXPECT_EQ(pot.keeps[0].place, KeepPlace::Fridge);
    EXPECT_EQ(pot.keeps[0].lag,
              lagIndex(*formulation, "stock/*/stir-over-ice:end", "stock/*/heat-up:start"));
    EXPECT_TRUE(pot.isEaten);
    EXPECT_EQ(pot.atTable, 25_min);
}

TEST(FoodTrack, GrowsAsAPieceDoes)
{
    Recipe roast = recipe("Roast", {inOven("Roast", 60_min, 180_degC)});
    FollowedFood piece =
        made(followed("joint", FoodClass::RawMeat, {does("Roast", Treatment::Heat)}), "lamb_leg",
             FoodShape::Long, 10_cm, 1000_g);
    piece.isOnePiece = true;
    FollowedFood chops = piece;
    chops.id = FollowedFoodId{"chops"};
    chops.isOnePiece = false;
    roast.common.foods = {piece, chops};
    Supper supper;
    supper.serve(roast, 27); // of a recipe for 8: 3.375 times the mass, 1.5 times as thick
    const FormulationPtr formulation = supper.formulated();
    EXPECT_EQ(formulation->foods[FoodIndex{0}].mass, 3375_g);
    EXPECT_EQ(formulation->foods[FoodIndex{0}].thickness, 15_cm);
    EXPECT_EQ(formulation->foods[FoodIndex{1}].mass, 3375_g);
    EXPECT_EQ(formulation->foods[FoodIndex{1}].thickness, 10_cm);
}

TEST(FoodTrack, IsOneForEachBatch)
{
    Step bake = inOven("Bake", 30_min, 180_degC);
    bake.portionsPerBatch = Portions{4};
    Recipe gratin = recipeInOrder("Gratin", {step("Slice", 10_min), bake, step("Dish up", 5_min)});
    gratin.common.foods = {followed("gratin", FoodClass::CookedDish,
                                    {does("Slice", Treatment::Stand), does("Bake", Treatment::Heat),
                                     does("Dish up", Treatment::Stand)})};
    Supper supper;
    supper.serve(gratin, 8);
    const FormulationPtr formulation = supper.formulated();
    ASSERT_THAT(formulation->foods, SizeIs(2));
    for (const std::string number : {"1", "2"}) {
        const TrackedFood& track = formulation->foods[FoodIndex{number == "1" ? 0U : 1U}];
        EXPECT_EQ(track.key, "gratin/*/gratin#" + number);
        ASSERT_THAT(track.stages, SizeIs(3));
        EXPECT_EQ(track.stages[0].first, taskIndex(*formulation, "gratin/*/slice"));
        EXPECT_EQ(track.stages[1].last,
                  taskIndex(*formulation, "gratin/*/bake#" + number + ".out"));
        EXPECT_EQ(track.stages[2].first, taskIndex(*formulation, "gratin/*/dish-up"));
    }
}

TEST(FoodTrack, IsOneForVariantsThatGoTheSameWay)
{
    Recipe soup = recipe("Soup", {step("Simmer", 30_min)});
    soup.variants.push_back({VariantId{"green"}, "green", {}, {}, {}, {}, {}, {}, {}});
    Variant other{VariantId{"other"}, "other", {}, {}, {}, {}, {}, {}, {}};
    other.adds.steps = {step("Simmer long", 60_min)};
    other.dropSteps = {StepId{"simmer"}};
    soup.variants.push_back(other);
    soup.common.foods = {
        followed("soup", FoodClass::SoupOrStew, {does("Simmer", Treatment::Simmer)})};
    soup.variants.back().adds.foods = {
        followed("soup", FoodClass::SoupOrStew, {does("Simmer long", Treatment::Simmer)})};
    Supper supper;
    Dish& dish = supper.serve(soup, 4);
    const VariantId plain = dish.mix.front().variant;
    dish.mix = {{plain, Portions{4}, {}},
                {VariantId{"green"}, Portions{2}, {}},
                {VariantId{"other"}, Portions{2}, {}}};
    const FormulationPtr formulation = supper.formulated();
    ASSERT_THAT(formulation->foods, SizeIs(2));
    EXPECT_THAT(formulation->foods[FoodIndex{0}].variants, ElementsAre(plain, VariantId{"green"}));
    EXPECT_THAT(formulation->foods[FoodIndex{1}].variants, ElementsAre(VariantId{"other"}));
}

/// The pot of stock under a rule book, history and all.
struct Judged
{
    explicit Judged(const Supper& supper)
        : input(supper.input()), plan(supper.laidOut()), safety(*plan->formulation, input)
    {
        safety.update(plan->schedule);
    }

    [[nodiscard]] const safety::FoodHistory& history() const
    {
        return safety.histories()[FoodIndex{0}].value();
    }

    PlanInput input;
    PlanPtr plan;
    FoodSafety safety;
};

TEST(FoodTemperatures, GoFromPlaceToPlace)
{
    const Judged judged(stockSupper(true, safety::RuleBook::UsHome));
    const auto& pieces = judged.history().pieces;
    ASSERT_THAT(pieces, SizeIs(5));
    EXPECT_EQ(pieces[0].place, safety::Place::Hob);
    EXPECT_EQ(pieces[1].place, safety::Place::IceBath);
    EXPECT_EQ(pieces[2].place, safety::Place::Fridge);
    EXPECT_EQ(pieces[3].place, safety::Place::Hob);
    EXPECT_EQ(pieces[4].place, safety::Place::AtTable);
    EXPECT_THAT(pieces[0].curve.front().core, DoubleNear(4, 1e-6));
    EXPECT_THAT(pieces[0].curve.back().core, DoubleNear(100, 0.05)); // at sea level
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        EXPECT_LE(pieces[i].curve.size(), 40U);
        if (i > 0) {
            EXPECT_EQ(pieces[i].from, pieces[i - 1].to);
            EXPECT_THAT(pieces[i].curve.front().core,
                        DoubleNear(pieces[i - 1].curve.back().core, 1e-6));
        }
    }
}

/// Newton's law for the same pot: 6 kg of stock 16 cm deep has a top, a bottom and a side.
/// T = T∞ + (T₀ − T∞)·e^(−h·A·t/(m·cp)): Incropera et al., “The lumped capacitance method”.
TEST(FoodTemperatures, OfAPotFollowNewtonsLaw)
{
    const Judged judged(stockSupper(true, safety::RuleBook::UsHome));
    const auto food = science::findDinnerFood("stock");
    const auto properties = science::foodProperties(food->composition, 45, food->freezesAt);
    const auto atRoom = science::foodProperties(food->composition, 20, food->freezesAt);
    const double volume = 6 / atRoom->density;
    const double base = volume / 0.16;
    const double side = std::sqrt(4 * 3.14159265358979 * base) * 0.16;
    const double tau = volume * properties->density * properties->heatCapacity /
                       (100 * (2 * base + side)); // ice bath: 100 W/(m²·K)
    const auto& bath = judged.history().pieces[1];
    const double start = bath.curve.front().core;
    for (const auto& sample : bath.curve) {
        const double seconds = 60 * (sample.minute - bath.curve.front().minute);
        const double expected = 0.5 + (start - 0.5) * std::exp(-seconds / tau);
        // The solver keeps within 0.1 °C of its exact solution for a step of 100 °C; that the pot
        // has not quite one temperature adds as much again.
        EXPECT_THAT(sample.core, DoubleNear(expected, 0.3)) << seconds << " s";
    }
}

/// °C in the middle, minutes after a stay has begun.
double middleAfter(const safety::HistoryPiece& piece, double minutes)
{
    const double at = static_cast<double>(minuteOf(piece.from)) + minutes;
    const auto next =
        std::ranges::lower_bound(piece.curve, at, {}, &safety::TemperatureSample::minute);
    const auto& before = *(next - 1);
    return before.core +
           (next->core - before.core) * (at - before.minute) / (next->minute - before.minute);
}

TEST(FoodTemperatures, BeginAStayOfDaysAsCloselyAsOneOfHours)
{
    Supper supper = stockSupper(false, safety::RuleBook::UsHome);
    const Judged hours(supper);
    supper.layout.starts["stock/*/boil-bones"] = supper.instant(9, 0, -1);
    const Judged days(supper);
    const auto& brief = hours.history().pieces[1];
    const auto& longer = days.history().pieces[1];
    ASSERT_EQ(longer.place, safety::Place::Fridge);
    ASSERT_GT(longer.to - longer.from, brief.to - brief.from + 1000_min);
    for (double minutes = 15; minutes < 300; minutes += 15) {
        // Between samples a curve may be off by a fifth of a degree (Sampler); both may.
        EXPECT_THAT(middleAfter(longer, minutes), DoubleNear(middleAfter(brief, minutes), 0.4))
            << minutes;
    }
}

TEST(FoodTemperatures, BoilLowerInTheMountains)
{
    Supper supper = stockSupper(true, safety::RuleBook::UsHome);
    supper.kitchen.altitudeMetres = 1800;
    const Judged judged(supper);
    EXPECT_THAT(judged.history().pieces[0].curve.back().core,
                DoubleNear(science::boilingPointAtAltitude(1800).value(), 0.05));
}

TEST(FoodTemperatures, AreComputedAnewOnlyFromTheChangedStayOn)
{
    const Supper supper = stockSupper(true, safety::RuleBook::UsHome);
    const FormulationPtr formulation = supper.formulated();
    FoodTemperatures temperatures(*formulation, supper.kitchen);
    Schedule schedule = supper.laidOut()->schedule;
    temperatures.update(schedule);
    EXPECT_EQ(temperatures.computedLast(), 5U);
    temperatures.update(schedule);
    EXPECT_EQ(temperatures.computedLast(), 0U);
    auto& reheat = schedule.starts[taskIndex(*formulation, "stock/*/heat-up")];
    reheat = *reheat - 5_min;
    const FoodHistories moved = temperatures.update(schedule);
    // The stay in the fridge is shorter, what comes before it is as it was.
    EXPECT_EQ(temperatures.computedLast(), 4U); // fridge, hob, counter until served, table
    FoodTemperatures anew(*formulation, supper.kitchen);
    EXPECT_EQ(anew.update(schedule), moved);
    for (auto& start : schedule.starts) {
        start = start ? std::optional(*start - 30_min) : start;
    }
    FoodTemperatures fresh(*formulation, supper.kitchen);
    const FoodHistories shifted = temperatures.update(schedule);
    EXPECT_EQ(temperatures.computedLast(), 0U);
    EXPECT_EQ(fresh.update(schedule), shifted);
}

TEST(FoodSafetyClash, OfAPotThatCoolsTooSlowly)
{
    const PlanPtr slow = stockSupper(false, safety::RuleBook::UsHome).laidOut();
    EXPECT_THAT(rulesOf(*slow),
                ElementsAre("us_cooling_first", "us_cooling_total", "us_home_cold_holding"));
    EXPECT_EQ(slow->clashes.front().severity, Severity::Unsafe);
    EXPECT_THAT(slow->clashes.front().tasks,
                testing::Contains(taskIndex(*slow->formulation, "stock/*/boil-bones")));
    EXPECT_THAT(rulesOf(*stockSupper(true, safety::RuleBook::UsHome).laidOut()), IsEmpty());
}

TEST(FoodSafetyClash, IsACautionWhereTheBookHasNoLimitOfItsOwn)
{
    const PlanPtr slow = stockSupper(false, safety::RuleBook::UkEu).laidOut();
    ASSERT_THAT(rulesOf(*slow), testing::Contains("uk_cooling_first"));
    for (const Clash& clash : slow->clashes) {
        if (clash.finding && clash.finding->rule == "uk_cooling_first") {
            EXPECT_EQ(clash.severity, Severity::Undesirable);
        }
    }
}

/// Roasted so long before it is served; 25 minutes at table.
std::vector<std::string> standing(Minutes before, safety::RuleBook book)
{
    Recipe pie = recipe("Pie", {inOven("Bake", 60_min, 180_degC)});
    pie.common.foods = {followed("pie", FoodClass::CookedDish, {does("Bake", Treatment::Heat)})};
    Supper supper;
    supper.occasion.preferences.rules = book;
    supper.serve(pie);
    const FormulationPtr formulation = supper.formulated();
    Schedule schedule = supper.laidOut()->schedule;
    const PlanTime served = *schedule.starts[formulation->servings.begin()->second];
    schedule.starts[taskIndex(*formulation, "pie/*/bake.out")] = served - before - 1_min;
    schedule.starts[taskIndex(*formulation, "pie/*/bake")] = served - before - 61_min;
    schedule.starts[taskIndex(*formulation, "pie/*/bake.in")] = served - before - 62_min;
    return rulesOf(*judgePlan(formulation, supper.input(), schedule));
}

// The Food Safety and Hygiene (England) Regulations 2013, Schedule 4: two hours below 63 °C.
TEST(FoodSafetyClash, OfWhatStandsAMinuteTooLong)
{
    EXPECT_THAT(standing(95_min, safety::RuleBook::UkEu), IsEmpty());
    EXPECT_THAT(standing(96_min, safety::RuleBook::UkEu), ElementsAre("uk_hot_period"));
}

/// Chicken brought to `middle`, and eaten.
std::vector<Clash> chickenAt(Celsius middle, safety::RuleBook book)
{
    Recipe chicken = recipe("Chicken", {inOven("Roast", 90_min, 200_degC)});
    FollowedFood bird =
        made(followed("bird", FoodClass::RawPoultry, {to(does("Roast", Treatment::Heat), middle)}),
             "chicken_whole", FoodShape::Round, 11_cm, 1600_g);
    bird.isOnePiece = true;
    chicken.common.foods = {bird};
    Supper supper;
    supper.occasion.preferences.rules = book;
    supper.serve(chicken);
    const PlanPtr plan = supper.laidOut();
    std::vector<Clash> found;
    for (const Clash& clash : plan->clashes) {
        if (clash.kind == ClashKind::FoodSafety) {
            found.push_back(clash);
        }
    }
    return found;
}

// FDA Food Code 2022, 3-401.11(A)(3): poultry reaches 165 °F (73.9 °C).
TEST(FoodSafetyClash, OfAMiddleADegreeTooCold)
{
    EXPECT_THAT(chickenAt(74_degC, safety::RuleBook::UsTrade), IsEmpty());
    const std::vector<Clash> clashes = chickenAt(55_degC, safety::RuleBook::UsTrade);
    ASSERT_THAT(clashes, SizeIs(1));
    EXPECT_EQ(clashes[0].finding->rule, "us_trade_poultry_core");
    EXPECT_EQ(clashes[0].severity, Severity::Unsafe);
}

TEST(FoodSafetyClash, IsLiveDuringADrag)
{
    const Supper supper = stockSupper(true, safety::RuleBook::UsHome);
    const PlanInput input = supper.input();
    const PlanPtr plan = supper.laidOut();
    LivePlan live(plan, input);
    const TaskIndex ice = taskIndex(*plan->formulation, "stock/*/stir-over-ice");
    const auto hasSafetyClash = [](const std::vector<Clash>& clashes) {
        return std::ranges::any_of(
            clashes, [](const Clash& clash) { return clash.kind == ClashKind::FoodSafety; });
    };
    EXPECT_FALSE(hasSafetyClash(live.move(ice, *plan->schedule.starts[ice])));
    // Left on the counter for five hours and a half first.
    EXPECT_TRUE(hasSafetyClash(live.move(ice, *plan->schedule.starts[ice] + 330_min)));
    EXPECT_EQ(live.clashes(), judgePlan(plan->formulation, input, live.schedule())->clashes);
    EXPECT_FALSE(hasSafetyClash(live.move(ice, *plan->schedule.starts[ice])));
}

TEST(FoodSafetyClash, IsNotMadeOfWhatWasNotComputed)
{
    Recipe soup = recipe("Soup", {with(step("Simmer", 30_min, keepAnEye), BurnerUse{20_cm})});
    soup.common.foods = {
        followed("soup", FoodClass::SoupOrStew, {does("Simmer", Treatment::Simmer)})};
    Supper supper;
    supper.serve(soup);
    const Judged judged(supper);
    EXPECT_THAT(rulesOf(*judged.plan), IsEmpty());
}

TEST(FoodSafetyClash, SaysWhichFoodHowMuchSinceWhenAndByWhom)
{
    const Supper supper = stockSupper(false, safety::RuleBook::UsHome);
    const PlanPtr plan = supper.laidOut();
    const std::string said = sentencesOf(*plan, supper.occasion).front();
    EXPECT_THAT(said, testing::MatchesRegex(
                          "From 12:[0-9][0-9] on the stock cools for [0-9]+ h.* where 2 h is the "
                          "most: cooked food that is to be kept cools from 135 to 70 °F within two "
                          "hours – 21 to 57 °C \\(FDA, Food Code 2022, "
                          "3-501.14\\(A\\)\\(1\\)\\)\\."));
    EXPECT_THAT(said, testing::Not(testing::HasSubstr("safe")));
}

/// A dish that is kept in the fridge from 10:10 until so many minutes later.
Recipe keptInFridge(const std::string& name, FoodClass food)
{
    Recipe dish = recipeInOrder(name, {step("Begin " + name, 10_min), step("End " + name, 10_min)});
    Wait wait = waitBetween("waits", "Begin " + name, "End " + name, 0_min, 900_min);
    wait.keep = {inFridge(1_l)};
    dish.common.waits = {wait};
    dish.common.foods = {
        followed(name, food,
                 {does("Begin " + name, Treatment::Stand), does("End " + name, Treatment::Stand)})};
    return dish;
}

std::vector<RawBesideReady> besideEachOther(int readyFromHour, int readyFromMinute)
{
    Supper supper;
    supper.serve(keptInFridge("joint", FoodClass::RawMeat));
    supper.serve(keptInFridge("mousse", FoodClass::GelatineCream));
    supper.put("joint/*/begin-joint", 10, 0);
    supper.put("joint/*/end-joint", 12, 0);
    supper.put("mousse/*/begin-mousse", readyFromHour, readyFromMinute);
    supper.put("mousse/*/end-mousse", 18, 0);
    const PlanPtr plan = supper.laidOut();
    return rawBesideReady(*plan->formulation, plan->schedule);
}

TEST(FridgeOrder, NamesRawFoodThatStandsBesideReadyFood)
{
    const auto meetings = besideEachOther(11, 49); // in the fridge from 11:59 on
    ASSERT_THAT(meetings, SizeIs(1));
    EXPECT_EQ(meetings[0].raw, FoodIndex{0});
    EXPECT_EQ(meetings[0].ready, FoodIndex{1});
    EXPECT_EQ(meetings[0].when.length(), 1_min);
    EXPECT_THAT(besideEachOther(11, 50), IsEmpty());
}

/// What a rule limits is not told twice: once as a wait, once as the rule.
TEST(FoodSafetyClash, StandsForTheWaitThatTheRuleLimits)
{
    Recipe pie = recipeInOrder("Pie", {inOven("Bake", 60_min, 180_degC), step("Cut", 5_min)});
    Wait wait = waitBetween("stands", "Bake", "Cut", 0_min);
    wait.keep = {KeepOption{}};
    pie.common.waits = {wait};
    pie.common.foods = {followed("pie", FoodClass::CookedDish, {does("Bake", Treatment::Heat)})};
    Supper supper;
    supper.serve(pie);
    supper.put("pie/*/bake.in", 14, 0);
    supper.put("pie/*/bake", 14, 1);
    supper.put("pie/*/bake.out", 15, 1);
    supper.put("pie/*/cut", 19, 25);
    const PlanPtr plan = supper.laidOut();
    ASSERT_THAT(plan->clashes, SizeIs(1));
    EXPECT_EQ(plan->clashes.front().kind, ClashKind::FoodSafety);
    EXPECT_EQ(plan->clashes.front().finding->rule, "uk_hot_period");
}

} // namespace

} // namespace suppertide::test
