#include "ui/models/dish_looks.h"

#include <algorithm>
#include <charconv>
#include <sstream>

namespace suppertide::ui {

void DishLooks::see(const Occasion& occasion)
{
    int next = 0;
    for (const auto& [dish, look] : looks_) {
        next = std::max(next, look + 1);
    }
    for (const Course& course : occasion.courses) {
        for (const Dish& dish : course.dishes) {
            if (looks_.try_emplace(dish.id, next).second) {
                ++next;
            }
        }
    }
}

std::optional<int> DishLooks::find(const DishId& dish) const
{
    const auto there = looks_.find(dish);
    return there == looks_.end() ? std::nullopt : std::optional(there->second);
}

std::optional<int> DishLooks::findRecipe(const Occasion& occasion, const RecipeId& recipe) const
{
    for (const Course& course : occasion.courses) {
        for (const Dish& dish : course.dishes) {
            if (dish.recipe == recipe) {
                return find(dish.id);
            }
        }
    }
    return std::nullopt;
}

std::string DishLooks::text() const
{
    std::string text;
    for (const auto& [dish, look] : looks_) {
        text += (text.empty() ? "" : ";") + dish.text() + "=" + std::to_string(look);
    }
    return text;
}

DishLooks DishLooks::fromText(const std::string& text)
{
    DishLooks looks;
    std::istringstream parts(text);
    for (std::string part; std::getline(parts, part, ';');) {
        const auto equals = part.rfind('=');
        if (equals == std::string::npos) {
            continue;
        }
        int look = -1;
        std::from_chars(part.data() + equals + 1, part.data() + part.size(), look);
        if (look >= 0) {
            looks.looks_.emplace(DishId{part.substr(0, equals)}, look);
        }
    }
    return looks;
}

} // namespace suppertide::ui
