// Ways out of small suppers: each kind where it helps, each planned and judged, cheapest first, and
// nothing that has no bearing on the conflict.
#include <gmock/gmock.h>

#include "core/advice/candidates.h"
#include "core/advice/requirement.h"
#include "core/plan/lay_out.h"
#include "core/wording/advice_wording.h"
#include "tests/core/advice/advice_suppers.h"

namespace suppertide {
namespace {

using std::chrono_literals::operator""h;
using std::chrono_literals::operator""min;

using test::adviceFor;
using test::adviceForClash;
using test::findWay;
using test::inOven;
using test::recipeInOrder;
using test::step;
using test::Supper;

Advice found(const AdviceRequest& request)
{
    auto advice = findWaysOut(request);
    EXPECT_TRUE(advice);
    return advice ? *std::move(advice) : Advice{};
}

/// All that an offered way out promises.
void expectHonest(const Advice& advice)
{
    std::int64_t last = 0;
    for (const WayOut& way : advice.ways) {
        const auto formulation = formulate(way.after);
        ASSERT_TRUE(formulation);
        const PlanPtr plan =
            judgePlan(*formulation, way.after, layOut(**formulation, *way.after.layout));
        EXPECT_TRUE(plan->holds());
        EXPECT_EQ(plan->schedule, way.plan->schedule);
        EXPECT_GE(way.points, last);
        last = way.points;
    }
}

const WayOut* findMove(const Advice& advice, MoveStep::Why why)
{
    const auto way = std::ranges::find_if(advice.ways, [why](const WayOut& each) {
        const auto* move = std::get_if<MoveStep>(&each.changes.front());
        return move != nullptr && move->why == why;
    });
    return way == advice.ways.end() ? nullptr : &*way;
}

TEST(WaysOut, ServeLaterByAsLittleAsHelps)
{
    const Advice advice = found(adviceFor(test::custardTooLate()));
    EXPECT_FALSE(advice.conflict.empty());
    expectHonest(advice);
    const WayOut* way = findWay<ServeLater>(advice);
    ASSERT_NE(way, nullptr);
    // From 11:30: in 1, baked 40, out 1, chilled 240, turned out 5 minutes: 16:17, so 16:20.
    const auto& moves = std::get<ServeLater>(way->changes.front()).moves;
    ASSERT_EQ(moves.size(), 1U);
    EXPECT_EQ(moves.front().to.clock, (ClockTime{16, 20}));
}

TEST(WaysOut, LetACookComeEarlierByNoMoreThanIsUsed)
{
    const Advice advice = found(adviceFor(test::custardTooLate()));
    const WayOut* way = findWay<FreeCook>(advice);
    ASSERT_NE(way, nullptr);
    const auto& change = std::get<FreeCook>(way->changes.front());
    EXPECT_EQ(change.to.clock, (ClockTime{11, 30}));
    // 15:00 less 287 minutes is 10:13; chilled for up to an hour more it may be earlier.
    EXPECT_LE(change.from.clock, (ClockTime{10, 10}));
    EXPECT_GE(change.from.clock, (ClockTime{8, 30}));
}

TEST(WaysOut, LeaveAloneWhatTheConflictDoesNotTouch)
{
    Supper supper = test::custardTooLate();
    supper.occasion.houseJobs.push_back({HouseJobId{"table"},
                                         "Lay the table",
                                         20_min,
                                         handsOn,
                                         {{2027, 6, 19}, {12, 0}},
                                         {{2027, 6, 19}, {14, 0}},
                                         std::nullopt});
    const Advice advice = found(adviceFor(supper));
    EXPECT_EQ(findWay<DropJob>(advice), nullptr);
    EXPECT_EQ(findWay<Borrow>(advice), nullptr);
}

/// Two things on one blender at one time, both to be served at once.
Supper oneBlender(Minutes standing)
{
    Supper supper;
    supper.kitchen.appliances = {{KitchenItemId{"blender"}, "Blender", "blender"}};
    supper.addCook("Jory");
    for (const char* name : {"Soup", "Sauce"}) {
        const std::string deed = std::string("Blend the ") + name;
        Recipe recipe =
            recipeInOrder(name, {test::with(step(deed, 20_min), ApplianceUse{"blender"})});
        recipe.common.waits.push_back(test::waitBetween("stands", deed, "", 0_min, standing));
        supper.serve(recipe);
    }
    return supper;
}

TEST(WaysOut, ArrangeAnewWhereThatIsEnough)
{
    const AdviceRequest request = adviceForClash(oneBlender(60_min));
    ASSERT_TRUE(request.clash);
    const Advice advice = found(request);
    EXPECT_TRUE(advice.conflict.empty());
    expectHonest(advice);
    ASSERT_FALSE(advice.ways.empty());
    EXPECT_NE(findWay<PlanAnew>(advice), nullptr);
    EXPECT_FALSE(findWay<PlanAnew>(advice)->moved.empty());
    // Nobody borrows a blender where blending one of them earlier does.
    EXPECT_EQ(advice.ways.front().changes.front().index(), EveningChange{PlanAnew{}}.index());
}

TEST(WaysOut, BorrowOneMoreWhereTheOneThereIsCannotDo)
{
    const Advice advice = found(adviceFor(oneBlender(10_min)));
    EXPECT_FALSE(advice.conflict.empty());
    expectHonest(advice);
    const WayOut* way = findWay<Borrow>(advice);
    ASSERT_NE(way, nullptr);
    EXPECT_EQ(std::get<Borrow>(way->changes.front()).name, "blender");
    EXPECT_EQ(way->after.kitchen->appliances.size(), 2U);
}

/// More work in the last half hour than one cook can do.
Supper tooMuchAtOnce()
{
    Supper supper;
    for (const char* name : {"Fish", "Greens"}) {
        const std::string deed = std::string("Fry the ") + name;
        Recipe recipe = recipeInOrder(name, {step(deed, 20_min)});
        recipe.common.waits.push_back(test::waitBetween("stays crisp", deed, "", 0_min, 5_min));
        supper.serve(recipe);
    }
    return supper;
}

TEST(WaysOut, FindAnotherPairOfHandsForTheMinutesThatCount)
{
    const Advice advice = found(adviceFor(tooMuchAtOnce()));
    EXPECT_FALSE(advice.conflict.empty());
    expectHonest(advice);
    const WayOut* way = findWay<Helper>(advice);
    ASSERT_NE(way, nullptr);
    const auto& change = std::get<Helper>(way->changes.front());
    const auto minutes = [](const ClockTime& time) { return time.hour * 60 + time.minute; };
    EXPECT_LE(minutes(change.to.clock) - minutes(change.from.clock), 30);
    EXPECT_GE(minutes(change.from.clock), 19 * 60);
}

TEST(WaysOut, UnpinWhatIsPinnedWhereItCannotBe)
{
    Supper supper;
    Recipe gratin = recipeInOrder("Gratin", {inOven("Bake the gratin", 60_min, 150_degC)});
    supper.serve(gratin);
    supper.pin("gratin/*/bake-the-gratin.in", 19, 0);
    const Advice advice = found(adviceFor(supper));
    expectHonest(advice);
    const WayOut* way = findWay<Unpin>(advice);
    ASSERT_NE(way, nullptr);
    EXPECT_TRUE(way->after.layout->pinned.empty());
    EXPECT_FALSE(way->before.layout->pinned.empty());
}

TEST(WaysOut, TakeTheMethodThatWasNotFixed)
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
    pan.part.steps = {step("Fry the roots", 25_min)};
    how.methods = {oven, pan};
    roots.methods = {how};
    supper.serve(roots).methods[how.id] = oven.id;
    const Advice advice = found(adviceFor(supper));
    expectHonest(advice);
    const WayOut* way = findWay<TakeMethod>(advice);
    ASSERT_NE(way, nullptr);
    EXPECT_EQ(std::get<TakeMethod>(way->changes.front()).to, pan.id);
}

TEST(WaysOut, DropTheHouseJobThatTakesTheHands)
{
    Supper supper = tooMuchAtOnce();
    supper.recipes.clear();
    supper.occasion.courses.front().dishes.clear();
    Recipe fish = recipeInOrder("Fish", {step("Fry the fish", 20_min)});
    fish.common.waits.push_back(test::waitBetween("stays crisp", "Fry the fish", "", 0_min, 5_min));
    supper.serve(fish);
    supper.occasion.houseJobs.push_back({HouseJobId{"shower"},
                                         "Shower",
                                         25_min,
                                         undivided,
                                         {{2027, 6, 19}, {19, 0}},
                                         {{2027, 6, 19}, {19, 30}},
                                         std::nullopt});
    const Advice advice = found(adviceFor(supper));
    expectHonest(advice);
    const WayOut* way = findWay<DropJob>(advice);
    ASSERT_NE(way, nullptr);
    EXPECT_TRUE(way->after.occasion->houseJobs.empty());
}

/// Terrine that keeps for days, and fish that does not, laid out at the same minutes.
Supper terrineAndFish()
{
    Supper supper;
    supper.serve(recipeInOrder("Terrine", {step("Press the terrine", 30_min)}));
    Recipe fish = recipeInOrder("Fish", {step("Fry the fish", 20_min)});
    fish.common.waits.push_back(test::waitBetween("stays crisp", "Fry the fish", "", 0_min, 5_min));
    supper.serve(fish);
    supper.put("terrine/*/press-the-terrine", 18, 50);
    supper.put("fish/*/fry-the-fish", 19, 5);
    return supper;
}

TEST(WaysOut, DoTheDayBeforeWhatKeeps)
{
    const AdviceRequest request = adviceForClash(terrineAndFish());
    ASSERT_TRUE(request.clash);
    ASSERT_EQ(request.clash->kind, ClashKind::Hands);
    const Advice advice = found(request);
    expectHonest(advice);
    const WayOut* way = findMove(advice, MoveStep::Why::DayBefore);
    ASSERT_NE(way, nullptr);
    const auto& change = std::get<MoveStep>(way->changes.front());
    EXPECT_EQ(change.task, "terrine/*/press-the-terrine");
    EXPECT_EQ(change.to, change.from - 24h);
    EXPECT_EQ(way->after.layout->starts.at(change.task), change.to);
    EXPECT_TRUE(way->after.layout->pinned.empty());
}

TEST(WaysOut, LetAWaitBeNoLongerThanItMust)
{
    Supper supper = terrineAndFish();
    Recipe terrine =
        recipeInOrder("Terrine", {step("Press the terrine", 30_min), step("Slice it", 5_min)});
    Wait rests = test::waitBetween("rests", "Press the terrine", "Slice it", 10_min, 120_min);
    terrine.common.waits = {rests};
    supper.recipes.clear();
    supper.occasion.courses.front().dishes.clear();
    supper.layout = {};
    supper.serve(terrine);
    supper.serve(recipeInOrder("Greens", {step("Wash the greens", 20_min)}));
    supper.put("terrine/*/press-the-terrine", 17, 0);
    supper.put("terrine/*/slice-it", 18, 30);
    supper.put("greens/*/wash-the-greens", 17, 10);
    const AdviceRequest request = adviceForClash(supper);
    ASSERT_TRUE(request.clash);
    const Advice advice = found(request);
    expectHonest(advice);
    const bool isThere = std::ranges::any_of(advice.ways, [](const WayOut& way) {
        const auto* move = std::get_if<MoveStep>(&way.changes.front());
        // From 17:30 until 18:30 it rests for an hour; ten minutes are enough.
        return move != nullptr && move->why == MoveStep::Why::ShorterWait &&
               move->to == move->from + 50min;
    });
    EXPECT_TRUE(isThere);
}

TEST(WaysOut, TakeAnotherMethodWhereTheOvenIsTaken)
{
    Supper supper;
    Recipe gratin = recipeInOrder("Gratin", {inOven("Bake the gratin", 60_min, 150_degC)});
    gratin.common.waits.push_back(test::waitBetween("sets", "Bake the gratin", "", 10_min, 20_min));
    supper.serve(gratin);
    Recipe roots = test::recipe("Roots", {});
    MethodChoice how;
    how.id = MethodChoiceId{"how"};
    how.name = "how the roots are cooked";
    Method oven{MethodId{"oven"}, "in the oven", 0, {}};
    oven.part.steps = {inOven("Roast the roots", 40_min, 220_degC)};
    oven.part.waits = {test::waitBetween("stay crisp", "Roast the roots", "", 0_min, 10_min)};
    Method pan{MethodId{"pan"}, "in a pan", 3, {}};
    pan.part.steps = {step("Fry the roots", 25_min, keepAnEye)};
    how.methods = {oven, pan};
    roots.methods = {how};
    supper.serve(roots);
    const AdviceRequest request = adviceForClash(supper);
    ASSERT_TRUE(request.clash);
    ASSERT_EQ(request.clash->kind, ClashKind::OvenTemperature);
    const Advice advice = found(request);
    expectHonest(advice);
    const WayOut* way = findWay<TakeOption>(advice);
    ASSERT_NE(way, nullptr);
    EXPECT_EQ(std::get<TakeOption>(way->changes.front()).to, "pan");
}

TEST(WaysOut, SetAPinnedOvenToWhatTheDishAccepts)
{
    Supper supper;
    Recipe gratin =
        recipeInOrder("Gratin", {inOven("Bake the gratin", 60_min, 140_degC, 170_degC)});
    gratin.common.waits.push_back(test::waitBetween("sets", "Bake the gratin", "", 10_min, 20_min));
    supper.serve(gratin);
    supper.layout.ovenSettings = {{supper.kitchen.ovens.front().id.text(), supper.instant(18, 0),
                                   supper.instant(19, 25), 200}};
    const Advice advice = found(adviceFor(supper));
    EXPECT_FALSE(advice.conflict.empty());
    expectHonest(advice);
    const WayOut* shared = findWay<ShareTemperature>(advice);
    std::string others;
    for (const WayOut& way : advice.ways) {
        others += changeSentence(way) + "\n";
    }
    ASSERT_NE(shared, nullptr) << others;
    EXPECT_EQ(std::get<ShareTemperature>(shared->changes.front()).toC, 170);
    EXPECT_EQ(shared->after.layout->ovenSettings.front().setC, 170);
    EXPECT_NE(findWay<Unpin>(advice), nullptr);
}

TEST(WaysOut, FindOneMoreShelf)
{
    Supper supper;
    supper.kitchen.ovens.front().shelves = 1;
    for (const char* name : {"Gratin", "Pie"}) {
        const std::string deed = std::string("Bake the ") + name;
        Recipe recipe = recipeInOrder(name, {inOven(deed, 60_min, 180_degC)});
        recipe.common.waits.push_back(test::waitBetween("sets", deed, "", 5_min, 15_min));
        supper.serve(recipe);
    }
    const Advice advice = found(adviceFor(supper));
    EXPECT_FALSE(advice.conflict.empty());
    expectHonest(advice);
    const WayOut* way = findWay<AddShelf>(advice);
    ASSERT_NE(way, nullptr);
    EXPECT_EQ(way->after.kitchen->ovens.front().shelves, 2);
}

TEST(WaysOut, GiveTheGuestAVariantThatSuits)
{
    Supper supper;
    Guest& fay = supper.addGuest("Fay", {Substance::Almond});
    const GuestId guest = fay.id;
    Recipe soup = recipeInOrder("Soup", {step("Stir the soup", 10_min)});
    soup.common.lines = {test::ingredient("peas", {})};
    Variant nuts = soup.variants.front();
    nuts.id = VariantId{"almonds"};
    nuts.name = "with almonds";
    nuts.adds.lines = {test::ingredient("almonds", {Substance::Almond})};
    soup.variants.insert(soup.variants.begin(), nuts);
    Dish& dish = supper.serve(soup, 1);
    dish.mix.front().guests = {guest};
    AdviceRequest request = adviceForClash(supper);
    ASSERT_TRUE(request.clash);
    ASSERT_EQ(request.clash->kind, ClashKind::Allergen);
    const Advice advice = found(request);
    expectHonest(advice);
    const WayOut* way = findWay<GiveVariant>(advice);
    ASSERT_NE(way, nullptr);
    EXPECT_EQ(std::get<GiveVariant>(way->changes.front()).to, VariantId{"plain"});
}

/// Soup with butter for Fay, who must not have milk; nothing else is cooked.
Supper butterySoup()
{
    Supper supper;
    const GuestId fay = supper.addGuest("Fay", {Substance::Milk}).id;
    Recipe soup = recipeInOrder("Soup", {step("Stir the soup", 10_min)});
    soup.common.lines = {test::ingredient("butter", {Substance::Milk})};
    supper.serve(soup, 1).mix.front().guests = {fay};
    return supper;
}

TEST(WaysOut, MakeThePortionOfAGuestWithASubstitute)
{
    const Supper supper = butterySoup();
    AdviceRequest request = adviceForClash(supper);
    ASSERT_TRUE(request.clash);
    ASSERT_EQ(request.clash->kind, ClashKind::Allergen);
    const Advice advice = found(request);
    expectHonest(advice);
    const WayOut* way = findWay<Substitute>(advice);
    ASSERT_NE(way, nullptr);
    const auto& change = std::get<Substitute>(way->changes.front());
    EXPECT_EQ(change.swaps,
              (std::vector{LineSwap{change.swaps.front().line, "butter", "olive oil"}}))
        << "of margarine the label is to be read";
    const Dish& dish = way->after.occasion->courses.back().dishes.back();
    ASSERT_EQ(dish.mix.size(), 1U);
    const Recipe& recipe = *way->after.recipes.at(dish.recipe);
    ASSERT_EQ(recipe.variants.size(), 2U);
    EXPECT_EQ(dish.mix.front().variant, recipe.variants.back().id);
    const auto resolved = resolve(recipe, dish.mix.front().variant);
    ASSERT_TRUE(resolved);
    EXPECT_EQ(resolved->part.lines.front().ingredient, "olive oil");
    EXPECT_EQ(way->before.recipes.at(dish.recipe)->variants.size(), 1U);
}

TEST(WaysOut, ServeAGuestAnotherDishOfTheCourse)
{
    Supper supper = butterySoup();
    Course& course = supper.occasion.courses.back();
    course.alternatives = {{AlternativeId{"soup"}, "Soup"}, {AlternativeId{"salad"}, "Salad"}};
    course.dishes.back().alternative = AlternativeId{"soup"};
    Recipe salad = recipeInOrder("Salad", {step("Toss the salad", 10_min)});
    salad.common.lines = {test::ingredient("lettuce", {})};
    Dish& other = supper.serve(salad, 0);
    other.mix.clear();
    other.alternative = AlternativeId{"salad"};
    const AdviceRequest request = adviceForClash(supper);
    ASSERT_TRUE(request.clash);
    const Advice advice = found(request);
    expectHonest(advice);
    const WayOut* way = findWay<ServeGuest>(advice);
    ASSERT_NE(way, nullptr);
    const auto& change = std::get<ServeGuest>(way->changes.front());
    ASSERT_TRUE(change.to);
    EXPECT_EQ(change.to->first, other.id);
    EXPECT_EQ(change.guest, supper.occasion.guests.front().id);
}

TEST(WaysOut, HoldOnRandomSuppersThatClash)
{
    test::forEachSeed(4, [](test::Random& random) {
        Supper supper = test::anySupper(random);
        // Half of them too late to begin with.
        if (random.oneIn(2)) {
            supper.kitchen.cooks.front().usualHours = {{{18, 30}, {22, 0}, Presence::Free}};
        }
        AdviceRequest request = adviceForClash(supper);
        request.mostTrials = 30;
        expectHonest(found(request));
    });
}

TEST(WaysOut, AreTheSameEachTime)
{
    const Advice one = found(adviceFor(test::custardTooLate()));
    const Advice two = found(adviceFor(test::custardTooLate()));
    ASSERT_EQ(one.ways.size(), two.ways.size());
    for (std::size_t i = 0; i < one.ways.size(); ++i) {
        EXPECT_EQ(one.ways[i].changes, two.ways[i].changes);
        EXPECT_EQ(one.ways[i].plan->schedule, two.ways[i].plan->schedule);
    }
}

TEST(WaysOut, StopAtOnce)
{
    std::stop_source source;
    source.request_stop();
    const auto advice = findWaysOut(adviceFor(test::custardTooLate()), source.get_token());
    ASSERT_TRUE(advice);
    EXPECT_TRUE(advice->ways.empty());
    EXPECT_LE(advice->tried, 1U);
}

TEST(WaysOut, AreToldAsTheyAreFound)
{
    std::vector<std::size_t> tried;
    const auto advice =
        findWaysOut(adviceFor(test::custardTooLate()), {}, [&](const AdviceProgress& progress) {
            if (progress.found != nullptr) {
                tried.push_back(progress.tried);
            }
        });
    ASSERT_TRUE(advice);
    EXPECT_EQ(tried.size(), advice->ways.size());
    EXPECT_TRUE(std::ranges::is_sorted(tried));
}

TEST(Touching, IsOfWhatTheConflictNamesAlone)
{
    const Supper supper = test::custardTooLate();
    const Problem before = supper.formulated()->problem;
    const auto outcome = makePlan({supper.input(), test::enough()});
    const auto* none = std::get_if<NoPlan>(&*outcome);
    ASSERT_NE(none, nullptr);
    ASSERT_FALSE(none->conflict.empty());
    Supper colder = supper;
    colder.kitchen.coldPlaces.push_back({KitchenItemId{"box"}, "Box", ColdKind::Fridge, litres(9)});
    EXPECT_FALSE(touches(before, none->conflict, colder.formulated()->problem));
    Supper later = supper;
    later.occasion.courses.front().serving.clock = {16, 0};
    EXPECT_TRUE(touches(before, none->conflict, later.formulated()->problem));
}

/// Walnuts for Max at 18:00 and then leaves for Fay, who must not have any, at 19:00 in the first
/// of two bowls, which nobody washes.
Supper unwashedBowl()
{
    Supper supper;
    supper.kitchen.vessels = {
        {KitchenItemId{"bowl"}, "Bowl", "bowl", Litres::ofSmallest(30), centimetres(20), 2}};
    const VesselUse use{"bowl", Litres::ofSmallest(30), 1, 0_min};
    const GuestId max = supper.addGuest("Max").id;
    const GuestId fay = supper.addGuest("Fay", {Substance::Walnut}).id;
    for (const auto& [name, deed, substance, guest] :
         {std::tuple{"Brittle", "Crush the brittle", Substance::Walnut, max},
          std::tuple{"Salad", "Dress the leaves", Substance::Mustard, fay}}) {
        Recipe recipe = test::recipe(name, {test::with(step(deed, 10_min), use)});
        recipe.common.lines = {test::ingredient("what is in it", {substance})};
        recipe.common.waits.push_back(test::waitBetween("stands", deed, "", 0_min, 100_min));
        supper.serve(recipe, 1).mix.front().guests = {guest};
    }
    supper.put("brittle/*/crush-the-brittle", 18, 0);
    supper.put("salad/*/dress-the-leaves", 19, 0);
    supper.layout.units = {{"brittle/*/crush-the-brittle:bowl", "bowl-1"},
                           {"salad/*/dress-the-leaves:bowl", "bowl-1"}};
    return supper;
}

TEST(WaysOut, OfAToolNotWashedAreAnotherOneWashingItAndTheOtherOrder)
{
    const AdviceRequest request = adviceForClash(unwashedBowl());
    ASSERT_TRUE(request.clash);
    ASSERT_EQ(request.clash->kind, ClashKind::UnwashedTool);
    const Advice advice = found(request);
    expectHonest(advice);
    const WayOut* other = findWay<UseOther>(advice);
    ASSERT_NE(other, nullptr);
    EXPECT_EQ(changeSentence(*other), "Use the “Bowl 2” for “Dress the leaves” instead of the "
                                      "“Bowl 1”.");
    EXPECT_EQ(other->after.layout->units.at("salad/*/dress-the-leaves:bowl"), "bowl-2");
    const WayOut* washed = findWay<WashBefore>(advice);
    ASSERT_NE(washed, nullptr);
    EXPECT_EQ(changeSentence(*washed), "Wash the bowl before “Dress the leaves”.");
    EXPECT_THAT(washed->after.layout->washed,
                testing::ElementsAre("salad/*/dress-the-leaves:bowl"));
    const WayOut* first = findMove(advice, MoveStep::Why::CleanFirst);
    ASSERT_NE(first, nullptr);
    EXPECT_THAT(changeSentence(*first), testing::HasSubstr("in the other order"));
    EXPECT_TRUE(first->after.layout->pinned.empty());
}

} // namespace
} // namespace suppertide
