// The sheet of small evenings put together by hand.
#include <gmock/gmock.h>

#include "core/sheet/per_hour_plan.h"
#include "tests/support/small_evening.h"

namespace suppertide {
namespace {

using test::at;
using test::eve;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

class Evening : public testing::Test
{
protected:
    [[nodiscard]] PerHourPlan sheet(const ReadingStyle& style = {},
                                    std::vector<Clash> clashes = {}) const
    {
        PlanInput input;
        input.occasion = std::make_shared<const Occasion>(evening.occasion);
        input.kitchen = std::make_shared<const Kitchen>();
        input.layout = std::make_shared<const Layout>();
        input.recipes = recipes;
        return perHourPlan(evening.plan(std::move(clashes)), input, style);
    }

    [[nodiscard]] std::string text(const ReadingStyle& style = {}) const
    {
        return toText(sheet(style));
    }

    [[nodiscard]] std::vector<std::string> turnTexts(const ReadingStyle& style = {}) const
    {
        std::vector<std::string> texts;
        for (const SheetDay& day : sheet(style).days) {
            for (const SheetHour& hour : day.hours) {
                for (const SheetOvenTurn& turn : hour.ovenTurns) {
                    texts.push_back(toIso(evening.formulation.calendar.civil(turn.at).clock) + " " +
                                    turn.text);
                }
            }
        }
        return texts;
    }

    [[nodiscard]] std::vector<std::string> fetchTexts() const
    {
        std::vector<std::string> texts;
        for (const SheetDay& day : sheet().days) {
            for (const SheetHour& hour : day.hours) {
                for (const SheetFetch& fetch : hour.fetches) {
                    texts.push_back(toIso(evening.formulation.calendar.civil(fetch.at).clock) +
                                    " " + fetch.text);
                }
            }
        }
        return texts;
    }

    OvenProgram& program() { return evening.schedule.programs[OvenIndex{0}]; }

    test::SmallEvening evening;
    std::map<RecipeId, std::shared_ptr<const Recipe>> recipes;
};

TEST_F(Evening, StandsUnderItsDaysAndHours)
{
    evening.add({"Set cream", "Heat the cream", eve(21, 40), 10, handsOn, {0}});
    evening.add({"Roast roots", "Peel the roots", at(17, 59), 20, handsOn, {0}});
    evening.add({"Roast roots", "Cut the roots", at(18), 10, handsOn, {1}});
    evening.serve("Main", at(19, 30));
    const PerHourPlan made = sheet();
    ASSERT_EQ(made.days.size(), 2U);
    EXPECT_EQ(made.days[0].heading, "Friday 18 June");
    EXPECT_EQ(made.days[1].heading, "Saturday 19 June");
    ASSERT_EQ(made.days[1].hours.size(), 3U);
    EXPECT_EQ(toIso(made.days[1].hours[0].civil), "2027-06-19T17:00");
    EXPECT_EQ(made.days[1].hours[0].steps.size(), 1U);
    EXPECT_EQ(toIso(made.days[1].hours[1].civil), "2027-06-19T18:00");
    EXPECT_EQ(toIso(made.days[1].hours[2].civil), "2027-06-19T19:00");
    EXPECT_EQ(made.subtitle, "Saturday 19 June, 17:59 to 19:30, 3 at table");
    EXPECT_THAT(made.cookNames, ElementsAre("Maren", "Jory"));
}

TEST_F(Evening, ReadsAloudInPlainText)
{
    evening.add({"Roast roots", "Peel the roots", at(17, 59), 20, handsOn, {0, 1}});
    evening.serve("Main", at(19, 30));
    EXPECT_THAT(text(), HasSubstr("\n17:00\n"
                                  "  17:59  Maren and Jory: Peel the roots; Roast roots · 20 "
                                  "min\n"));
    EXPECT_THAT(text(), HasSubstr("  19:30  == 1. Serve main ==\n"));
    const ReadingStyle twelve{false, true};
    EXPECT_THAT(text(twelve), HasSubstr("  5:59 pm  Maren and Jory: Peel the roots"));
}

TEST_F(Evening, WithNothingToDoIsStillASheet)
{
    const PerHourPlan made = sheet();
    EXPECT_THAT(made.days, IsEmpty());
    EXPECT_EQ(made.subtitle, "");
    EXPECT_THAT(toText(made), HasSubstr("Midsummer supper"));
    EXPECT_THAT(toText(made), HasSubstr("prevail over this sheet"));
}

TEST_F(Evening, SaysWhichOfTheTwoHoursItIsWhenTheClocksGoBack)
{
    // Directive 2000/84/EC, article 3, and the Summer Time Order 2002: London's clocks go from
    // 02:00 back to 01:00 on the last Sunday of October (31 October 2027).
    evening.formulation.calendar.origin =
        evening.formulation.calendar.zone.instant(CivilTime{{2027, 10, 31}, {0, 0}});
    evening.add({"Bread", "Fold once", planTime(90), 5, handsOn, {0}});
    evening.add({"Bread", "Fold again", planTime(150), 5, handsOn, {0}});
    const PerHourPlan made = sheet();
    ASSERT_EQ(made.days.size(), 1U);
    ASSERT_EQ(made.days[0].hours.size(), 2U);
    EXPECT_EQ(made.days[0].hours[0].civil, made.days[0].hours[1].civil);
    const std::string words = toText(made);
    const std::size_t first = words.find("\n01:00\n");
    const std::size_t again = words.find("\n01:00 again: the clocks have gone back\n");
    ASSERT_NE(first, std::string::npos);
    ASSERT_NE(again, std::string::npos);
    EXPECT_LT(first, words.find("Fold once"));
    EXPECT_LT(words.find("Fold once"), again);
    EXPECT_LT(again, words.find("Fold again"));
}

TEST_F(Evening, LeavesOutTheHourThatTheClocksSkip)
{
    // The same rule: from 01:00 on to 02:00 on the last Sunday of March (28 March 2027).
    evening.formulation.calendar.origin =
        evening.formulation.calendar.zone.instant(CivilTime{{2027, 3, 28}, {0, 0}});
    evening.add({"Bread", "Fold once", planTime(59), 5, handsOn, {0}});
    evening.add({"Bread", "Fold again", planTime(60), 5, handsOn, {0}});
    EXPECT_THAT(text(), HasSubstr("\n00:00\n  00:59  Maren: Fold once"));
    EXPECT_THAT(text(), HasSubstr("\n02:00\n  02:00  Maren: Fold again"));
    EXPECT_THAT(text(), Not(HasSubstr("again:")));
}

TEST_F(Evening, TurnsTheKnobWithTheReasonAndTheTimeItIsHot)
{
    const TaskIndex gratin = evening.add({"Potato gratin", "Bake", at(18), 90, unattended});
    const TaskIndex roots = evening.add({"Roast roots", "Roast", at(19, 40), 40, unattended});
    evening.bake(gratin, 150);
    evening.bake(roots, 220);
    program() = {{at(17, 47), 150}, {at(19, 33), 220}, {at(20, 20), std::nullopt}};
    // 130 °C at 10 °C a minute are 13 min; 70 °C are 7 min.
    EXPECT_THAT(turnTexts(),
                ElementsAre("17:47 Oven on, to 150 °C; hot at 18:00 for the potato gratin",
                            "19:33 Oven from 150 °C up to 220 °C; hot at 19:40 for the roast roots",
                            "20:20 Oven off"));
    const ReadingStyle american{true, false};
    EXPECT_THAT(turnTexts(american),
                ElementsAre("17:47 Oven on, to 300 °F; hot at 18:00 for the potato gratin",
                            "19:33 Oven from 300 °F up to 430 °F; hot at 19:40 for the roast roots",
                            "20:20 Oven off"));
}

TEST_F(Evening, LeavesAnEmptyOvenOnThatMustBeAsHotAgainInAMoment)
{
    const TaskIndex squash = evening.add({"Squash", "Bake", at(18), 60, unattended});
    const TaskIndex roots = evening.add({"Roots", "Roast", at(19, 5), 40, unattended});
    evening.bake(squash, 190);
    evening.bake(roots, 220);
    program() = {{at(17, 43), 190}, {at(19), std::nullopt}, {at(19, 1), 220}, {at(19, 45), {}}};
    EXPECT_THAT(turnTexts(),
                ElementsAre(HasSubstr("17:43 Oven on, to 190 °C"),
                            HasSubstr("19:01 Oven from 190 °C up to 220 °C"), "19:45 Oven off"));
    // Twenty minutes are worth it, and what must cool has to be turned off.
    program() = {{at(17, 43), 190}, {at(19), {}}, {at(19, 20), 220}, {at(19, 45), {}}};
    EXPECT_THAT(turnTexts(), testing::SizeIs(4));
    program() = {{at(17, 43), 190}, {at(19), {}}, {at(19, 5), 150}, {at(19, 45), {}}};
    EXPECT_THAT(turnTexts(), testing::SizeIs(4));
}

TEST_F(Evening, TurnsAnOvenOffAroundWhatStandsInIt)
{
    const TaskIndex squash = evening.add({"Squash", "Bake", at(18), 60, unattended});
    const TaskIndex dry = evening.add({"Meringue", "Dry", at(19), 5, unattended});
    evening.bake(squash, 190);
    evening.bake(dry, 190);
    program() = {{at(17, 43), 190}, {at(19), {}}, {at(19, 5), 190}, {at(19, 45), {}}};
    EXPECT_THAT(turnTexts(), testing::SizeIs(4));
}

TEST_F(Evening, PutsFoodInAtTheHeatThatTheOvenReallyHas)
{
    const TaskIndex in = evening.add({"Squash", "", at(18), 1, handsOn, {0}}, TaskRole::OvenIn);
    const TaskIndex bake = evening.add({"Squash", "Bake", at(18, 1), 50, unattended});
    const OvenDemandIndex demand = evening.bake(in, 180);
    evening.formulation.problem.ovenDemands[demand].to = {bake, Edge::End};
    program() = {{at(17, 43), 190}, {at(18, 51), {}}};
    EXPECT_THAT(text(), HasSubstr("Maren: Squash into the oven; 190 °C · until 18:51"));
    evening.formulation.problem.ovenDemands[demand].mode = "fan";
    EXPECT_THAT(text(), HasSubstr("190 °C, fan · until 18:51"));
    program() = {};
    EXPECT_THAT(text(), HasSubstr("oven off · until 18:51"));
}

TEST_F(Evening, TellsWhatGoesIntoTheColdAndWhenItComesOut)
{
    const CountIndex fridge = evening.addCold("fridge", ResourceKind::Fridge, 400);
    const TaskIndex cook = evening.add({"Set cream", "Heat the cream", eve(21), 10, handsOn, {0}});
    const TaskIndex plate = evening.add({"Set cream", "Turn out", at(20), 10, handsOn, {1}});
    evening.hold(fridge, {cook, Edge::End}, {plate, Edge::Start}, 15);
    EXPECT_THAT(fetchTexts(),
                ElementsAre("21:10 Set cream into the fridge, 1.5 l; out Sat 19 June 20:00",
                            "20:00 Set cream out of the fridge"));
    EXPECT_THAT(text(), HasSubstr("21:10  Maren: Set cream into the fridge"));
    EXPECT_THAT(text(), HasSubstr("20:00  Jory: Set cream out of the fridge"));
}

TEST_F(Evening, PutsTheBatchesOfOneFoodAwayTogether)
{
    const CountIndex fridge = evening.addCold("fridge", ResourceKind::Fridge, 400);
    const TaskIndex peel = evening.add({"Soup", "Peel", at(11), 14, handsOn, {0}});
    const TaskIndex one = evening.add({"Soup", "Blend", at(11, 26), 5, handsOn, {0}});
    const TaskIndex two = evening.add({"Soup", "Blend", at(11, 31), 5, handsOn, {0}});
    evening.hold(fridge, {peel, Edge::End}, {one, Edge::Start}, 10);
    evening.hold(fridge, {peel, Edge::End}, {two, Edge::Start}, 10);
    EXPECT_THAT(fetchTexts(),
                ElementsAre("11:14 Soup into the fridge, 2 l; out 11:26 and 11:31",
                            "11:26 Soup out of the fridge", "11:31 Soup out of the fridge"));
}

TEST_F(Evening, PutsTheShoppingAwayInOneLine)
{
    const CountIndex fridge = evening.addCold("fridge", ResourceKind::Fridge, 400);
    const TaskIndex trip = evening.add({"", "Market", eve(17), 60, undivided, {0}}, TaskRole::Trip);
    const TaskIndex soup = evening.add({"Soup", "Peel", at(11), 14, handsOn, {0}});
    const TaskIndex tart = evening.add({"Tart", "Roll", at(12), 14, handsOn, {0}});
    for (const TaskIndex use : {soup, tart}) {
        const DemandIndex held = evening.hold(fridge, {trip, Edge::End}, {use, Edge::Start}, 10);
        evening.formulation.demands[held].dishName = evening.formulation.tasks[use].dishName;
    }
    LagSource fresh;
    fresh.text = "bought on Market";
    fresh.most = 30_h;
    evening.tie({trip, Edge::End}, {soup, Edge::Start}, fresh);
    EXPECT_THAT(fetchTexts(), ElementsAre("18:00 What was bought into the fridge, 2 l"));
    EXPECT_THAT(text(), HasSubstr("Maren: Market; 1 h; to be used within 1 day 6 h"));
}

TEST_F(Evening, IsOneStayWhereFoodGoesOnStanding)
{
    const CountIndex fridge = evening.addCold("fridge", ResourceKind::Fridge, 400);
    const TaskIndex cook = evening.add({"Cream", "Heat", at(10), 10, handsOn, {0}});
    const TaskIndex set = evening.add({"Cream", "Set", at(16), 0, unattended}, TaskRole::KeepTo);
    const TaskIndex plate = evening.add({"Cream", "Turn out", at(20), 10, handsOn, {0}});
    evening.hold(fridge, {cook, Edge::End}, {set, Edge::Start}, 10);
    evening.hold(fridge, {set, Edge::End}, {plate, Edge::Start}, 10);
    EXPECT_THAT(fetchTexts(), ElementsAre("10:10 Cream into the fridge, 1 l; out 20:00",
                                          "20:00 Cream out of the fridge"));
}

TEST_F(Evening, SaysWhatFollowsAStep)
{
    const auto wait = [](const char* words, Minutes least, std::optional<Minutes> most) {
        LagSource source;
        source.text = words;
        source.least = least;
        source.most = most;
        return source;
    };
    const TaskIndex roast = evening.add({"Lamb", "Roast", at(17), 10, handsOn, {0}});
    const TaskIndex carve = evening.add({"Lamb", "Carve", at(18), 10, handsOn, {0}});
    evening.tie({roast, Edge::End}, {carve, Edge::Start}, wait("rests", 8_min, 25_min));
    evening.tie({roast, Edge::End}, {carve, Edge::Start}, wait("juices settle", 5_min, {}));
    evening.tie({roast, Edge::End}, {carve, Edge::Start}, wait("is basted", 0_min, 0_min));
    evening.tie({roast, Edge::End}, {carve, Edge::Start}, wait("keeps", 2_h, 3_h));
    EXPECT_EQ(
        sheet().days[0].hours[0].steps[0].after,
        "then rests, 8 to 25 min; juices settle, at least 5 min; is basted, at once; keeps, 2 "
        "h to 3 h");
}

TEST_F(Evening, SaysADangerOncePerRecipeAndAToolsOncePerCookAndDay)
{
    const TaskIndex fry = evening.add({"Squash", "Fry", at(17), 10, handsOn, {0}});
    const TaskIndex again = evening.add({"Squash", "Fry on", at(17, 20), 10, handsOn, {0}});
    const TaskIndex cakes = evening.add({"Cakes", "Fry", at(17, 40), 10, handsOn, {0}});
    const TaskIndex cut = evening.add({"Cakes", "Cut", at(18), 10, handsOn, {1}});
    const TaskIndex before = evening.add({"Cakes", "Cut", eve(18), 10, handsOn, {0}});
    for (const TaskIndex task : {fry, again, cakes, cut, before}) {
        evening.formulation.tasks[task].cautions = {Caution::HotOil, Caution::SharpBlade};
        evening.formulation.tasks[task].recipe = RecipeId{evening.formulation.tasks[task].dishName};
        // As of a preparation: the dish is that of its first user.
        evening.formulation.tasks[task].dish = DishId{"squash"};
    }
    evening.formulation.tasks[cut].cautions = {Caution::SharpBlade};
    evening.formulation.tasks[before].cautions = {Caution::SharpBlade};
    int oil = 0;
    int blade = 0;
    for (const SheetDay& day : sheet().days) {
        for (const SheetHour& hour : day.hours) {
            for (const SheetNote& note : hour.notes) {
                EXPECT_FALSE(note.cooks.empty());
                oil += note.text == cautionText(Caution::HotOil) ? 1 : 0;
                blade += note.text == cautionText(Caution::SharpBlade) ? 1 : 0;
            }
        }
    }
    EXPECT_EQ(oil, 2);   // Squash, Cakes
    EXPECT_EQ(blade, 3); // Maren on Friday, Maren on Saturday, Jory on Saturday
}

TEST_F(Evening, SaysWhatADeedCallsForBesideTheRecipesOwnAndNothingTwice)
{
    using safety::CautionKind;
    const TaskIndex fry = evening.add({"Squash", "Fry", at(17), 10, handsOn, {0}});
    const TaskIndex out = evening.add({"Squash", "Take out", at(18), 2, handsOn, {0}});
    TaskSource& first = evening.formulation.tasks[fry];
    first.cautions = {Caution::HotOil};
    first.alsoCalledFor = {CautionKind::HotOil, CautionKind::AlcoholFlame};
    evening.formulation.tasks[out].alsoCalledFor = {CautionKind::HotOven};
    const PerHourPlan made = sheet();
    std::vector<std::string> at17;
    std::vector<std::string> at18;
    for (const SheetHour& hour : made.days[0].hours) {
        for (const SheetNote& note : hour.notes) {
            (hour.civil.clock.hour == 17 ? at17 : at18).push_back(note.text);
        }
    }
    EXPECT_THAT(at17, ElementsAre(safety::cautionOf(CautionKind::HotOil).says,
                                  safety::cautionOf(CautionKind::AlcoholFlame).says));
    EXPECT_THAT(at18, ElementsAre(safety::cautionOf(CautionKind::HotOven).says));
}

TEST_F(Evening, WashesUpWithoutSayingWhoseItWas)
{
    const TaskIndex wash =
        evening.add({"Soup", "Wash the blender", at(18), 5, handsOn, {0}}, TaskRole::Washing);
    evening.formulation.tasks[wash].batch = 2;
    evening.formulation.tasks[wash].batches = 2;
    evening.formulation.tasks[wash].variantName = "with almonds";
    EXPECT_EQ(sheet().days[0].hours[0].steps[0].detail, "5 min");
}

TEST_F(Evening, PutsClashesFirstAndSaysHowBadTheyAre)
{
    evening.add({"Soup", "Peel", at(18), 5, handsOn, {0}});
    Clash clash;
    clash.kind = ClashKind::LateForServing;
    clash.severity = Severity::Undesirable;
    const auto words = [&](Severity severity) {
        clash.severity = severity;
        return toText(sheet({}, {clash}));
    };
    EXPECT_THAT(words(Severity::Impossible), HasSubstr("cannot be cooked as it stands"));
    EXPECT_THAT(words(Severity::Unsafe), HasSubstr("not safe as it stands"));
    EXPECT_THAT(words(Severity::Undesirable), HasSubstr("not as good as it should be"));
    EXPECT_LT(words(Severity::Unsafe).find("  ! "), words(Severity::Unsafe).find("Peel"));
    EXPECT_THAT(text(), Not(HasSubstr("NOT YET SETTLED")));
}

TEST_F(Evening, KeepsNamesOfAnyKindOnOneLineEach)
{
    evening.occasion.name = "Ada's “long\nnight”\t🎉 ליל שבת";
    evening.add({"Crème brûlée", "Whisk  the\nyolks", at(18), 5, handsOn, {0}});
    EXPECT_THAT(text(), HasSubstr("Ada's “long night” 🎉 ליל שבת\n"));
    EXPECT_THAT(text(), HasSubstr("Maren: Whisk the yolks; Crème brûlée · 5 min\n"));
}

TEST_F(Evening, WrapsLongLinesUnderTheirText)
{
    evening.add({"Soup",
                 std::string(20, 'a') + " " + std::string(30, 'b') + " " + std::string(40, 'c'),
                 at(18),
                 5,
                 handsOn,
                 {0}});
    EXPECT_THAT(text(),
                HasSubstr("  18:00  Maren: " + std::string(20, 'a') + " " + std::string(30, 'b') +
                          "\n         " + std::string(40, 'c') + "; Soup · 5 min\n"));
    // A word wider than the paper stands alone and is not cut.
    evening.add({"Soup", std::string(90, 'x'), at(19), 5, handsOn, {0}});
    EXPECT_THAT(text(), HasSubstr(std::string(90, 'x')));
}

class GuestsEvening : public Evening
{
protected:
    GuestsEvening()
    {
        Recipe tart;
        tart.id = RecipeId{"tart"};
        tart.name = "Onion tart";
        IngredientLine flour;
        flour.id = LineId{"flour"};
        flour.ingredient = "plain flour";
        flour.contains = {{Substance::Wheat}};
        tart.common.lines = {flour};
        Variant wheat;
        wheat.id = VariantId{"wheat"};
        wheat.name = "wheat case";
        Variant free = wheat;
        free.id = VariantId{"free"};
        free.name = "gluten-free case";
        free.dropLines = {LineId{"flour"}};
        tart.variants = {wheat, free};
        recipes.emplace(tart.id, std::make_shared<const Recipe>(tart));
        evening.serve("Tart", at(19, 30));
        dish().id = DishId{"tart"};
        dish().recipe = tart.id;
    }

    Dish& dish()
    {
        if (evening.occasion.courses[0].dishes.empty()) {
            evening.occasion.courses[0].dishes.emplace_back();
        }
        return evening.occasion.courses[0].dishes[0];
    }
};

TEST_F(GuestsEvening, NamesWhoGetsWhatInsteadAQuarterOfAnHourAhead)
{
    dish().mix = {{VariantId{"wheat"}, Portions{2}, {}}, {VariantId{"free"}, Portions{1}, {}}};
    EXPECT_THAT(text(), HasSubstr("  19:15  GUESTS: Bea (coeliac) gets onion tart, gluten-free "
                                  "case."));
    EXPECT_THAT(text(), HasSubstr("2 onion tart, wheat case (Fay); 1 onion tart,\n"
                                  "         gluten-free case (Bea)\n"));
}

TEST_F(GuestsEvening, SaysWhatMustNotComeToAPlace)
{
    dish().mix = {{VariantId{"wheat"}, Portions{3}, {}}};
    EXPECT_THAT(text(), HasSubstr("GUESTS: Bea (coeliac) must not get onion tart, wheat case."));
    EXPECT_THAT(text(), HasSubstr("3 onion tart, wheat case (Fay; not for Bea)"));
}

TEST_F(GuestsEvening, NamesNobodyWhereTheCourseSuitsAll)
{
    dish().mix = {{VariantId{"free"}, Portions{3}, {}}};
    EXPECT_THAT(text(), Not(HasSubstr("GUESTS")));
    EXPECT_THAT(text(), HasSubstr("3 onion tart, gluten-free case"));
}

TEST_F(GuestsEvening, DoesNotRepeatWhatADietRulesOutAlready)
{
    evening.occasion.guests[1].allergies = {Substance::Wheat, Substance::Milk};
    dish().mix = {{VariantId{"wheat"}, Portions{3}, {}}};
    EXPECT_THAT(text(), HasSubstr("Bea (coeliac and no milk)"));
}

} // namespace
} // namespace suppertide
