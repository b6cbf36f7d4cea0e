// DishLooks: which number (hue, pattern and letter) each dish of an occasion has. A dish takes the
// next free one when it is first seen and keeps it, also when an earlier dish goes; one that comes
// back by undo has what it had. A value; the window keeps its text as a setting.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "core/occasion/occasion.h"

namespace suppertide::ui {

class DishLooks
{
public:
    /// Gives every dish that has none the next number, in order of courses.
    void see(const Occasion& occasion);
    [[nodiscard]] std::optional<int> find(const DishId& dish) const;
    /// The look of the first dish of that recipe.
    [[nodiscard]] std::optional<int> findRecipe(const Occasion& occasion,
                                                const RecipeId& recipe) const;

    /// "soup=0;roots=1" and back; what cannot be read is passed over.
    [[nodiscard]] std::string text() const;
    [[nodiscard]] static DishLooks fromText(const std::string& text);

    friend bool operator==(const DishLooks&, const DishLooks&) = default;

private:
    std::map<DishId, int> looks_;
};

} // namespace suppertide::ui
