// A food's history as what its chart draws: the curves of its middle and of its surface, and where
// it is when.
#pragma once

#include "core/safety/food_history.h"
#include "core/wording/wording.h"
#include "ui/models/temperature_view.h"

namespace suppertide::ui {

/// "fridge", "oven 180 °C".
[[nodiscard]] QString placeOf(const safety::HistoryPiece& piece, const ReadingStyle& style);
/// In one row. Stays that follow each other at one place share a bar.
[[nodiscard]] std::vector<TemperatureBar> placeBars(const safety::FoodHistory& history,
                                                    const ReadingStyle& style);
/// Middle and surface; a stay whose temperature nobody has computed leaves a gap.
[[nodiscard]] std::vector<TemperatureCurve> curvesOf(const safety::FoodHistory& history);
/// The warmest point, and when first; absent for a curve without points.
[[nodiscard]] std::optional<CurvePoint> warmestOf(const TemperatureCurve& curve);

} // namespace suppertide::ui
