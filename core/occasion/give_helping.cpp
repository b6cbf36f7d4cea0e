#include "core/occasion/give_helping.h"

#include <algorithm>
#include <iterator>

#include "core/base/contracts.h"

namespace suppertide {

namespace {

bool isAmong(const std::vector<DishId>& dishes, const DishId& dish)
{
    return std::ranges::find(dishes, dish) != dishes.end();
}

/// Everybody's helping of the dishes becomes theirs by name. What is left over stays.
void nameEaters(Course& course, const std::vector<DishId>& dishes,
                const std::vector<Helping>& helpings)
{
    for (Dish& dish : course.dishes) {
        if (!isAmong(dishes, dish.id)) {
            continue;
        }
        for (MixEntry& entry : dish.mix) {
            entry.guests.clear();
            for (const Helping& helping : helpings) {
                if (helping.dish == dish.id && helping.variant == entry.variant) {
                    entry.guests.push_back(helping.guest);
                }
            }
        }
    }
}

void takeAway(Course& course, const std::vector<DishId>& dishes, const Guest& guest)
{
    for (Dish& dish : course.dishes) {
        if (!isAmong(dishes, dish.id)) {
            continue;
        }
        for (MixEntry& entry : dish.mix) {
            if (std::erase(entry.guests, guest.id) > 0) {
                entry.portions = std::max(Portions{0}, entry.portions - guest.portion);
            }
        }
        std::erase_if(dish.mix,
                      [](const MixEntry& entry) { return entry.portions <= Portions{0}; });
    }
}

void give(Course& course, const Guest& guest, const DishId& dishId, const VariantId& variant)
{
    const auto dish = std::ranges::find(course.dishes, dishId, &Dish::id);
    expects(dish != course.dishes.end(), "a dish of the course");
    auto entry = std::ranges::find(dish->mix, variant, &MixEntry::variant);
    if (entry == dish->mix.end()) {
        dish->mix.push_back({variant, Portions{0}, {}});
        entry = std::prev(dish->mix.end());
    }
    entry->portions = entry->portions + guest.portion;
    entry->guests.push_back(guest.id);
}

} // namespace

Occasion withGiven(const Occasion& occasion, const CourseId& courseId,
                   const std::vector<DishId>& dishes, const GuestId& guestId,
                   const GivenHelping& helping, const std::map<RecipeId, const Recipe*>& recipes,
                   const IngredientBook& ingredients)
{
    Occasion result = occasion;
    const auto course = std::ranges::find(result.courses, courseId, &Course::id);
    const auto guest = std::ranges::find(occasion.guests, guestId, &Guest::id);
    expects(course != result.courses.end(), "a course of the occasion");
    expects(guest != occasion.guests.end(), "a guest of the occasion");
    nameEaters(*course, dishes, helpingsOf(occasion, *course, recipes, ingredients));
    takeAway(*course, dishes, *guest);
    if (helping) {
        give(*course, *guest, helping->first, helping->second);
    }
    return result;
}

} // namespace suppertide
