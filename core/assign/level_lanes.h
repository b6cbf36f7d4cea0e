// LevelLanes: the innermost loops of setting_levels.h, over levels that lie next to each other by
// cost, and of reached_levels.h, by setting. A search for proofs of ovens spends much of its time
// in them.
#pragma once

#include <cstddef>
#include <vector>

#include "core/assign/level_row.h"

namespace suppertide {

/// What a minute asks for, whatever the setting.
struct LevelsAsked
{
    using Level = LevelRow::Level;

    Level low = 0; // as it begins
    Level high = 0;
    Level ceiling = 0; // as it ends
    Level heats = 0;
    Level cools = 0;
    Level ambient = 0;
    Level coldest = 0; // that there can be
};

/// Levels by cost; beyond their lanes as in the last one.
struct LevelLanes
{
    const LevelRow::Level* from = nullptr;
    std::size_t count = 0;
    const LevelRow::Level* last = nullptr;

    [[nodiscard]] const LevelRow::Level* at(std::size_t lane) const
    {
        return lane < count ? from + lane * LevelRow::lane : last;
    }
};

/// What is needed next by those for whom a minute is the same: if it is on (without lanes: it
/// cannot be), and if it is off.
struct LevelsNext
{
    LevelLanes on;
    LevelLanes off;
    LevelRow::Level hottest = 0; // that the setting heats to
};

/// The least temperature from which a minute on leads to what is needed next, by cost: `stride`
/// levels, in whole lanes, for each part into `found`, and the least of all into `best`.
void leadTo(const LevelsAsked& asked, const std::vector<LevelsNext>& parts, std::size_t stride,
            LevelRow::Level* found, LevelRow::Level* best);

/// The least temperatures from which a minute will do: on at a setting (`found`; into its first
/// lanes), on after a change, or off; and the greatest of all parts into `worst`.
void willDo(const LevelsAsked& asked, const std::vector<LevelsNext>& parts, std::size_t lanes,
            std::size_t stride, const LevelRow::Level* changed, LevelRow::Level* found,
            LevelRow::Level* worst);

/// What a minute allows, whatever the setting.
struct LevelsAllowed
{
    using Level = LevelRow::Level;

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
    const LevelRow::Level* off = nullptr;
    const LevelRow::Level* on = nullptr;
    LevelRow::Level afterChange = 0;
};

/// The greatest temperatures that a minute leads to, by cost (`from`), `width` columns in whole
/// lanes, into `found`, and the greatest of each cost into `best`. By column: what its setting
/// heats to, and what it leads to at most when on.
void leadFrom(const LevelsAllowed& allowed, const std::vector<LevelsBefore>& from,
              std::size_t width, const LevelRow::Level* hottest, const LevelRow::Level* blocked,
              LevelRow::Level* found, LevelRow::Level* best);

/// The greatest of each of so many rows, none counted for more than `most`, into `greatest`.
void greatestOf(const LevelRow::Level* rows, std::size_t count, std::size_t width,
                const LevelRow::Level* most, LevelRow::Level* greatest);

} // namespace suppertide
