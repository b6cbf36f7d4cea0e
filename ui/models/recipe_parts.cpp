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

KeepOption* keepOf(RecipePart& part, const RowPath& path)
{
    Wait* wait = findIn(part.waits, WaitId{path.idOf("wait")});
    const std::string number = path.idOf("keep");
    std::size_t index = 0;
    const auto [end, error] = std::from_chars(number.data(), number.data() + number.size(), index);
    if (wait == nullptr || number.empty() || error != std::errc{} || index >= wait->keep.size()) {
        return nullptr;
    }
    return &wait->keep[index];
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
