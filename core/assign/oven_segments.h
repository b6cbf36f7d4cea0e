// OvenSegments: the time of one oven cut at each minute at which a stay begins or ends. For each
// such minute the temperatures from which all that follows can still be kept; for each piece
// between two, the band that all stays in it accept. A step of oven_program.h; used by nothing
// else.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/assign/oven_pairs.h"

namespace suppertide {

/// Where the oven stands after some minutes of moving towards a setting (absent: off).
[[nodiscard]] std::int64_t ovenMoved(const Oven& oven, std::int64_t milliC,
                                     std::optional<int> setting, Minutes length);

struct OvenCut
{
    PlanTime at;
    std::int64_t least = 0; // thousandths of a °C, from here all later stays can be reached
    std::int64_t most = 0;
    std::vector<std::size_t> begins; // stays that begin here
};

/// From one cut to the next.
struct OvenSegment
{
    Interval during;
    std::vector<std::size_t> present;
    bool off = false;          // a stay needs the oven off
    bool preferred = false;    // a stay has a preferred temperature
    std::vector<int> settings; // worth trying, rising; empty if nothing is in or none suits
};

struct OvenSegments
{
    std::vector<OvenCut> cuts;
    std::vector<OvenSegment> segments; // one less
};

/// `kept` are the positions in `stays` to look at; at least one.
[[nodiscard]] OvenSegments ovenSegments(const Oven& oven, const std::vector<OvenStay>& stays,
                                        const std::vector<std::size_t>& kept);

} // namespace suppertide
