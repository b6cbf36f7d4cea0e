#include "core/occasion/diet_doubts.h"

#include <algorithm>

namespace suppertide {

std::optional<std::pair<Diet, Diet>> contradictingDiets(const Guest& guest)
{
    const auto has = [&guest](Diet diet) {
        return std::ranges::find(guest.diets, diet) != guest.diets.end();
    };
    for (const Diet stricter : {Diet::Vegan, Diet::Vegetarian}) {
        if (has(stricter) && has(Diet::Pescatarian)) {
            return std::pair{stricter, Diet::Pescatarian};
        }
    }
    return std::nullopt;
}

} // namespace suppertide
