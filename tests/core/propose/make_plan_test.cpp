// From an occasion to a plan: found, stopped, impossible or faulty, each told apart.
#include <gmock/gmock.h>

#include "core/propose/make_plan.h"

namespace suppertide {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

/// Peel for `peel` minutes, then bake for 40 at 180 °C; one oven, one cook from `free` to 21:00;
/// served at 19:30.
PlanRequest supper(ClockTime free, Minutes peel = 20_min)
{
    Recipe recipe;
    recipe.id = RecipeId{"gratin"};
    recipe.name = "Gratin";
    Step peeling;
    peeling.id = StepId{"peel"};
    peeling.text = "Peel";
    peeling.duration = {peel, peel, peel};
    Step baking;
    baking.id = StepId{"bake"};
    baking.text = "Bake";
    baking.after = {peeling.id};
    baking.duration = {40_min, 40_min, 40_min};
    baking.attention = unattended;
    baking.uses = {OvenUse{1, 170_degC, 190_degC, 180_degC, OvenMode::Any}};
    recipe.common.steps = {peeling, baking};
    Variant plain;
    plain.id = VariantId{"plain"};
    plain.name = "plain";
    recipe.variants = {plain};

    Kitchen kitchen;
    kitchen.id = KitchenId{"cottage"};
    kitchen.name = "Cottage";
    kitchen.ovens = {{.id = KitchenItemId{"oven"}, .name = "Oven"}};
    kitchen.cooks = {{.id = CookId{"maren"}, .name = "Maren", .usualHours = {{free, {21, 0}}}}};

    Occasion occasion;
    occasion.id = OccasionId{"supper"};
    occasion.name = "Supper";
    occasion.kitchen = kitchen.id;
    occasion.guests = {{GuestId{"ada"}, "Ada", {}, {}}};
    Course course;
    course.id = CourseId{"main"};
    course.name = "Main";
    course.serving = {{2027, 6, 19}, {19, 30}};
    Dish dish;
    dish.id = DishId{"gratin"};
    dish.recipe = recipe.id;
    dish.mix = {{plain.id, Portions{8}, {}}};
    course.dishes = {dish};
    occasion.courses = {course};

    PlanRequest request;
    request.input.recipes.emplace(recipe.id, std::make_shared<const Recipe>(recipe));
    request.input.kitchen = std::make_shared<const Kitchen>(kitchen);
    request.input.occasion = std::make_shared<const Occasion>(occasion);
    request.input.layout = std::make_shared<const Layout>();
    request.limits.wallClock = std::chrono::minutes(5);
    request.limits.steps = 20'000;
    request.revision = 7;
    return request;
}

TEST(MakePlan, FindsAPlanThatHoldsForTheRevisionAskedFor)
{
    const auto outcome = makePlan(supper({14, 0}));
    ASSERT_TRUE(outcome);
    const auto* found = std::get_if<PlanFound>(&*outcome);
    ASSERT_NE(found, nullptr);
    EXPECT_THAT(found->plan->clashes, IsEmpty());
    EXPECT_EQ(found->plan->revision, 7U);
    if (found->bound) {
        EXPECT_LE(*found->bound, found->plan->schedule.cost.value_or(*found->bound));
    }
}

TEST(MakePlan, IsTheSameEachTime)
{
    const auto one = makePlan(supper({14, 0}));
    const auto two = makePlan(supper({14, 0}));
    EXPECT_EQ(std::get<PlanFound>(*one).plan->schedule, std::get<PlanFound>(*two).plan->schedule);
}

TEST(MakePlan, TellsEachBetterPlanAndEndsWithTheBest)
{
    std::optional<std::int64_t> last;
    const auto outcome = makePlan(supper({14, 0}), {}, [&](const PlanProgress& progress) {
        if (progress.better) {
            const std::int64_t cost = progress.better->figures.cost.total();
            EXPECT_LE(cost, last.value_or(cost));
            last = cost;
        }
    });
    ASSERT_TRUE(last);
    EXPECT_EQ(std::get<PlanFound>(*outcome).plan->figures.cost.total(), *last);
}

TEST(MakePlan, ReturnsAtOnceWhenStoppedBeforeItBegins)
{
    std::stop_source source;
    source.request_stop();
    const auto outcome = makePlan(supper({14, 0}), source.get_token());
    ASSERT_TRUE(outcome);
    EXPECT_NE(std::get_if<Stopped>(&*outcome), nullptr);
}

TEST(MakePlan, SaysThatThereIsNoneWhereTheCookIsNeverThereLongEnough)
{
    // 50 minutes never fit into the half hour from 20:30 to 21:00, on any day.
    const auto never = makePlan(supper({20, 30}, 50_min));
    ASSERT_TRUE(never);
    const auto* impossible = std::get_if<NoPlan>(&*never);
    ASSERT_NE(impossible, nullptr);
    EXPECT_FALSE(impossible->unplaced.empty() && impossible->conflict.empty());
}

TEST(MakePlan, RefusesFaultyInputWithItsPlace)
{
    PlanRequest request = supper({14, 0}, -20_min);
    const auto outcome = makePlan(request);
    ASSERT_FALSE(outcome);
    EXPECT_EQ(outcome.error().kind, FailureKind::BadInput);
    EXPECT_THAT(outcome.error().forCook, HasSubstr("“Gratin”"));
    EXPECT_THAT(outcome.error().forCook, HasSubstr("step “Peel”, duration"));
    EXPECT_THAT(outcome.error().forCook, HasSubstr("cannot take -20 minutes"));
}

} // namespace
} // namespace suppertide
