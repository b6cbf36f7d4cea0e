// The demo's food safety: what the rules find in the supper whose steps are all done too early,
// that it can be got out of, and that the other evenings break no rule known to the program.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/advice/ways_out.h"
#include "core/plan/food_safety.h"
#include "core/plan/lay_out.h"
#include "core/wording/advice_wording.h"
#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

using testing::HasSubstr;
using testing::IsSupersetOf;

PlanPtr laidOut(const PlanInput& input)
{
    const FormulationPtr formulation = formulate(input).value();
    return judgePlan(formulation, input, layOut(*formulation, *input.layout));
}

/// "broth us_cooling_first": what is found of each food.
std::set<std::string> foundIn(const Plan& plan)
{
    std::set<std::string> found;
    for (const Clash& clash : plan.clashes) {
        if (clash.kind == ClashKind::FoodSafety) {
            found.insert(plan.formulation->foods[*clash.food].name + " " + clash.finding->rule);
        }
    }
    return found;
}

const Clash& clashOf(const Plan& plan, const std::string& rule)
{
    const auto found = std::ranges::find_if(plan.clashes, [&](const Clash& clash) {
        return clash.finding && clash.finding->rule == rule;
    });
    EXPECT_NE(found, plan.clashes.end()) << rule;
    return *found;
}

TEST(OctoberSupper, BreaksTheRulesByWhatIsDoneTooEarly)
{
    const PlanInput input = inputOf("october-supper-first-thoughts");
    const PlanPtr plan = laidOut(input);
    for (const Clash& clash : plan->clashes) {
        // The recipe has its own word on how long the creams keep: two days.
        EXPECT_TRUE(clash.kind == ClashKind::FoodSafety || clash.kind == ClashKind::WaitTooLong)
            << sentence(*plan, *input.occasion, clash);
        EXPECT_THAT(sentence(*plan, *input.occasion, clash), testing::Not(HasSubstr("safe to")));
    }
    EXPECT_THAT(foundIn(*plan), IsSupersetOf({std::string{"broth us_cooling_first"},
                                              std::string{"creams storage/set_cream"},
                                              std::string{"carrots us_home_danger_zone"}}));
}

TEST(OtherEvenings, BreakNoRuleKnownToTheProgram)
{
    for (const char* id :
         {"midsummer-supper", "midsummer-supper-first-idea", "sunday-lunch", "harvest-lunch"}) {
        const PlanInput input = inputOf(id);
        const PlanPtr plan = laidOut(input);
        EXPECT_FALSE(plan->formulation->foods.empty()) << id;
        for (const Clash& clash : plan->clashes) {
            EXPECT_NE(clash.kind, ClashKind::FoodSafety) << sentence(*plan, *input.occasion, clash);
        }
    }
}

/// The sentences of the ways out of the clash with this rule.
std::vector<std::string> waysOutOf(const std::string& rule)
{
    AdviceRequest request;
    request.input = inputOf("october-supper-first-thoughts");
    request.laidOut = laidOut(request.input);
    request.clash = clashOf(*request.laidOut, rule);
    request.most = 4;
    for (PlannerLimits* limits : {&request.first, &request.better}) {
        limits->wallClock = std::chrono::seconds(60);
    }
    request.first.steps = 100'000;
    request.better.steps = 20'000;
    const auto advice = findWaysOut(request);
    std::vector<std::string> said;
    for (const WayOut& way : advice->ways) {
        said.push_back(changeSentence(way));
        for (const Clash& clash : way.plan->clashes) {
            EXPECT_FALSE(clash.finding && clash.finding->rule == rule) << said.back();
        }
    }
    return said;
}

TEST(OctoberSupper, IsHelpedByCoolingTheBrothInIcedWater)
{
    EXPECT_THAT(waysOutOf("us_cooling_first"), testing::Contains(HasSubstr("in iced water")));
}

TEST(OctoberSupper, IsHelpedByMakingTheCreamsLater)
{
    EXPECT_THAT(waysOutOf("storage/set_cream"), testing::Not(testing::IsEmpty()));
}

} // namespace
} // namespace suppertide::demo
