#include "core/assign/level_lanes.h"

#include <algorithm>

#include "core/assign/wide.h"

namespace suppertide {

namespace {

using Level = LevelRow::Level;
constexpr Level unbounded = LevelRow::unbounded;
constexpr std::size_t lane = LevelRow::lane;

} // namespace

SUPPERTIDE_WIDE void leadTo(const LevelsAsked& asked, const std::vector<LevelsNext>& parts,
                            std::size_t stride, Level* found, Level* best)
{
    const LevelsAsked minute = asked;
    std::fill_n(best, stride, unbounded);
    for (const LevelsNext& part : parts) {
        const Level hottest = part.hottest;
        if (part.on.count == 0) {
            std::fill_n(found, stride, unbounded);
        }
        for (std::size_t l = 0; l < stride / lane && part.on.count > 0; ++l) {
            const Level* __restrict on = part.on.at(l);
            Level* __restrict here = found + l * lane;
            Level* __restrict any = best + l * lane;
            for (std::size_t k = 0; k < lane; ++k) {
                const Level level = on[k] > hottest ? on[k] + minute.cools : on[k] - minute.heats;
                const Level lead = on[k] > minute.ceiling ? unbounded : level;
                here[k] = lead;
                any[k] = std::min(any[k], lead);
            }
        }
        found += stride;
    }
}

SUPPERTIDE_WIDE void willDo(const LevelsAsked& asked, const std::vector<LevelsNext>& parts,
                            std::size_t lanes, std::size_t stride, const Level* changed,
                            Level* found, Level* worst)
{
    const LevelsAsked minute = asked;
    std::fill_n(worst, lanes * lane, -unbounded);
    for (const LevelsNext& part : parts) {
        for (std::size_t l = 0; l < lanes; ++l) {
            const Level* __restrict off = part.off.at(l);
            const Level* __restrict change = changed + l * lane;
            Level* __restrict here = found + l * lane;
            Level* __restrict highest = worst + l * lane;
            for (std::size_t k = 0; k < lane; ++k) {
                const Level cooled = off[k] > minute.ambient ? off[k] + minute.cools : -unbounded;
                const Level ifOff = off[k] > minute.ceiling ? unbounded : cooled;
                const Level any = std::min(std::min(here[k], change[k]), ifOff);
                const Level both = std::max(minute.low, any);
                const Level warm = both <= minute.coldest ? -unbounded : both;
                const Level level = both > minute.high ? unbounded : warm;
                here[k] = level;
                highest[k] = std::max(highest[k], level);
            }
        }
        found += stride;
    }
}

} // namespace suppertide
