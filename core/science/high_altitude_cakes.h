// High-altitude cakes: what to change in a cake that was written for the lowlands
// (resources/tables/altitude_cakes.tsv).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace suppertide::science {

/// Least and most.
struct CakeChange
{
    double least = 0.0;
    double most = 0.0;

    friend bool operator==(const CakeChange&, const CakeChange&) = default;
};

/// In the units of the source.
struct HighAltitudeCake
{
    double feet = 0.0;
    CakeChange lessPowder;                // teaspoons of each teaspoon of baking powder
    std::optional<CakeChange> lessSugar;  // tablespoons of each cup
    CakeChange moreLiquid;                // tablespoons for each cup
    std::optional<CakeChange> hotterOven; // °F
    std::string source;

    friend bool operator==(const HighAltitudeCake&, const HighAltitudeCake&) = default;
};

/// In rising order.
[[nodiscard]] const std::vector<HighAltitudeCake>& highAltitudeCakes();
/// Reads a table like altitude_cakes.tsv. A fault names its line.
[[nodiscard]] Result<std::vector<HighAltitudeCake>> readHighAltitudeCakes(std::string_view text);

/// The row for an altitude (−400…5000 m): the last that is not above it by more than 500 ft;
/// nothing in the lowlands.
[[nodiscard]] Result<std::optional<HighAltitudeCake>> cakeChangesAt(double metres);

} // namespace suppertide::science
