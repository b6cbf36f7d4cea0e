// OvenWarming as a cook types it: "7 min to 120 °C, 14 min to 200 °C".
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/kitchen/kitchen.h"

namespace suppertide::ui {

/// At most two, the second later and hotter, none that core/plan cannot compute with; empty: none.
/// The room is taken to be at 20 °C.
[[nodiscard]] Result<std::vector<OvenWarming>> readWarming(std::string_view text);

/// As it is read again.
[[nodiscard]] std::string warmingText(const std::vector<OvenWarming>& warming,
                                      bool isFahrenheit = false);

} // namespace suppertide::ui
