// The demo's ways out: why the supper's first idea cannot be cooked, and what would help; and what
// helps where gratin and roots want the oven at once.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/advice/ways_out.h"
#include "core/plan/lay_out.h"
#include "core/wording/advice_wording.h"
#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

AdviceRequest requestFor(std::string_view id)
{
    const OccasionRecord& record = occasion(id);
    AdviceRequest request;
    request.input.kitchen =
        std::make_shared<const Kitchen>(kitchen(record.occasion.kitchen.text()));
    request.input.occasion = std::make_shared<const Occasion>(record.occasion);
    for (const Recipe& each : content().recipes) {
        request.input.recipes.emplace(each.id, std::make_shared<const Recipe>(each));
    }
    request.input.layout = std::make_shared<const Layout>(record.layout);
    // Counted work; the clock is there for slow machines.
    for (PlannerLimits* limits : {&request.first, &request.better}) {
        limits->wallClock = std::chrono::seconds(60);
    }
    request.first.steps = 200'000;
    request.better.steps = 60'000;
    return request;
}

/// Each holds when it is laid out as it would be kept, but for what was wrong with the food before.
void expectToHold(const Advice& advice)
{
    for (const WayOut& way : advice.ways) {
        const FormulationPtr formulation = formulate(way.after).value();
        const PlanPtr plan =
            judgePlan(formulation, way.after, layOut(*formulation, *way.after.layout));
        for (const Clash& clash : plan->clashes) {
            EXPECT_TRUE(clash.kind == ClashKind::Allergen || clash.kind == ClashKind::GuestLeftOut)
                << sentence(*plan, *way.after.occasion, clash);
        }
    }
}

TEST(FirstIdea, IsToldWhyItCannotBeCookedAndWhatWouldHelp)
{
    AdviceRequest request = requestFor("midsummer-supper-first-idea");
    request.most = 3;
    const auto advice = findWaysOut(request);
    ASSERT_TRUE(advice);
    EXPECT_THAT(
        conflictSentences(*advice->formulation, *request.input.occasion, advice->conflict),
        ElementsAre(
            "The baked onion tartlets (gluten-free case) and the baked onion tartlets (wheat "
            "case): each 27 min on a shelf of an oven at 170 °C to 190 °C, “stays hot” for 5 min "
            "to "
            "15 min, serving the tartlets at 19:55; so, whenever it is begun, from 19:23 to 19:40.",
            "The slow-roast side of salmon: 42 min on a shelf of the oven on “fan” at 110 °C to "
            "125 °C, “rests” for 3 min to 10 min, “stands plated” for at most 5 min, serving the "
            "main at 20:30; so, whenever it is begun, from 19:36 to 20:06.",
            "From 19:36 to 19:40 that is all of it at once, but there are only two ovens, the oven "
            "with 2 shelves and the oven-grill with 1 shelf, and no temperature suits all of it."));
    ASSERT_FALSE(advice->ways.empty());
    expectToHold(*advice);
    EXPECT_TRUE(std::ranges::any_of(advice->ways, [](const WayOut& way) {
        return changeSentence(way) ==
               "Make the mushroom tartlets instead of the baked onion tartlets.";
    }));
}

TEST(SupperAsFirstLaidOut, IsArrangedAnewByThePlannerWhichSaysHow)
{
    AdviceRequest request = requestFor("midsummer-supper");
    const FormulationPtr formulation = formulate(request.input).value();
    request.laidOut =
        judgePlan(formulation, request.input, layOut(*formulation, *request.input.layout));
    ASSERT_EQ(request.laidOut->clashes.size(), 1U);
    request.clash = request.laidOut->clashes.front();
    request.most = 2;
    const auto advice = findWaysOut(request);
    ASSERT_TRUE(advice);
    EXPECT_TRUE(advice->conflict.empty());
    expectToHold(*advice);
    const auto anew = std::ranges::find_if(advice->ways, [](const WayOut& way) {
        return std::holds_alternative<PlanAnew>(way.changes.front());
    });
    ASSERT_NE(anew, advice->ways.end());
    EXPECT_EQ(changeSentence(*anew), "Let the planner arrange it anew, with what there is.");
    // Where and when each of the two now is, and at what.
    const std::string said = effectSentence(*anew);
    EXPECT_THAT(said, testing::StartsWith("Potato gratin in the "));
    EXPECT_THAT(said, HasSubstr(" at 150 °C and Roast roots in "));
    EXPECT_THAT(said, HasSubstr(" with an oven on"));
}

} // namespace
} // namespace suppertide::demo
