// LevelLanes: the innermost loops of setting_levels.h, over levels that lie next to each other by
// cost, and of reached_levels.h, by setting. A search for proofs of ovens spends much of its time
// in them.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace suppertide {

/// Levels are temperatures in thousandths of a degree; here by cost, so many at once; beyond their
/// lanes as in the last one.
struct LevelLanes
{
    using Level = std::int32_t;
    static constexpr Level unbounded = 1'000'000'000;
    static constexpr std::size_t lane = 16;

    const Level* from = nullptr;
    std::size_t count = 0;
    const Level* last = nullptr;

    [[nodiscard]] static Level levelOf(std::int64_t milliC)
    {
        return static_cast<Level>(std::clamp<std::int64_t>(milliC, -unbounded, unbounded));
    }
    [[nodiscard]] const Level* at(std::size_t i) const
    {
        return i < count ? from + i * lane : last;
    }
    [[nodiscard]] static std::size_t countFor(std::size_t levels)
    {
        return (levels + lane - 1) / lane;
    }
};

/// What a minute asks for, whatever the setting.
struct LevelsAsked
{
    using Level = LevelLanes::Level;

    Level low = 0; // as it begins
    Level high = 0;
    Level ceiling = 0; // as it ends
    Level heats = 0;
    Level cools = 0;
    Level ambient = 0;
    Level coldest = 0; // that there can be
};

/// What is needed next by those for whom a minute is the same: if it is on (without lanes: it
/// cannot be), and if it is off.
struct LevelsNext
{
    LevelLanes on;
    LevelLanes off;
    LevelLanes::Level hottest = 0; // that the setting heats to
};

/// The least temperature from which a minute on leads to what is needed next, by cost: `stride`
/// levels, in whole lanes, for each part into `found`, and the least of all into `best`.
void leadTo(const LevelsAsked& asked, const std::vector<LevelsNext>& parts, std::size_t stride,
            LevelLanes::Level* found, LevelLanes::Level* best);

/// The least temperatures from which a minute will do: on at a setting (`found`; into its first
/// lanes), on after a change, or off; and the greatest of all parts into `worst`.
void willDo(const LevelsAsked& asked, const std::vector<LevelsNext>& parts, std::size_t lanes,
            std::size_t stride, const LevelLanes::Level* changed, LevelLanes::Level* found,
            LevelLanes::Level* worst);

/// What a minute allows, whatever the setting.
struct LevelsAllowed
{
    using Level = LevelLanes::Level;

    Level low = 0; // as it ends
    Level high = 0;
    Level heats = 0;
    Level cools = 0;
    Level ambient = 0;
};

/// What has been reached as a minute begins, by column, if it is off, and if it is on; and if it is
/// on at another setting than before.
struct LevelsBefore
{
    const LevelLanes::Level* off = nullptr;
    const LevelLanes::Level* on = nullptr;
    LevelLanes::Level afterChange = 0;
};

/// The greatest temperatures that a minute leads to, by cost (`from`), `width` columns in whole
/// lanes, into `found`, and the greatest of each cost into `best`. By column: what its setting
/// heats to, and what it leads to at most when on.
void leadFrom(const LevelsAllowed& allowed, const std::vector<LevelsBefore>& from,
              std::size_t width, const LevelLanes::Level* hottest, const LevelLanes::Level* blocked,
              LevelLanes::Level* found, LevelLanes::Level* best);

/// What has been reached, for a moment that must be no cooler, and no hotter.
void narrowReached(std::vector<LevelLanes::Level>& levels, std::int64_t low, std::int64_t high);

/// The greatest of each of so many rows, none counted for more than `most`, into `greatest`.
void greatestOf(const LevelLanes::Level* rows, std::size_t count, std::size_t width,
                const LevelLanes::Level* most, LevelLanes::Level* greatest);

/// The lower of the two, so many lanes, into `lower`.
void lowerOf(const LevelLanes& one, const LevelLanes& two, std::size_t lanes,
             LevelLanes::Level* lower);

/// Which of so many rows of levels, `stride` apart, differ from the one before among the first
/// `count`; their numbers into `found`, the first one's too. A lane more can be read.
void findDifferent(const LevelLanes::Level* rows, std::size_t number, std::size_t stride,
                   std::size_t count, std::vector<std::size_t>& found);

/// A lane unbounded, and then so many lanes of which the first `count` levels are as in `levels`,
/// the others as the last of them. A lane more can be read.
void copyPadded(const LevelLanes::Level* levels, std::size_t count, std::size_t lanes,
                LevelLanes::Level* to);

} // namespace suppertide
