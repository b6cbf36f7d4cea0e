// Gas marks: the settings of British gas ovens, as temperatures and back.
#pragma once

#include <optional>
#include <string>

#include "core/quantity/quantity.h"

namespace suppertide {

/// What the dials of electric ovens show for a mark ¼, ½, 1…9, in °C: custom, as in several charts
/// (mark 4 is 180); by definition mark n ≥ 1 is 250 + 25 n °F. Absent for other marks.
[[nodiscard]] std::optional<Celsius> dialOfGasMark(const Rational& mark);
/// The mark whose dial settings are nearest, the lower of two; absent below 95 and above 260 °C.
[[nodiscard]] std::optional<Rational> gasMarkNear(Celsius temperature);
/// "gas mark 4", "gas mark ½".
[[nodiscard]] std::string gasMarkText(const Rational& mark);

} // namespace suppertide
