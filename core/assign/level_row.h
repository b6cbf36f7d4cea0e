// LevelRow: for a moment of an oven's program, by cost and by setting, the least temperature that
// is needed. Most settings next to each other ask for the same at every cost, so that a row keeps
// them as one group:
//
//     setting        50…139    140…179    180     181…250    none so far
//     cost 21             –         –   181 °C         –          181 °C
//     cost 22             –   181 °C    166 °C         –          166 °C
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/assign/level_lanes.h"

namespace suppertide {

/// Columns stand for settings, rising; the last one for none so far, always a group of its own.
class LevelRow
{
public:
    using Level = LevelLanes::Level;
    static constexpr Level unbounded = LevelLanes::unbounded;
    /// Levels of a group can be read in lanes of so many: from one lane before its first cost,
    /// where all are unbounded, to the end of its last lane, in which all are as for the last cost.
    static constexpr std::size_t lane = LevelLanes::lane;

    /// Nothing is known.
    LevelRow() = default;
    /// Costs from `first` on, the last of which goes for all above. `ends`: of groups one after
    /// another, the column after; that of none so far as the last. `levels`: of each group, so many
    /// (`stride`) apart, by cost; a lane more can be read than there are. Groups next to each other
    /// that are no different become one.
    LevelRow(std::int64_t first, std::size_t costs, const std::vector<std::size_t>& ends,
             const Level* levels, std::size_t stride);

    [[nodiscard]] bool isUnknown() const { return groups_ == 0; }
    [[nodiscard]] std::int64_t first() const { return first_; }
    [[nodiscard]] std::int64_t end() const { return first_ + static_cast<std::int64_t>(costs_); }
    [[nodiscard]] std::size_t costs() const { return costs_; }
    [[nodiscard]] std::size_t lanes() const { return LevelLanes::countFor(costs_) + 1; }
    [[nodiscard]] std::size_t groups() const { return groups_; }
    /// How many levels it takes to write it down.
    [[nodiscard]] std::size_t size() const { return levels_.size(); }
    [[nodiscard]] std::size_t beginOf(std::size_t group) const
    {
        return group == 0 ? 0 : endOf(group - 1);
    }
    [[nodiscard]] std::size_t endOf(std::size_t group) const
    {
        return static_cast<std::size_t>(levels_[group]);
    }
    [[nodiscard]] const Level* levelsOf(std::size_t group) const
    {
        return levels_.data() + placeOf(group);
    }
    /// Of a group, so much to come.
    [[nodiscard]] Level at(std::size_t group, std::int64_t cost) const
    {
        return cost < first_ ? unbounded : levelsOf(group)[std::min(cost, end() - 1) - first_];
    }
    /// Of a group, as they are for a cost of `back` less, a lane at most.
    [[nodiscard]] LevelLanes lanesOf(std::size_t group, std::size_t back) const
    {
        const Level* levels = levelsOf(group);
        return {levels - back, lanes(), levels + (lanes() - 1) * lane};
    }

    /// For a moment that must be no cooler, and no hotter.
    void narrow(Level low, Level high);
    /// The lower of the two, for each column and cost; unknown if one of them is.
    [[nodiscard]] static LevelRow lower(const LevelRow& one, const LevelRow& two);

    friend bool operator==(const LevelRow&, const LevelRow&) = default;

private:
    [[nodiscard]] std::size_t placeOf(std::size_t group) const
    {
        return groups_ + group * (lanes() + 1) * lane + lane;
    }

    std::int64_t first_ = 0;
    std::size_t costs_ = 0;
    std::size_t groups_ = 0;
    std::vector<Level> levels_; // after the ends of all groups
};

} // namespace suppertide
