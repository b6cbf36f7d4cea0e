// OvenBox: what any program of an oven costs at least for stays whose order is known, but not how
// far apart exactly they begin and end.
//
//     ├── gratin ──┤  20…45 min  ├─────── bread ───────┤
//                                       5…30 min ├── tart ──┤
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/assign/setting_levels.h"

namespace suppertide {

/// From one moment at which a stay begins or ends to the next.
struct OvenStretch
{
    std::int64_t low = 0; // that all that is in accepts, in thousandths of a degree
    std::int64_t high = 0;
    bool off = false;           // the oven must be
    std::vector<int> preferred; // by stays that begin with it
    std::int64_t least = 1;     // minutes; 0 only where nothing is preferred
    std::int64_t most = 1;
    bool goesOn = false; // some stay is in that is in the stretch before

    /// Whether some stay is in.
    [[nodiscard]] bool holds() const { return low > -SettingLevels::unbounded; }

    friend bool operator==(const OvenStretch&, const OvenStretch&) = default;
};

/// Minutes that a stretch may be long.
struct StretchLengths
{
    std::int64_t least = 0;
    std::int64_t most = 0;

    friend bool operator==(const StretchLengths&, const StretchLengths&) = default;
};

/// From the beginning of a stay to its end.
struct OvenSpan
{
    std::size_t first = 0; // stretch
    std::size_t last = 0;
    std::int64_t minutes = 0; // that they last together
};

/// Stretches in order of time, at least one, the first begun by a stay.
struct OvenBox
{
    std::vector<OvenStretch> stretches;
    std::vector<OvenSpan> spans; // that are known; those of stays that overlap say most
};

/// By stretch.
[[nodiscard]] std::vector<StretchLengths> lengthsOf(const std::vector<OvenStretch>& stretches);

/// What is found, and how much had to be looked at for it.
struct BoxCost
{
    std::int64_t least = 0; // no more than was asked for
    std::int64_t work = 0;  // levels (setting_levels.h)
};

/// Brief: where that is far below what is asked for, heat and settings are counted each by itself.
enum class BoxLook
{
    Brief,
    Close,
};

/// Before the first stretch the oven is as cold as it starts, for as long as need be. Costs from
/// `below` on are not told apart. 0 for an oven that does not suit (setting_levels.h).
[[nodiscard]] BoxCost leastCostInBox(const Oven& oven, const OvenProgramStyle& style,
                                     const OvenBox& box, std::int64_t below,
                                     BoxLook look = BoxLook::Close);

} // namespace suppertide
