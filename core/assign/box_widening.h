// BoxWidening: how wide the lengths of a box's stretches may be made so that it still costs so much
// at least. What is reached before each stretch is found once; then, from the last stretch to the
// first, each is made as wide as it can be, given those before it as they were:
//
//     reached     ──▶│ gratin 45 │ empty 20 │ bread 25 │
//                                           ◀── 25…60 ─┤  needed
//                                ◀─ 12…90 ──┤
//
// Source: the two-way form of dynamic programming (R. Bellman, 1957) as used for sensitivity.
#pragma once

#include <cstdint>
#include <vector>

#include "core/assign/oven_box.h"

namespace suppertide {

struct WidenedBox
{
    OvenBox box;
    std::int64_t work = 0; // levels (setting_levels.h)
};

/// `open`: how wide each stretch may be made, no narrower than it is. The same box, if it is not
/// easy to show that it costs `least`, and where switching on costs.
[[nodiscard]] WidenedBox widenedBox(const Oven& oven, const OvenProgramStyle& style,
                                    const OvenBox& box, const std::vector<StretchLengths>& open,
                                    std::int64_t least);

} // namespace suppertide
