// BandChanges: how often an oven is set otherwise at least, or switched on again with something in,
// whenever and in whatever order the stays come:
//
//     pavlova  110–125 °C, 90 min    gratin  140–160 °C, 90 min    roots  210–230 °C, 45 min
//     one oven: twice
#pragma once

#include <cstdint>
#include <vector>

#include "core/problem/problem.h"

namespace suppertide {

/// What a stay accepts, and how long it lasts at least.
struct HeldBand
{
    int low = 0; // °C
    int high = 0;
    std::int64_t minutes = 0;
};

/// Of stays each of which is in one of the ovens. Two that accept no temperature in common are
/// never in at once. One that is long enough has the oven set to what it accepts for a while, or
/// has it switched on again, or set three times, while it is in: else the oven only ever heats or
/// cools, and leaves the band.
[[nodiscard]] std::int64_t changesForBands(const std::vector<Oven>& ovens,
                                           std::vector<HeldBand> bands);

} // namespace suppertide
