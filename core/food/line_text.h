// The text of an ingredient line, looked at as words: list marks, headings, names that begin with a
// describing word, words for parts. Used by the reader of ingredient lines.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "core/food/ingredient_part.h"

namespace suppertide {

/// "zest", "yolks", "juiced".
[[nodiscard]] std::optional<IngredientPart> partWord(std::string_view word);
/// Without blanks, list marks, tick boxes and numbers of a list at its front.
[[nodiscard]] std::string_view withoutBullet(std::string_view line);
/// Where `words` stand as whole words, whatever their case; npos if they do not.
[[nodiscard]] std::size_t findWords(std::string_view text, std::string_view words);
/// "For the sauce:", "FILLING".
[[nodiscard]] bool isHeading(std::string_view line);
/// Whether shops sell it under this very name, though it begins with a describing word: "whole
/// milk", "minced beef"; of what is in a tin or jar, how it was cut is its name.
[[nodiscard]] bool isNameItself(std::string_view phrase, bool isTinned);
/// Blanks of other widths become plain ones.
[[nodiscard]] std::string withPlainBlanks(std::string_view line);

} // namespace suppertide
