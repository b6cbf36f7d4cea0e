// The forms of the page "Menu and guests": one FieldList for each kind of row.
#pragma once

#include "ui/models/field_list.h"

namespace suppertide::ui::menu {

[[nodiscard]] FieldList<Occasion> occasionForm(const LibraryState& library,
                                               const Occasion& occasion);
/// With a choice of recipes, by which a dish is added.
[[nodiscard]] FieldList<Course> courseForm(const LibraryState& library, const Occasion& occasion,
                                           const Course& course);
[[nodiscard]] FieldList<Alternative> alternativeForm(const Alternative& alternative);
/// Portions of each variant, its alternative, its cook and its methods.
[[nodiscard]] FieldList<Dish> dishForm(const LibraryState& library, const Course& course,
                                       const Dish& dish);
[[nodiscard]] FieldList<MixEntry> mixForm(const Occasion& occasion, const MixEntry& mix);
[[nodiscard]] FieldList<Guest> guestForm(const Guest& guest);
[[nodiscard]] FieldList<HouseJob> jobForm(const LibraryState& library, const HouseJob& job);
[[nodiscard]] FieldList<ShoppingTrip> tripForm(const LibraryState& library,
                                               const ShoppingTrip& trip);

/// "Braised shoulder"; the recipe's id if the recipe is not there.
[[nodiscard]] std::string dishName(const LibraryState& library, const Dish& dish);
[[nodiscard]] std::string variantName(const LibraryState& library, const Dish& dish,
                                      const VariantId& variant);

} // namespace suppertide::ui::menu
