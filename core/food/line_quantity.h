// The quantity at the front of an ingredient line: "2 x 400 g tins", "1 (14.5-ounce) can", "1 lb 2
// oz", "100 g / 3½ oz", "a good pinch of". Used by the reader of ingredient lines.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/amount.h"
#include "core/quantity/kitchen_text.h"

namespace suppertide {

struct LineQuantity
{
    std::optional<Amount> amount;
    std::optional<Amount> also;     // the same by a second measure
    std::vector<std::string> notes; // "about", "heaped", "a few sprigs": in the line's order
    std::string_view rest;          // what follows, without "of"
};

/// Reads as far as it understands; `rest` is the whole text if it begins with no quantity.
[[nodiscard]] LineQuantity quantityAt(std::string_view text, MeasureSystem system);

/// A whole text that is an amount and nothing else: "about 150 g each", "1 small", "2¼ teaspoons".
struct LoneAmount
{
    Amount amount;
    std::vector<std::string> notes;
    bool isEach = false;
};
[[nodiscard]] std::optional<LoneAmount> loneAmount(std::string_view text, MeasureSystem system);

} // namespace suppertide
