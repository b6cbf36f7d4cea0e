// The demo's 81 menus compared: each has an answer, and it is the one that the planner gives by
// itself.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/menus/compare.h"
#include "core/menus/figure.h"
#include "core/plan/making.h"
#include "core/propose/make_plan.h"
#include "core/wording/menu_words.h"
#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

using menus::ComparedMenu;
using menus::Cookable;
using testing::IsEmpty;

PlanInput supperInput()
{
    const OccasionRecord& record = occasion("midsummer-supper");
    PlanInput input;
    input.occasion = std::make_shared<const Occasion>(record.occasion);
    input.kitchen = std::make_shared<const Kitchen>(kitchen(record.occasion.kitchen.text()));
    for (const Recipe& each : content().recipes) {
        input.recipes.emplace(each.id, std::make_shared<const Recipe>(each));
    }
    input.layout = std::make_shared<const Layout>(record.layout);
    return input;
}

/// Settled only: better plans are another matter.
const menus::Comparison& compared()
{
    static const menus::Comparison result = [] {
        menus::CompareRequest request{supperInput(), {}, {}, 0};
        request.limits.wallClock = std::chrono::minutes(10);
        request.limits.improving.clear();
        return menus::compareMenus(request).value();
    }();
    return result;
}

TEST(MidsummerMenus, AreAllSettledAndMostCanBeCooked)
{
    ASSERT_EQ(compared().menus.size(), 81U);
    EXPECT_FALSE(compared().isStopped);
    const auto count = [](Cookable cookable) {
        return std::ranges::count(compared().menus, cookable, &ComparedMenu::cookable);
    };
    EXPECT_EQ(count(Cookable::NotSettled), 0);
    EXPECT_GE(count(Cookable::Yes), 60);
    EXPECT_GE(count(Cookable::No), 1) << "the demo has menus that this kitchen cannot do";
}

TEST(MidsummerMenus, SuitEverybody)
{
    for (const ComparedMenu& menu : compared().menus) {
        EXPECT_TRUE(menu.suitsEverybody()) << menuName(occasion("midsummer-supper").occasion, menu);
        const Occasion taken =
            compared().table.occasion(occasion("midsummer-supper").occasion, menu.number);
        for (const Course& each : taken.courses) {
            EXPECT_THAT(leftOut(taken, each, recipes()), IsEmpty());
            for (const Helping& helping : helpingsOf(taken, each, recipes())) {
                EXPECT_THAT(helping.unsuitable, IsEmpty());
            }
        }
    }
}

TEST(MidsummerMenus, CanBeCookedExactlyIfThePlannerByItselfSaysSo)
{
    int decided = 0;
    for (const ComparedMenu& menu : compared().menus) {
        PlanRequest alone{inputFor(supperInput(), compared().table, menu.number), {}, 0};
        // Another seed and budget than the comparison had.
        alone.limits.seed = 7;
        alone.limits.steps = 20'000;
        alone.limits.wallClock = std::chrono::minutes(2);
        const auto outcome = makePlan(alone);
        ASSERT_TRUE(outcome);
        if (std::holds_alternative<PlanFound>(*outcome)) {
            EXPECT_EQ(menu.cookable, Cookable::Yes) << menu.number;
            ++decided;
        } else if (std::get<NoPlan>(*outcome).isProven) {
            EXPECT_EQ(menu.cookable, Cookable::No) << menu.number;
            ++decided;
        }
    }
    EXPECT_GE(decided, 60) << "the budget is far too small to compare with";
}

TEST(MidsummerMenus, HaveFiguresOfAPlanThatHolds)
{
    for (const ComparedMenu& menu : compared().menus) {
        if (!menu.evening) {
            EXPECT_FALSE(menu.conflict.empty());
            continue;
        }
        EXPECT_GT(menu.evening->handsOn, menu.evening->lastHour);
        EXPECT_GT(menu.evening->ovenOn, Minutes{0});
        EXPECT_GT(menu.evening->energy.wattHours, 0);
        EXPECT_LE(menu.evening->stepsAhead, menu.evening->steps);
    }
}

} // namespace
} // namespace suppertide::demo
