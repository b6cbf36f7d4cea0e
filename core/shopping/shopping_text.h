// The shopping list as text: for people on a screen or in a message, and as CSV (RFC 4180) for a
// table.
#pragma once

#include <string>

#include "core/shopping/shopping_list.h"

namespace suppertide::shopping {

/// What the cook must do about labels; stands under every list.
[[nodiscard]] std::string labelCaution();

/// "1.2 kg", "2 × bag of 500 g"; "some" where recipes do not say how much.
/// Packs are called what the shop calls them; all else is said in `measures`, rounded up.
[[nodiscard]] std::string buyText(const ShoppingLine& line,
                                  const std::optional<MeasureSystem>& measures = {});
/// "700 g for Chilled beetroot soup": one need; with its own word where the line is called
/// otherwise, "1.6 kg (waxy potato) for Gratin".
[[nodiscard]] std::string needText(const ShoppingNeed& need, const ShoppingLine& line,
                                   const std::optional<MeasureSystem>& measures = {});
/// "Thursday 17 June, Dry goods, roots and dairy".
[[nodiscard]] std::string tripText(const TripOfList& trip);

[[nodiscard]] std::string textOf(const ShoppingList& list);

/// A header line and one line for each thing to buy, amounts as they are stored; lines end in CR
/// LF, fields with commas, quotes or line ends stand in quotes. Source: RFC 4180, section 2.
[[nodiscard]] std::string csvOf(const ShoppingList& list);

} // namespace suppertide::shopping
