// Reading what a cook types into a field: lengths of time, fractions, amounts, litres. Each has
// the text by which it is shown again, exactly. What cannot be read is a failure whose sentence
// says what can.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/plan_time.h"
#include "core/base/result.h"
#include "core/quantity/amount.h"
#include "core/quantity/quantity.h"
#include "core/recipe/line_scaling.h"

namespace suppertide::ui {

/// "45", "45 min", "1 h 30", "2 days", "1 day 4 h"; whole minutes, not negative.
[[nodiscard]] Result<Minutes> readDuration(std::string_view text);
/// "8", "2.5", "2,5", "2½", "2 1/2", "1/3"; not negative.
[[nodiscard]] Result<Rational> readFraction(std::string_view text);
/// A fraction or a range and a unit ("1.2 kg", "2½ tbsp", "2–3 cloves", "3"), "a pinch", "to
/// taste".
[[nodiscard]] Result<Amount> readAmount(std::string_view text);
/// "in proportion", "the same", "per batch of 6", "square root", "power 3/4", "mould round 24 cm".
[[nodiscard]] Result<LineScaling> readLineScaling(std::string_view text);
/// "round 24 cm", "square 20 cm", "20 × 30 cm".
[[nodiscard]] Result<Mould> readMould(std::string_view text);
/// "4", "2.5 litres", "2.5 l".
[[nodiscard]] Result<Litres> readLitres(std::string_view text);

/// Shown in a field, and read back to the same value.
[[nodiscard]] std::string fieldText(Minutes duration);
[[nodiscard]] std::string fieldText(const Rational& fraction);
[[nodiscard]] std::string fieldText(const Amount& amount);
[[nodiscard]] std::string fieldText(const LineScaling& scaling);
[[nodiscard]] std::string fieldText(Litres room);

} // namespace suppertide::ui
