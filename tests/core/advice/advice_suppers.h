// Small suppers that clash or cannot be cooked, for the tests of advice.
#pragma once

#include <algorithm>

#include "core/advice/ways_out.h"
#include "core/propose/make_plan.h"
#include "tests/support/for_each_seed.h"
#include "tests/support/supper/supper.h"

namespace suppertide::test {

/// Far more work than these small evenings take; the clock is there for slow machines.
inline PlannerLimits enough()
{
    PlannerLimits limits;
    limits.wallClock = std::chrono::seconds(60);
    limits.steps = 60'000;
    return limits;
}

inline AdviceRequest adviceFor(const Supper& supper)
{
    AdviceRequest request;
    request.input = supper.input();
    request.first = enough();
    request.better = enough();
    request.better.steps = 20'000;
    return request;
}

/// For the first clash of the supper as it is laid out.
inline AdviceRequest adviceForClash(const Supper& supper)
{
    AdviceRequest request = adviceFor(supper);
    request.laidOut = supper.laidOut();
    if (!request.laidOut->clashes.empty()) {
        request.clash = request.laidOut->clashes.front();
    }
    return request;
}

template <typename Kind>
const WayOut* findWay(const Advice& advice)
{
    const auto way = std::ranges::find_if(advice.ways, [](const WayOut& each) {
        return std::holds_alternative<Kind>(each.changes.front());
    });
    return way == advice.ways.end() ? nullptr : &*way;
}

/// Custards that must be baked when the cook comes and chill for four hours, for 15:00.
inline Supper custardTooLate()
{
    Supper supper;
    supper.occasion.courses.front().serving.clock = {15, 0};
    supper.kitchen.cooks.front().usualHours = {{{11, 30}, {22, 0}, Presence::Free}};
    Recipe custard = recipeInOrder(
        "Custard", {inOven("Bake the custard", 40_min, 140_degC), step("Turn it out", 5_min)});
    Wait chills = waitBetween("chills", "Bake the custard", "Turn it out", 240_min, 300_min);
    custard.common.waits.push_back(chills);
    custard.common.waits.push_back(waitBetween("stands", "Turn it out", "", 0_min, 30_min));
    supper.serve(custard);
    return supper;
}

/// A day of a few dishes that share one oven, one blender and one or two cooks.
inline Supper anySupper(Random& random)
{
    Supper supper;
    supper.kitchen.appliances = {{KitchenItemId{"blender"}, "Blender", "blender"}};
    supper.kitchen.cooks.front().usualHours = {
        {{static_cast<int>(random.between(13, 16)), 0}, {22, 0}, Presence::Free}};
    if (random.between(0, 1) == 1) {
        supper.addCook("Jory");
    }
    const auto dishes = random.between(1, 3);
    for (std::int64_t i = 0; i < dishes; ++i) {
        const std::string name = "Dish " + std::to_string(i + 1);
        const Minutes length{random.between(5, 40)};
        const int at = random.between(0, 1) == 0 ? 150 : 200;
        Recipe recipe = recipeInOrder(
            name, {with(step("Blend it", length), ApplianceUse{"blender"}),
                   inOven("Bake it", length * 2, Celsius::degrees(at)), step("Dish it up", 5_min)});
        recipe.common.waits.push_back(waitBetween("rests", "Bake it", "Dish it up", 5_min, 60_min));
        supper.serve(recipe);
    }
    return supper;
}

} // namespace suppertide::test
