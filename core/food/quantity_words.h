// Numbers and units at the front of a text, as people write them: "2½", "1-1/2", "half a dozen",
// "2–3", "Tbsp.", "fl. oz.". Used by the reader of ingredient lines.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "core/quantity/amount.h"
#include "core/quantity/kitchen_text.h"

namespace suppertide {

struct NumberRead
{
    Rational value;
    std::optional<Rational> upTo;
    std::size_t length = 0; // of the text
    bool isArticle = false; // "a": may be no number at all
};

/// "3", "0,75", "1/2", "2 1/2", "1-1/2", "2½", "2-3", "4 to 5", "1 or 2", "between 2 and 3", "a",
/// "twelve", "half a dozen". Absent if the text does not begin with a number.
[[nodiscard]] std::optional<NumberRead> numberAt(std::string_view text);

struct UnitRead
{
    Unit unit = Unit::Gram;
    std::size_t length = 0;
};

/// A unit that ends where a word ends; "cup", "pint" and spoons are those of the system. T and t
/// are told apart.
[[nodiscard]] std::optional<UnitRead> unitAt(std::string_view text, MeasureSystem system);

/// Without blanks at its front.
[[nodiscard]] std::string_view trimmedFront(std::string_view text);
[[nodiscard]] std::string_view trimmed(std::string_view text);
/// The first word, up to a blank, comma, bracket or colon; empty if there is none.
[[nodiscard]] std::string_view wordAt(std::string_view text);
/// The text after `word` if it begins with that word, whatever its case, and blanks after it.
[[nodiscard]] std::optional<std::string_view> after(std::string_view text, std::string_view word);
[[nodiscard]] std::string lowerWord(std::string_view word);

} // namespace suppertide
