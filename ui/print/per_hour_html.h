// The per-hour plan as one HTML page, in the order and words of the paper, for screen readers: the
// PDF has no structure that they could follow. No style, no script, nothing from elsewhere.
#pragma once

#include <string>

#include "core/sheet/per_hour_plan.h"

namespace suppertide::ui {

[[nodiscard]] std::string perHourHtml(const PerHourPlan& plan);

} // namespace suppertide::ui
