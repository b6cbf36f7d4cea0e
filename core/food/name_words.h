// The words of a name by which names are compared in part: "mushroom" is among those of "chestnut
// mushrooms", "nut" is not among those of "nutmeg".
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace suppertide {

/// In order; lower case, no accents, each in the singular.
[[nodiscard]] std::vector<std::string> nameWords(std::string_view text);

/// Whether `part` stands in `whole`, one word after the other; nothing stands in anything.
[[nodiscard]] bool hasWords(const std::vector<std::string>& whole,
                            const std::vector<std::string>& part);

} // namespace suppertide
