// A cook's hours of a day as one line of text: "08:00–13:00, at home 13:00–16:00, 16:00–23:00".
// Read with a hyphen or a dash.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/kitchen/kitchen.h"

namespace suppertide::ui {

[[nodiscard]] std::string hoursText(const std::vector<Hours>& hours);
/// Empty text: not there all day.
[[nodiscard]] Result<std::vector<Hours>> readHours(std::string_view text);

} // namespace suppertide::ui
