// Other tins: what each tin or mould of a kitchen would do to a recipe that goes by one, without a
// dish of any evening: how much goes in where it is filled as deep, how long it takes with the same
// amounts. For reading; a dish is put into one by core/occasion's OtherMould.
#pragma once

#include <string>
#include <vector>

#include "core/kitchen/kitchen.h"
#include "core/recipe/recipe.h"

namespace suppertide {

/// A line that goes by the tin, as one filled as deep takes it.
struct TinAmount
{
    std::string ingredient;
    Amount amount;

    friend bool operator==(const TinAmount&, const TinAmount&) = default;
};

/// A step in the oven, as it takes with the recipe's own amounts.
struct TinTime
{
    std::string step; // its text
    DurationRange duration;

    friend bool operator==(const TinTime&, const TinTime&) = default;
};

struct OtherTin
{
    KitchenItemId vessel;
    std::string name; // the vessel's
    Mould mould = RoundMould{centimetres(24)};
    Portions serves; // one of them, filled as deep
    std::vector<TinAmount> asDeep;
    std::vector<TinTime> sameAmounts;

    friend bool operator==(const OtherTin&, const OtherTin&) = default;
};

/// In order of the kitchen, of the recipe's first variant. Left out are vessels without a diameter,
/// those whose kind does not say that they are a tin, mould, ring or dish, what is as large as the
/// recipe's own, and what is more than four times as large or small: the same amounts would then be
/// too deep or too shallow to say how long they take. Empty too where no line goes by a tin, or the
/// recipe has faults.
[[nodiscard]] std::vector<OtherTin> otherTins(const Recipe& recipe, const Kitchen& kitchen);

} // namespace suppertide
