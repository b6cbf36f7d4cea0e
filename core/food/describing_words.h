// Words that stand before an ingredient's name and say how it is, not what: size, ripeness,
// temperature, how it is cut. Taking them away never makes one food of another: "rice" in "rice
// flour" is no such word.
#pragma once

#include <string_view>

namespace suppertide {

/// "large", "ripe", "chopped"; lower case.
[[nodiscard]] bool isDescribingWord(std::string_view word);
/// "finely", "freshly", "very": stand before a describing word.
[[nodiscard]] bool isDegreeWord(std::string_view word);

} // namespace suppertide
