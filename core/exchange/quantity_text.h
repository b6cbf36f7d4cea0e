// Amounts, portions and lengths of time as the text of files has them: "2 1/2 tbsp", "1/2",
// "1 h 30 min". Exact both ways; what is longer, finer or larger than a kitchen needs is refused,
// so that later arithmetic stays within 64 bits.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/plan_time.h"
#include "core/quantity/amount.h"

namespace suppertide {

/// No amount or number of portions is larger, and none is finer than `mostDenominator`-ths.
inline constexpr std::int64_t mostAmount = 1'000'000;
inline constexpr std::int64_t mostDenominator = 1'000;
/// Two years; recipes may take seven days.
inline constexpr std::int64_t mostMinutes = 1'000'000;

/// "3", "1/2", "2 1/2", "0.75"; absent if `text` is none of these.
[[nodiscard]] std::optional<Rational> parseFraction(std::string_view text);
[[nodiscard]] std::string fractionText(const Rational& value);
[[nodiscard]] bool isInRange(const Rational& value);

/// "400 g", "1/2 piece", "2 1/2-3 US cup", "pinch" (one), "to taste" (0).
[[nodiscard]] std::optional<Amount> parseAmount(std::string_view text);
[[nodiscard]] std::string amountText(const Amount& amount);

/// "90 min", "1 h 30 min", "3 days", "1 day 2 h".
[[nodiscard]] std::optional<Minutes> parseMinutes(std::string_view text);

} // namespace suppertide
