#include "core/menus/place_table.h"

#include <algorithm>

#include "core/base/contracts.h"
#include "core/menus/course_offer.h"
#include "core/plan/making.h"

namespace suppertide::menus {

namespace {

const Dish* findDish(const Course& course, const DishId& id)
{
    const auto found = std::ranges::find(course.dishes, id, &Dish::id);
    return found == course.dishes.end() ? nullptr : &*found;
}

const Course& courseOf(const Occasion& occasion, const CourseId& id)
{
    const auto found = std::ranges::find(occasion.courses, id, &Course::id);
    expects(found != occasion.courses.end(), "a course of the occasion");
    return *found;
}

const Guest& guestOf(const Occasion& occasion, const GuestId& id)
{
    const auto found = std::ranges::find(occasion.guests, id, &Guest::id);
    expects(found != occasion.guests.end(), "a guest of the occasion");
    return *found;
}

Suitability suitability(const PlanInput& input, const RecipeTable& recipes, const Guest& guest,
                        const Dish& dish, const VariantId& variant)
{
    const auto recipe = recipes.find(dish.recipe);
    if (recipe == recipes.end()) {
        return {};
    }
    return suitabilityOf(guest, natureOf(*recipe->second, variant, recipes, input.ingredients),
                         input.occasion->preferences.rules);
}

void addColumns(const CourseOffer& offer, std::vector<PlaceColumn>& columns)
{
    PlaceColumn main{offer.course->id, offer.course->name, {}, true};
    std::vector<PlaceColumn> sides;
    for (std::size_t i = 0; i < offer.dishes.size(); ++i) {
        const OfferedDish& dish = offer.dishes[i];
        if (dish.alternative && offer.mainDish(*dish.alternative) == i) {
            main.dishes.push_back(dish.dish->id);
        } else {
            sides.push_back({offer.course->id, dish.recipe->name, {dish.dish->id}, false});
        }
    }
    if (!main.dishes.empty()) {
        columns.push_back(std::move(main));
    }
    columns.insert(columns.end(), sides.begin(), sides.end());
}

bool isOf(const PlaceColumn& column, const DishId& dish)
{
    return std::ranges::find(column.dishes, dish) != column.dishes.end();
}

} // namespace

PlaceTable placesOf(const PlanInput& input)
{
    const Occasion& occasion = *input.occasion;
    const RecipeTable recipes = recipeTable(input);
    PlaceTable table;
    for (const Course& course : occasion.courses) {
        addColumns(offerOf(input, course), table.columns);
    }
    for (const Guest& guest : occasion.guests) {
        table.guests.push_back(guest.id);
        table.cells.emplace_back(table.columns.size());
    }
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        const Course& course = courseOf(occasion, table.columns[c].course);
        for (const Helping& helping : helpingsOf(occasion, course, recipes, input.ingredients)) {
            const auto row = std::ranges::find(table.guests, helping.guest);
            if (row == table.guests.end() || !isOf(table.columns[c], helping.dish)) {
                continue;
            }
            const auto guest = static_cast<std::size_t>(row - table.guests.begin());
            table.cells[guest][c] =
                PlaceOption{helping.dish, helping.variant,
                            suitability(input, recipes, occasion.guests[guest],
                                        *findDish(course, helping.dish), helping.variant)};
        }
    }
    return table;
}

std::vector<PlaceOption> optionsFor(const PlanInput& input, const PlaceColumn& column,
                                    const GuestId& guest)
{
    const RecipeTable recipes = recipeTable(input);
    const Course& course = courseOf(*input.occasion, column.course);
    const Guest& who = guestOf(*input.occasion, guest);
    std::vector<PlaceOption> options;
    for (const DishId& id : column.dishes) {
        const Dish* dish = findDish(course, id);
        const auto recipe = dish == nullptr ? recipes.end() : recipes.find(dish->recipe);
        if (recipe == recipes.end()) {
            continue;
        }
        for (const Variant& variant : recipe->second->variants) {
            options.push_back(
                {id, variant.id, suitability(input, recipes, who, *dish, variant.id)});
        }
    }
    return options;
}

Occasion withHelping(const PlanInput& input, const PlaceColumn& column, const GuestId& guest,
                     const GivenHelping& helping)
{
    return withGiven(*input.occasion, column.course, column.dishes, guest, helping,
                     recipeTable(input), input.ingredients);
}

} // namespace suppertide::menus
