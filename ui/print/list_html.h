// Lists of the evening as simple HTML, the same on screen and on paper: what to buy, what to set
// out, what to measure out.
#pragma once

#include <QString>

#include "core/shopping/equipment.h"
#include "core/shopping/shopping_list.h"

namespace suppertide::ui {

[[nodiscard]] QString shoppingHtml(const shopping::ShoppingList& list);
/// One line in full: for what it is, what is at home, what will be left.
[[nodiscard]] QString lineHtml(const shopping::ShoppingLine& line,
                               const shopping::ShoppingList& list);
[[nodiscard]] QString equipmentHtml(const shopping::EquipmentList& list,
                                    const PlanCalendar& calendar);
[[nodiscard]] QString miseEnPlaceHtml(const std::vector<shopping::MiseEnPlace>& places,
                                      const PlanCalendar& calendar,
                                      const std::optional<MeasureSystem>& measures);

} // namespace suppertide::ui
