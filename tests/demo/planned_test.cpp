// The demo as it is planned: the supper as first laid out has the clash of gratin and roots; what
// the planner finds has none, and keeps what a cook would keep. Times are common practice unless a
// source stands beside them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/exchange/problem_json.h"
#include "core/plan/lay_out.h"
#include "core/problem/timetable.h"
#include "core/propose/make_plan.h"
#include "core/wording/wording.h"
#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

using testing::HasSubstr;

constexpr Minutes hour{60};
constexpr Minutes day{24 * 60};

/// Counted work that is far more than a first plan takes; the clock is there for slow machines.
constexpr std::int64_t enoughSteps = 400'000;

PlanInput inputOf(Occasion occasion, Layout layout = {})
{
    PlanInput input;
    input.kitchen = std::make_shared<const Kitchen>(kitchen(occasion.kitchen.text()));
    input.occasion = std::make_shared<const Occasion>(std::move(occasion));
    for (const Recipe& each : content().recipes) {
        input.recipes.emplace(each.id, std::make_shared<const Recipe>(each));
    }
    input.layout = std::make_shared<const Layout>(std::move(layout));
    return input;
}

PlanInput inputOf(std::string_view id)
{
    const OccasionRecord& record = occasion(id);
    return inputOf(record.occasion, record.layout);
}

PlanPtr laidOut(const PlanInput& input)
{
    const FormulationPtr formulation = formulate(input).value();
    return judgePlan(formulation, input, layOut(*formulation, *input.layout));
}

/// The best plan of a run; null if none was found.
PlanPtr planned(const PlanInput& input)
{
    PlanRequest request{input, {}, 0};
    request.limits.steps = enoughSteps;
    request.limits.wallClock = std::chrono::seconds(60);
    const auto outcome = makePlan(request);
    if (!outcome) {
        return nullptr;
    }
    if (const auto* found = std::get_if<PlanFound>(&*outcome)) {
        return found->plan;
    }
    const auto* stopped = std::get_if<Stopped>(&*outcome);
    return stopped != nullptr ? stopped->best : nullptr;
}

/// From the end of one task to the start of another.
Minutes between(const Plan& plan, const std::string& from, const std::string& to)
{
    const auto& byId = plan.formulation->taskById;
    return plan.interval(byId.at(to))->start - plan.interval(byId.at(from))->end;
}

/// The supper's menu with this dessert for everybody.
Occasion supperWith(std::string_view dessert)
{
    Occasion changed = occasion("midsummer-supper").occasion;
    for (Dish& dish : changed.courses.back().dishes) {
        const bool isWanted = dish.id == DishId{std::string(dessert)};
        const Recipe& recipe = *recipes().at(dish.recipe);
        dish.mix = {{recipe.variants.front().id, Portions{isWanted ? 8 : 0}, {}}};
    }
    return changed;
}

TEST(SupperAsFirstLaidOut, HasTheClashOfGratinAndRootsAndNoOther)
{
    const PlanInput input = inputOf("midsummer-supper");
    const PlanPtr plan = laidOut(input);
    ASSERT_EQ(plan->clashes.size(), 1U);
    EXPECT_EQ(plan->clashes.front().kind, ClashKind::OvenTemperature);
    EXPECT_THAT(sentence(*plan, *input.occasion, plan->clashes.front()),
                testing::EndsWith("the oven is wanted at 150 °C by the potato gratin and at 220 °C "
                                  "by the roast roots."));
}

TEST(SupperAsPlanned, HasNoClash)
{
    const PlanPtr plan = planned(inputOf("midsummer-supper"));
    ASSERT_NE(plan, nullptr);
    EXPECT_TRUE(plan->holds());
}

TEST(SupperAsPlanned, IsTheSameEachTime)
{
    const PlanInput input = inputOf("midsummer-supper");
    EXPECT_EQ(writeProblem((*formulate(input))->problem),
              writeProblem((*formulate(input))->problem));
    EXPECT_EQ(laidOut(input)->schedule, laidOut(input)->schedule);
}

TEST(SupperAsPlanned, DriesItsMeringueForHoursInTheOvenSwitchedOff)
{
    const PlanPtr plan = planned(inputOf(supperWith("pavlova")));
    ASSERT_NE(plan, nullptr);
    ASSERT_TRUE(plan->holds());
    const auto& byId = plan->formulation->taskById;
    const auto dry = std::ranges::find_if(
        byId, [](const auto& each) { return each.first.find("/dry") != std::string::npos; });
    ASSERT_NE(dry, byId.end());
    const Interval drying = *plan->interval(dry->second);
    EXPECT_GE(drying.length(), 6 * hour);
    for (const OvenDemandIndex index : plan->formulation->problem.ovenDemands.indices()) {
        const OvenDemand& demand = plan->formulation->problem.ovenDemands[index];
        if (demand.id.find("/dry") == std::string::npos) {
            continue;
        }
        for (const ProgramEntry& entry : plan->schedule.programs[*plan->schedule.ovens[index]]) {
            EXPECT_FALSE(entry.setC && drying.contains(entry.at));
        }
    }
}

TEST(SupperAsPlanned, ChillsItsCustardAndBurnsItsCrustAtTheLastMoment)
{
    const PlanPtr plan = planned(inputOf(supperWith("custard")));
    ASSERT_NE(plan, nullptr);
    ASSERT_TRUE(plan->holds());
    const Minutes chilled = between(*plan, "custard/*/cover", "custard/*/burn");
    EXPECT_GE(chilled, 4 * hour);
    EXPECT_LE(chilled, 3 * day); // 3 to 4 days: foodsafety.gov, cold food storage chart
    EXPECT_LE(between(*plan, "custard/*/burn", "serve/dessert"), Minutes{30});
}

TEST(SundayLunchAsPlanned, HasNoClashAndRestsItsChicken)
{
    const PlanPtr plan = planned(inputOf("sunday-lunch"));
    ASSERT_NE(plan, nullptr);
    EXPECT_TRUE(plan->holds());
    const Minutes rested = between(*plan, "chicken/*/roast.out", "chicken/*/carve");
    EXPECT_GE(rested, Minutes{10});
    EXPECT_LE(rested, Minutes{20});
}

TEST(FirstIdea, SpeaksOfItsTroubleInShortSentences)
{
    const PlanInput input = inputOf("midsummer-supper-first-idea");
    const PlanPtr plan = laidOut(input);
    ASSERT_FALSE(plan->clashes.empty());
    for (const Clash& clash : plan->clashes) {
        const std::string said = sentence(*plan, *input.occasion, clash);
        EXPECT_LE(said.size(), 260U) << said;
        EXPECT_THAT(said, testing::Not(HasSubstr(" %")));
        EXPECT_THAT(said, testing::Not(HasSubstr("/")));
    }
}

// The first cook is not given everything while the other has hands free.
TEST(FirstIdea, SharesWhatIsTooMuchBetweenTheCooks)
{
    const PlanPtr plan = laidOut(inputOf("midsummer-supper-first-idea"));
    const CookIndex jory{1};
    const bool joryIsBusyToo = std::ranges::any_of(plan->clashes, [&](const Clash& clash) {
        return clash.kind == ClashKind::Hands && clash.cook == jory && clash.tasks.size() > 1;
    });
    EXPECT_TRUE(joryIsBusyToo);
}

} // namespace
} // namespace suppertide::demo
