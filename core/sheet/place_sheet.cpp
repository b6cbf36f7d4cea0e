#include "core/sheet/place_sheet.h"

#include <algorithm>

#include "core/menus/place_table.h"
#include "core/wording/diet_words.h"
#include "core/wording/phrases.h"

namespace suppertide {

namespace {

constexpr const char* caution =
    "What is in a dish is taken from its recipes, and recipes can be wrong. Ask each guest, read "
    "the labels, and keep what must be free of something apart while you cook and serve.";

std::string needsAndRisksOf(const Guest& guest)
{
    std::vector<std::string> needs = needsOf(guest);
    for (const RiskGroup risk : guest.risks) {
        needs.emplace_back(nameOf(risk));
    }
    return listed(needs);
}

std::string dishText(const PlanInput& input, const DishId& id, const VariantId& variant)
{
    for (const Course& course : input.occasion->courses) {
        const auto dish = std::ranges::find(course.dishes, id, &Dish::id);
        const auto recipe =
            dish == course.dishes.end() ? input.recipes.end() : input.recipes.find(dish->recipe);
        if (recipe == input.recipes.end()) {
            continue;
        }
        const auto& variants = recipe->second->variants;
        const auto found = std::ranges::find(variants, variant, &Variant::id);
        return variants.size() == 1 || found == variants.end()
                   ? recipe->second->name
                   : recipe->second->name + ", " + found->name;
    }
    return id.text();
}

std::string markOf(const Suitability& suitability)
{
    std::vector<std::string> against;
    for (const Substance each : suitability.unsuitable) {
        against.emplace_back(nameOf(each));
    }
    for (const RiskFact each : suitability.risks) {
        against.emplace_back(nameOf(each));
    }
    std::string mark = against.empty() ? std::string() : "not for them: " + listed(against);
    if (!suitability.unknown.empty()) {
        mark += (mark.empty() ? "" : "; ") + ("check the label: " + listed(suitability.unknown));
    }
    return mark;
}

PlaceSheetCell cellOf(const PlanInput& input, const menus::PlaceColumn& column,
                      const menus::PlaceCell& cell)
{
    if (!cell) {
        return {{}, column.isMain ? "nothing that suits" : ""};
    }
    return {dishText(input, cell->dish, cell->variant), markOf(cell->suitability)};
}

} // namespace

PlaceSheet placeSheet(const PlanInput& input)
{
    const Occasion& occasion = *input.occasion;
    const menus::PlaceTable table = menus::placesOf(input);
    PlaceSheet sheet{occasion.name, {}, {}, {}, caution};
    if (!occasion.courses.empty()) {
        sheet.day = dayText(occasion.courses.front().serving.date);
    }
    for (const menus::PlaceColumn& column : table.columns) {
        sheet.columns.push_back(column.name);
    }
    for (std::size_t row = 0; row < table.guests.size(); ++row) {
        const Guest& guest = occasion.guests[row];
        PlaceSheetRow& next = sheet.rows.emplace_back();
        next.guest = guest.name.empty() ? guest.id.text() : guest.name;
        next.needs = needsAndRisksOf(guest);
        for (std::size_t column = 0; column < table.columns.size(); ++column) {
            next.cells.push_back(cellOf(input, table.columns[column], table.cells[row][column]));
        }
    }
    return sheet;
}

std::string toText(const PlaceSheet& sheet)
{
    std::string text = sheet.title + "\n" + sheet.day + "\n";
    for (const PlaceSheetRow& row : sheet.rows) {
        text += "\n" + row.guest + (row.needs.empty() ? "" : " (" + row.needs + ")") + "\n";
        for (std::size_t column = 0; column < row.cells.size(); ++column) {
            const PlaceSheetCell& cell = row.cells[column];
            text += "  " + sheet.columns[column] + ": " +
                    (cell.dish.empty() ? std::string("goes without") : cell.dish) +
                    (cell.mark.empty() ? "" : " (" + cell.mark + ")") + "\n";
        }
    }
    return text + "\n" + sheet.caution + "\n";
}

} // namespace suppertide
