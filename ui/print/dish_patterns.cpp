#include "ui/print/dish_patterns.h"

#include <algorithm>

#include "ui/theme/palette.h"

namespace suppertide::ui {

DishPatterns::DishPatterns(const PerHourPlan& plan, const std::map<DishId, int>& looks)
    : dishes_(plan.dishes), looks_(looks)
{
    int next = 0;
    for (const auto& [dish, look] : looks_) {
        next = std::max(next, look + 1);
    }
    for (const DishId& dish : dishes_) {
        if (looks_.emplace(dish, next).second) {
            ++next;
        }
    }
    for (const TaskSource& source : plan.plan->formulation->tasks) {
        if (source.dish) {
            names_.emplace(*source.dish, source.dishName);
        }
    }
}

std::optional<Pattern> DishPatterns::find(const std::optional<DishId>& dish) const
{
    const auto look = dish ? looks_.find(*dish) : looks_.end();
    if (look == looks_.end()) {
        return std::nullopt;
    }
    return paletteFor(Appearance::Light).dish(look->second).pattern;
}

std::string DishPatterns::nameOf(const DishId& dish) const
{
    const auto name = names_.find(dish);
    return name == names_.end() ? std::string{} : name->second;
}

} // namespace suppertide::ui
