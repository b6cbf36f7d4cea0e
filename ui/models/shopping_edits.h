// What the page "Shopping" asks of a state: its list, and what a tick or a wish to note stock or a
// price does to the library.
#pragma once

#include <optional>

#include "core/shopping/shopping_list.h"
#include "ui/models/edit.h"

namespace suppertide::ui {

/// Absent if no occasion with a kitchen is open. `plan` may be null. Amounts are said in
/// `measures`.
[[nodiscard]] std::optional<shopping::ShoppingInput>
shoppingInputOf(const LibraryState& library, const PlanPtr& plan,
                const std::optional<MeasureSystem>& measures = {});

/// The line ticked, or not any more, in the open occasion.
[[nodiscard]] Edit tickEdit(const LibraryState& library, const shopping::ShoppingLine& line,
                            bool isBought);

/// `select` is the row of the larder in which what is at home of the line's ingredient is written;
/// a new one if there is none yet.
[[nodiscard]] Edit stockEdit(const LibraryState& library, const shopping::ShoppingLine& line);
/// The same for a pack with its price.
[[nodiscard]] Edit packEdit(const LibraryState& library, const shopping::ShoppingLine& line);

} // namespace suppertide::ui
