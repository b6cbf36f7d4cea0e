// Dinner foods: what some fifty foods of a dinner consist of (resources/tables/foods.tsv), for
// those who want to compute with a food by its name.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/science/food_properties.h"

namespace suppertide::science {

struct DinnerFood
{
    std::string id;   // "beef_lean"
    std::string name; // "lean beef"
    Composition composition;
    double freezesAt = usualFreezingPoint; // °C
    std::string source;
};

/// In the order of the table.
[[nodiscard]] const std::vector<DinnerFood>& dinnerFoods();

/// By its id; a failure with a sentence if it is not in the table.
[[nodiscard]] Result<DinnerFood> findDinnerFood(std::string_view id);

/// Reads a table like foods.tsv: grams in 100 g. A fault names its line.
[[nodiscard]] Result<std::vector<DinnerFood>> readDinnerFoods(std::string_view text);

} // namespace suppertide::science
