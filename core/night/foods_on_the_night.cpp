#include "core/night/foods_on_the_night.h"

#include "core/plan/food_safety.h"
#include "core/plan/lay_out.h"

namespace suppertide {

PlanPtr foodsOnTheNight(const RestOfEvening& rest, const Schedule& schedule, const PlanInput& input)
{
    auto plan = std::make_shared<Plan>();
    plan->formulation = rest.whole;
    plan->schedule = layOut(*rest.whole, layoutWith(rest, schedule));
    if (!rest.whole->foods.empty()) {
        FoodSafety safety(*rest.whole, input);
        plan->clashes = safety.update(plan->schedule);
    }
    return plan;
}

} // namespace suppertide
