#include "core/science/dinner_foods.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/science/table_numbers.h"

namespace suppertide::tables {

std::string_view foods();

} // namespace suppertide::tables

namespace suppertide::science {

Result<std::vector<DinnerFood>> readDinnerFoods(std::string_view text)
{
    const auto table = TableText::read("foods", text,
                                       {"id", "name", "water", "protein", "fat", "carbohydrate",
                                        "fibre", "ash", "freezes_at", "source"});
    if (!table) {
        return table.error();
    }
    std::vector<DinnerFood> foods;
    for (const TableRow& row : table->rows()) {
        TableNumbers cells{row};
        DinnerFood food;
        food.id = row.text("id");
        food.name = row.text("name");
        food.composition = {cells.number("water") / 100.0, cells.number("protein") / 100.0,
                            cells.number("fat") / 100.0,   cells.number("carbohydrate") / 100.0,
                            cells.number("fibre") / 100.0, cells.number("ash") / 100.0};
        food.freezesAt = cells.optionalNumber("freezes_at").value_or(usualFreezingPoint);
        food.source = row.text("source");
        if (cells.fault()) {
            return *cells.fault();
        }
        foods.push_back(std::move(food));
    }
    return foods;
}

const std::vector<DinnerFood>& dinnerFoods()
{
    static const std::vector<DinnerFood> foods = readDinnerFoods(tables::foods()).value();
    return foods;
}

Result<DinnerFood> findDinnerFood(std::string_view id)
{
    const auto& foods = dinnerFoods();
    const auto found = std::ranges::find(foods, id, &DinnerFood::id);
    if (found == foods.end()) {
        return Failure{
            FailureKind::NotFound,
            fmt::format("What “{}” consists of is not known, so its time cannot be computed. "
                        "Choose a food that is like it, or enter the time yourself.",
                        id),
            {}};
    }
    return *found;
}

} // namespace suppertide::science
