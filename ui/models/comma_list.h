// CommaList: several values typed in one line with commas between ("45 min at 180 °C, 75 min at
// 150 °C"), and the pieces that such values are made of.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/plan_time.h"
#include "core/base/result.h"
#include "core/quantity/quantity.h"

namespace suppertide::ui {

[[nodiscard]] std::string_view trimmed(std::string_view text);

/// "180", "180 °C", "350 °F"; nothing if it is no temperature.
[[nodiscard]] std::optional<Celsius> readDegrees(std::string_view text);
/// In whole degrees, as it is read again.
[[nodiscard]] std::string typedDegrees(Celsius temperature, bool isFahrenheit);

/// "45 min at 180 °C" with the word " at " between; nothing if it is not so.
[[nodiscard]] std::optional<std::pair<Minutes, Celsius>> readTimeAndDegrees(std::string_view text,
                                                                            std::string_view word);

/// Each piece between commas by `read`, which gives a Result; none for an empty text. The first
/// failure ends it.
template <typename Item, typename Read>
[[nodiscard]] Result<std::vector<Item>> readCommaList(std::string_view text, Read read)
{
    std::vector<Item> items;
    while (!trimmed(text).empty()) {
        const auto comma = text.find(',');
        const Result<Item> item = read(trimmed(text.substr(0, comma)));
        if (!item) {
            return item.error();
        }
        items.push_back(*item);
        text = comma == std::string_view::npos ? std::string_view{} : text.substr(comma + 1);
    }
    return items;
}

} // namespace suppertide::ui
