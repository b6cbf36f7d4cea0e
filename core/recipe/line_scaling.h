// LineScaling: how the amount of an ingredient follows the number of portions. Most follow in
// proportion; a bay leaf does not; what fills a tin comes by the tinful; salt, chilli and what is
// boiled away grow more slowly than the pot.
#pragma once

#include <optional>
#include <variant>

#include "core/quantity/amount.h"
#include "core/quantity/mould.h"

namespace suppertide {

struct InProportion
{
    friend bool operator==(const InProportion&, const InProportion&) = default;
};

/// The same for any number.
struct SameForAny
{
    friend bool operator==(const SameForAny&, const SameForAny&) = default;
};

/// The same for each batch (a blender-full, a pan-full), which serves at most `portions`; absent:
/// as the step that takes the line is divided.
struct EachBatch
{
    std::optional<Portions> portions;

    friend bool operator==(const EachBatch&, const EachBatch&) = default;
};

/// As the number of portions to a power within 0…1: 1/2 is the square root, 3/4 suits seasoning
/// (common practice).
struct ByPower
{
    Rational exponent{1, 2};

    friend bool operator==(const ByPower&, const ByPower&) = default;
};

/// What the mould holds: the recipe's own portions come out of one. In another mould as much more
/// as its bottom is larger.
struct ByMould
{
    Mould mould = RoundMould{centimetres(24)};

    friend bool operator==(const ByMould&, const ByMould&) = default;
};

using LineScaling = std::variant<InProportion, SameForAny, EachBatch, ByPower, ByMould>;

/// What is made of a recipe at once. All numbers are above 0.
struct Made
{
    Portions recipe;                           // that its figures stand for
    Portions all;                              // that are made of it together
    Portions batch;                            // of `all`, those asked about
    std::optional<Mould> mould = std::nullopt; // instead of the one a line names
};

/// How much of `amount` goes into the batch. Shares of what does not follow the portions add up to
/// the whole. Powers are rounded to 1/10000 of the recipe's amount, all else is exact; so that
/// scaling in two steps equals scaling in one, they are taken of the whole number of portions.
[[nodiscard]] Amount amountIn(const Made& made, const Amount& amount, const LineScaling& scaling);

/// Whether the figures of a rule can be: an exponent within 0…1, portions above 0, a possible
/// mould.
[[nodiscard]] bool isPossible(const LineScaling& scaling);

} // namespace suppertide
