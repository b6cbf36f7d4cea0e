#include "core/assign/level_lanes.h"

#include <algorithm>
#include <array>

#include "core/assign/wide.h"

namespace suppertide {

namespace {

using Level = LevelLanes::Level;
constexpr Level unbounded = LevelLanes::unbounded;
constexpr Level never = -LevelLanes::unbounded;
// Loops of so few rounds would be unrolled before they can be made wide: hence the pragmas.
constexpr std::size_t lane = LevelLanes::lane;

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
#pragma GCC ivdep
#pragma GCC unroll 1
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
#pragma GCC ivdep
#pragma GCC unroll 1
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

SUPPERTIDE_WIDE void leadFrom(const LevelsAllowed& allowed, const std::vector<LevelsBefore>& from,
                              std::size_t width, const Level* hottest, const Level* blocked,
                              Level* found, Level* best)
{
    const LevelsAllowed minute = allowed;
    for (const LevelsBefore& before : from) {
        std::array<Level, lane> greatest{};
        greatest.fill(never);
        for (std::size_t l = 0; l < width; l += lane) {
            const Level* __restrict off = before.off + l;
            const Level* __restrict on = before.on + l;
            const Level* __restrict cap = hottest + l;
            const Level* __restrict most = blocked + l;
            Level* __restrict here = found + l;
#pragma GCC ivdep
#pragma GCC unroll 1
            for (std::size_t k = 0; k < lane; ++k) {
                const Level level = std::max(on[k], before.afterChange);
                const Level heated =
                    std::max(std::min(level + minute.heats, cap[k]), level - minute.cools);
                const Level ifOn = level == never ? never : std::min(heated, most[k]);
                const Level cooled =
                    off[k] == never ? never : std::max(off[k] - minute.cools, minute.ambient);
                const Level both = std::min(std::max(ifOn, cooled), minute.high);
                const Level reached = both < minute.low ? never : both;
                here[k] = reached;
                greatest[k] = std::max(greatest[k], reached);
            }
        }
        *best++ = *std::ranges::max_element(greatest);
        found += width;
    }
}

void narrowReached(std::vector<Level>& levels, std::int64_t low, std::int64_t high)
{
    const Level least = LevelLanes::levelOf(low);
    const Level most = LevelLanes::levelOf(high);
    for (Level& level : levels) {
        level = std::min(level, most);
        level = level < least ? never : level;
    }
}

SUPPERTIDE_WIDE void greatestOf(const Level* rows, std::size_t count, std::size_t width,
                                const Level* most, Level* greatest)
{
    for (std::size_t row = 0; row < count; ++row) {
        Level found = never;
        for (std::size_t i = 0; i < width; ++i) {
            found = std::max(found, std::min(rows[i], most[i]));
        }
        greatest[row] = found;
        rows += width;
    }
}

SUPPERTIDE_WIDE void lowerOf(const LevelLanes& one, const LevelLanes& two, std::size_t lanes,
                             Level* lower)
{
    for (std::size_t l = 0; l < lanes; ++l) {
        const Level* __restrict a = one.at(l);
        const Level* __restrict b = two.at(l);
        Level* __restrict here = lower + l * lane;
#pragma GCC ivdep
#pragma GCC unroll 1
        for (std::size_t k = 0; k < lane; ++k) {
            here[k] = std::min(a[k], b[k]);
        }
    }
}

SUPPERTIDE_WIDE void findDifferent(const Level* rows, std::size_t number, std::size_t stride,
                                   std::size_t count, std::vector<std::size_t>& found)
{
    const auto end = static_cast<Level>(count);
    found.assign(1, 0);
    for (std::size_t i = 1; i < number; ++i) {
        Level differs = 0;
        Level place = 0;
        for (std::size_t l = 0; l < LevelLanes::countFor(count); ++l) {
            const Level* __restrict a = rows + i * stride + l * lane;
            const Level* __restrict b = a - stride;
#pragma GCC ivdep
#pragma GCC unroll 1
            for (std::size_t k = 0; k < lane; ++k) {
                const Level here = a[k] ^ b[k];
                differs |= place + static_cast<Level>(k) < end ? here : 0;
            }
            place += static_cast<Level>(lane);
        }
        if (differs != 0) {
            found.push_back(i);
        }
    }
}

SUPPERTIDE_WIDE void copyPadded(const Level* levels, std::size_t count, std::size_t lanes,
                                Level* to)
{
    const auto end = static_cast<Level>(count);
    const Level last = levels[count - 1];
#pragma GCC ivdep
#pragma GCC unroll 1
    for (std::size_t k = 0; k < lane; ++k) {
        to[k] = unbounded;
    }
    Level place = 0;
    for (std::size_t l = 0; l < lanes; ++l) {
        const Level* __restrict from = levels + std::min(l * lane, count);
        Level* __restrict here = to + (l + 1) * lane;
#pragma GCC ivdep
#pragma GCC unroll 1
        for (std::size_t k = 0; k < lane; ++k) {
            const Level level = from[k];
            here[k] = place + static_cast<Level>(k) < end ? level : last;
        }
        place += static_cast<Level>(lane);
    }
}

} // namespace suppertide
