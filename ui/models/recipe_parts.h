// Finding one's way in a recipe by the paths of its page's rows.
#pragma once

#include <vector>

#include "core/recipe/recipe.h"
#include "ui/models/row_path.h"

namespace suppertide::ui::recipe {

/// Where a row stands: in the common part, a method's or a variant's. Null where the path names
/// none, or one that is not there.
struct Place
{
    RecipePart* part = nullptr;
    Variant* variant = nullptr;
    MethodChoice* choice = nullptr;
    Method* method = nullptr;
};

[[nodiscard]] Place placeOf(Recipe& recipe, const RowPath& path);
/// The path of the place itself: "variant:v", "choice:c/method:m", or empty for the common part.
[[nodiscard]] RowPath pathOfPlace(const RowPath& path);
/// The place's part together with the common one: what its things may be tied to.
[[nodiscard]] RecipePart surroundingsOf(const Recipe& recipe, const Place& place);
/// The keep option that "wait:x/keep:0" stands for; null if it is not there.
[[nodiscard]] KeepOption* keepOf(RecipePart& part, const RowPath& path);
/// The treatment that "food:x/treatment:0" stands for; null if it is not there.
[[nodiscard]] FoodTreatment* treatmentOf(RecipePart& part, const RowPath& path);
/// Common part, methods' and variants' parts.
[[nodiscard]] std::vector<const RecipePart*> partsOf(const Recipe& recipe);

} // namespace suppertide::ui::recipe
