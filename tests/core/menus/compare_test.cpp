// Menus looked at one by one: which can be cooked, what each comes to, and when it ends.
#include <gmock/gmock.h>

#include "core/menus/compare.h"
#include "core/menus/figure.h"
#include "core/propose/make_plan.h"
#include "tests/core/menus/courses.h"

namespace suppertide::menus {
namespace {

using test::offer;
using test::recipeOf;
using test::Supper;
using test::variantWith;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

Recipe roast(const std::string& name, Celsius at)
{
    Recipe made = test::recipe(name, {test::inOven("Roast " + name, Minutes{60}, at)});
    made.variants = {variantWith("plain", {})};
    return made;
}

/// Soup or pie, then fish or bread: pie and bread want the one oven hot at once, at temperatures
/// that do not meet.
Supper twoCourses()
{
    Supper supper;
    supper.occasion.courses.clear();
    supper.addCourse("First", {19, 30});
    offer(supper, recipeOf("soup", {variantWith("plain", {})}));
    offer(supper, roast("pie", 220_degC));
    supper.addCourse("Second", {19, 40});
    offer(supper, recipeOf("fish", {variantWith("plain", {Substance::Fish})}));
    offer(supper, roast("bread", 100_degC));
    for (const char* each : {"pie", "bread"}) {
        Wait served = test::waitBetween("is served hot", "Roast " + std::string(each), "",
                                        Minutes{0}, Minutes{5});
        supper.recipes.at(RecipeId{each}).common.waits = {served};
    }
    supper.addGuest("Ada");
    return supper;
}

CompareRequest requestFor(const Supper& supper)
{
    CompareRequest request{supper.input(), {}, {}, 3};
    request.limits.wallClock = std::chrono::minutes(5);
    request.limits.settling = {4'000, 20'000};
    request.limits.improving = {10'000};
    return request;
}

TEST(Compare, SaysOfEachMenuWhetherItCanBeCooked)
{
    const auto compared = compareMenus(requestFor(twoCourses()));
    ASSERT_TRUE(compared);
    ASSERT_THAT(compared->menus, SizeIs(4));
    EXPECT_FALSE(compared->isStopped);
    std::vector<Cookable> cookable;
    for (const ComparedMenu& menu : compared->menus) {
        cookable.push_back(menu.cookable);
        EXPECT_EQ(menu.evening.has_value(), menu.cookable == Cookable::Yes);
        EXPECT_EQ(menu.layout != nullptr, menu.cookable == Cookable::Yes);
    }
    EXPECT_THAT(cookable, ElementsAre(Cookable::Yes, Cookable::Yes, Cookable::Yes, Cookable::No));
    EXPECT_FALSE(compared->menus[3].conflict.empty());
    EXPECT_GT(compared->menus[2].evening->energy, compared->menus[0].evening->energy);
}

TEST(Compare, AgreesWithThePlannerByItself)
{
    const Supper supper = twoCourses();
    const auto compared = compareMenus(requestFor(supper));
    ASSERT_TRUE(compared);
    for (const ComparedMenu& menu : compared->menus) {
        PlanRequest alone{inputFor(supper.input(), compared->table, menu.number), {}, 0};
        alone.limits.steps = 50'000;
        alone.limits.wallClock = std::chrono::minutes(5);
        const auto outcome = makePlan(alone);
        ASSERT_TRUE(outcome);
        EXPECT_EQ(std::holds_alternative<PlanFound>(*outcome), menu.cookable == Cookable::Yes);
    }
}

TEST(Compare, GivesTheSameWithOneThreadOrThree)
{
    CompareRequest one = requestFor(twoCourses());
    CompareRequest three = one;
    one.limits.threads = 1;
    three.limits.threads = 3;
    const auto a = compareMenus(one);
    const auto b = compareMenus(three);
    ASSERT_TRUE(a && b);
    for (std::size_t i = 0; i < a->menus.size(); ++i) {
        EXPECT_EQ(a->menus[i].evening, b->menus[i].evening);
        EXPECT_EQ(a->menus[i].cookable, b->menus[i].cookable);
    }
}

TEST(Compare, TellsAllMenusFirstAndThenEachLook)
{
    std::size_t begun = 0;
    std::size_t looks = 0;
    std::size_t last = 0;
    const auto compared = compareMenus(requestFor(twoCourses()), {}, [&](const auto& progress) {
        begun += progress.begun != nullptr ? progress.begun->size() : 0;
        looks += progress.looked != nullptr ? 1 : 0;
        EXPECT_GE(progress.done, last);
        EXPECT_LE(progress.done, progress.toDo);
        last = progress.done;
    });
    ASSERT_TRUE(compared);
    EXPECT_EQ(begun, 4U);
    EXPECT_GE(looks, 4U);
}

TEST(Compare, EndsAtOnceWhenItIsStopped)
{
    std::stop_source stop;
    std::size_t looks = 0;
    const auto compared =
        compareMenus(requestFor(twoCourses()), stop.get_token(), [&](const auto& progress) {
            looks += progress.looked != nullptr ? 1 : 0;
            stop.request_stop();
        });
    ASSERT_TRUE(compared);
    EXPECT_TRUE(compared->isStopped);
    EXPECT_EQ(looks, 0U);
    EXPECT_THAT(compared->menus, SizeIs(4)) << "what needs no plan is known";
}

TEST(Compare, RefusesMoreMenusThanItCanCompare)
{
    Supper supper;
    supper.occasion.courses.clear();
    for (int course = 0; course < 5; ++course) {
        supper.addCourse("Course " + std::to_string(course), {19, course});
        for (int i = 0; i < 7; ++i) { // 7^5 is 16,807
            offer(supper, recipeOf("r" + std::to_string(course) + std::to_string(i),
                                   {variantWith("plain", {})}));
        }
    }
    const auto compared = compareMenus(requestFor(supper));
    ASSERT_FALSE(compared);
    EXPECT_THAT(compared.error().forCook, HasSubstr("more than 10000 menus"));
}

TEST(Compare, SaysWhatIsWrongWithAFaultyOccasion)
{
    Supper supper = twoCourses();
    supper.occasion.courses[0].dishes[0].recipe = RecipeId{"gone"};
    const auto compared = compareMenus(requestFor(supper));
    ASSERT_FALSE(compared);
    EXPECT_THAT(compared.error().forCook, HasSubstr("not in the library"));
}

TEST(MenuTable, NumbersMenusSoThatTheirAlternativesFindThem)
{
    const auto table = MenuTable::make(twoCourses().input());
    ASSERT_TRUE(table);
    for (std::size_t i = 0; i < table->size(); ++i) {
        EXPECT_EQ(table->find(table->unplanned(i).leading), i);
    }
    EXPECT_FALSE(table->find({AlternativeId{"soup"}, AlternativeId{"cake"}}));
}

TEST(MenuTable, TellsMainIngredientsOfMoreThanOneCourse)
{
    Supper supper = twoCourses();
    for (const char* each : {"soup", "fish"}) {
        IngredientLine salmon = test::ingredient("Salmon", {});
        salmon.amount.value = Rational{1000};
        supper.recipes.at(RecipeId{each}).common.lines = {salmon};
    }
    const auto table = MenuTable::make(supper.input());
    ASSERT_TRUE(table);
    ASSERT_THAT(table->unplanned(0).repeated, SizeIs(1));
    EXPECT_EQ(table->unplanned(0).repeated[0].ingredient, "salmon");
    EXPECT_THAT(table->unplanned(1).repeated, SizeIs(0));
}

TEST(Menu, TakenIsTheEveningThatWasCompared)
{
    Supper supper = twoCourses();
    supper.layout.starts["soup/*/cook-soup"] = supper.instant(18, 0);
    const PlanInput input = supper.input();
    const auto table = MenuTable::make(input);
    ASSERT_TRUE(table);
    const PlanInput taken = inputFor(input, *table, 3);
    EXPECT_TRUE(taken.layout->starts.empty());
    EXPECT_EQ(portionsOf(taken.occasion->courses[0].dishes[0]), Portions{0});
    EXPECT_EQ(portionsOf(taken.occasion->courses[0].dishes[1]), Portions{1});
}

} // namespace
} // namespace suppertide::menus
