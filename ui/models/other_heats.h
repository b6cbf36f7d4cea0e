// OtherHeats: the other oven temperatures of a step as a cook types them: "45 min at 180 °C, 75 min
// at 150 °C".
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/recipe/step.h"

namespace suppertide::ui {

/// Each as far around its temperature as `step` is around its own, and as unsure of its time. What
/// is there already at that temperature and time stays as it is. Empty: none.
[[nodiscard]] Result<std::vector<OtherHeat>> readOtherHeats(std::string_view text,
                                                            const Step& step);

/// As it is read again.
[[nodiscard]] std::string otherHeatsText(const Step& step, bool isFahrenheit = false);

} // namespace suppertide::ui
