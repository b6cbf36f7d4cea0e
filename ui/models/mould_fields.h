// Fields of a dish for another tin or mould than its recipe names.
#pragma once

#include "core/occasion/occasion.h"
#include "ui/models/field_list.h"

namespace suppertide::ui::menu {

/// Nothing is added where neither the recipe nor the dish names one.
void addMould(FieldList<Dish>& form, const Recipe& recipe, const Dish& dish);

/// The two ways to fill another tin, in words.
[[nodiscard]] QString filledAsDeep();
[[nodiscard]] QString filledWithTheSame();

} // namespace suppertide::ui::menu
