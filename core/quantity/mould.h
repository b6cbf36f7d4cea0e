// Mould: the bottom of a tin or mould, by which the amounts of a cake or tart go. How long it then
// bakes is core/science/mould_scaling.
#pragma once

#include <string>
#include <variant>

#include "core/quantity/quantity.h"

namespace suppertide {

struct RoundMould
{
    Length across;

    friend bool operator==(const RoundMould&, const RoundMould&) = default;
};

/// A square one has both sides alike.
struct RectangularMould
{
    Length length;
    Length width;

    friend bool operator==(const RectangularMould&, const RectangularMould&) = default;
};

using Mould = std::variant<RoundMould, RectangularMould>;

/// Both sides within 1…150 cm.
[[nodiscard]] bool isPossible(const Mould& mould);

/// Amounts for `to` against those for `from` at the same depth: the ratio of areas, exact but for
/// π, taken as 355/113 (off by 1 in ten million). Both must be possible.
[[nodiscard]] Rational areaRatio(const Mould& to, const Mould& from);

/// "round 24 cm", "20 × 30 cm", "square 20 cm".
[[nodiscard]] std::string nameOf(const Mould& mould);

} // namespace suppertide
