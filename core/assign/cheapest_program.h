// CheapestProgram: the cheapest program of one oven for stays whose times are given, proven. The
// cost of a problem lets an oven be switched off and on as often as it likes, so the cheapest one
// may let the oven fall through what is accepted and heat it again; oven_program.h makes programs
// that a cook would set, this finds what no program can beat.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/assign/oven_program.h"

namespace suppertide {

struct CheapestProgram
{
    std::int64_t bound = 0; // no program costs less
    /// Absent: not found within the effort, or the stays clash.
    std::optional<OvenProgram> program;
    std::int64_t cost = 0;
    bool isImpossible = false; // no program keeps the stays
};

/// Best-first search (A*; Hart, Nilsson, Raphael 1968) over the minutes, the temperatures and the
/// last setting. What is still to come costs at least: the minutes on that the balance of heat
/// asks for, and what settings away from those preferred, and changes, cost if temperatures are
/// left out of account. Only programs that cost less than `below` are looked for; if there is none,
/// `bound` is `below`. At most `effort` states are looked at.
[[nodiscard]] CheapestProgram cheapestProgram(const Oven& oven, const std::vector<OvenStay>& stays,
                                              const OvenProgramStyle& style, std::int64_t below,
                                              std::int64_t effort);

} // namespace suppertide
