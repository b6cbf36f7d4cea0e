// Dish patterns: which fill pattern each dish has on paper, the same as on the timeline if its
// looks are given.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/sheet/per_hour_plan.h"
#include "ui/theme/patterns.h"

namespace suppertide::ui {

class DishPatterns
{
public:
    /// Dishes without a look take the next free ones in order of the menu.
    DishPatterns(const PerHourPlan& plan, const std::map<DishId, int>& looks);

    [[nodiscard]] std::optional<Pattern> find(const std::optional<DishId>& dish) const;
    /// "Braised shoulder"; empty if unknown.
    [[nodiscard]] std::string nameOf(const DishId& dish) const;
    /// Dishes of the plan in order of the menu.
    [[nodiscard]] const std::vector<DishId>& dishes() const { return dishes_; }

private:
    std::vector<DishId> dishes_;
    std::map<DishId, int> looks_;
    std::map<DishId, std::string> names_;
};

} // namespace suppertide::ui
