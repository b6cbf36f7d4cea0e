#include "core/menus/mix_table.h"

#include <algorithm>

#include "core/base/contracts.h"
#include "core/plan/making.h"

namespace suppertide::menus {

namespace {

class MixRows
{
public:
    explicit MixRows(const PlanInput& input) : input_(input), recipes_(recipeTable(input)) {}

    MixTable table() &&
    {
        table_.places = placesOf(input_);
        for (std::size_t column = 0; column < table_.places.columns.size(); ++column) {
            addColumn(column);
        }
        return std::move(table_);
    }

private:
    void addColumn(std::size_t column)
    {
        const PlaceColumn& of = table_.places.columns[column];
        const auto course = std::ranges::find(input_.occasion->courses, of.course, &Course::id);
        expects(course != input_.occasion->courses.end(), "a course of the occasion");
        for (const Dish& dish : course->dishes) {
            const auto recipe = recipes_.find(dish.recipe);
            const bool isOfIt = std::ranges::find(of.dishes, dish.id) != of.dishes.end();
            if (!isOfIt || recipe == recipes_.end()) {
                continue;
            }
            for (const Variant& variant : recipe->second->variants) {
                addVariant(column, dish, *recipe->second, variant.id);
            }
        }
        addNothing(column);
    }

    void addVariant(std::size_t column, const Dish& dish, const Recipe& recipe,
                    const VariantId& variant)
    {
        const VariantNature nature = natureOf(recipe, variant, recipes_, input_.ingredients);
        MixRow& row = table_.rows.emplace_back();
        row.column = column;
        row.helping = {dish.id, variant};
        for (const MixEntry& entry : dish.mix) {
            row.portions = entry.variant == variant ? row.portions + entry.portions : row.portions;
        }
        for (std::size_t guest = 0; guest < table_.places.guests.size(); ++guest) {
            const PlaceCell& place = table_.places.cells[guest][column];
            row.cells.push_back({place && place->dish == dish.id && place->variant == variant,
                                 suitabilityOf(input_.occasion->guests[guest], nature,
                                               input_.occasion->preferences.rules)});
        }
    }

    void addNothing(std::size_t column)
    {
        MixRow& row = table_.rows.emplace_back();
        row.column = column;
        for (std::size_t guest = 0; guest < table_.places.guests.size(); ++guest) {
            row.cells.push_back({!table_.places.cells[guest][column].has_value(), {}});
        }
    }

    const PlanInput& input_;
    RecipeTable recipes_;
    MixTable table_;
};

} // namespace

MixTable mixTableOf(const PlanInput& input)
{
    return MixRows(input).table();
}

MoveFault moveFault(const MixTable& table, std::size_t guest, std::size_t from, std::size_t to)
{
    if (!table.rows[from].cells[guest].isTheirs) {
        return MoveFault::NoPortion;
    }
    return table.rows[from].column == table.rows[to].column ? MoveFault::None
                                                            : MoveFault::OtherCourse;
}

} // namespace suppertide::menus
