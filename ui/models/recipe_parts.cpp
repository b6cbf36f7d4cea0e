#include "ui/models/recipe_parts.h"

#include <charconv>

#include "ui/models/edit.h"

namespace suppertide::ui::recipe {

Place placeOf(Recipe& recipe, const RowPath& path)
{
    Place place;
    if (path.has("variant")) {
        place.variant = findIn(recipe.variants, VariantId{path.idOf("variant")});
        place.part = place.variant == nullptr ? nullptr : &place.variant->adds;
    } else if (path.has("choice")) {
        place.choice = findIn(recipe.methods, MethodChoiceId{path.idOf("choice")});
        if (place.choice != nullptr && path.has("method")) {
            place.method = findIn(place.choice->methods, MethodId{path.idOf("method")});
            place.part = place.method == nullptr ? nullptr : &place.method->part;
        }
    } else {
        place.part = &recipe.common;
    }
    return place;
}

RowPath pathOfPlace(const RowPath& path)
{
    RowPath result;
    for (const char* kind : {"variant", "choice", "method"}) {
        if (path.has(kind)) {
            result = result.with(kind, path.idOf(kind));
        }
    }
    return result;
}

RecipePart surroundingsOf(const Recipe& recipe, const Place& place)
{
    RecipePart around = recipe.common;
    const auto join = [](auto& list, const auto& others) {
        for (const auto& other : others) {
            if (findIn(list, other.id) == nullptr) {
                list.push_back(other);
            }
        }
    };
    if (place.part != nullptr && place.part != &recipe.common) {
        join(around.lines, place.part->lines);
        join(around.steps, place.part->steps);
    }
    // Steps outside may come after steps of any method.
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            join(around.steps, method.part.steps);
        }
    }
    return around;
}

namespace {

/// The one of that number, as rows of things without ids are named; null if it is not there.
template <typename Thing>
Thing* numbered(std::vector<Thing>& list, const std::string& number)
{
    std::size_t index = 0;
    const auto [end, error] = std::from_chars(number.data(), number.data() + number.size(), index);
    const bool isThere = !number.empty() && error == std::errc{} && index < list.size();
    return isThere ? &list[index] : nullptr;
}

} // namespace

KeepOption* keepOf(RecipePart& part, const RowPath& path)
{
    Wait* wait = findIn(part.waits, WaitId{path.idOf("wait")});
    return wait == nullptr ? nullptr : numbered(wait->keep, path.idOf("keep"));
}

FoodTreatment* treatmentOf(RecipePart& part, const RowPath& path)
{
    FollowedFood* food = findIn(part.foods, FollowedFoodId{path.idOf("food")});
    return food == nullptr ? nullptr : numbered(food->steps, path.idOf("treatment"));
}

std::vector<const RecipePart*> partsOf(const Recipe& recipe)
{
    std::vector<const RecipePart*> parts{&recipe.common};
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            parts.push_back(&method.part);
        }
    }
    for (const Variant& variant : recipe.variants) {
        parts.push_back(&variant.adds);
    }
    return parts;
}

} // namespace suppertide::ui::recipe
