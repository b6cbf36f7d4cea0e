// ReachedHeat: what has been reached (reached_levels.h) as far as heating alone goes, whatever the
// settings: by minutes on so far, the greatest temperature.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/assign/level_lanes.h"
#include "core/assign/setting_levels.h"

namespace suppertide {

class ReachedHeat
{
public:
    using Level = LevelLanes::Level;

    /// Costs from `first` on, so many of them; the last goes for all above. More cost reaches no
    /// less.
    struct Row
    {
        std::int64_t first = 0;
        std::size_t costs = 0;
        std::vector<Level> levels; // a lane of nothing; then in lanes, beyond the costs as the last

        [[nodiscard]] bool isUnknown() const { return levels.empty(); }
        friend bool operator==(const Row&, const Row&) = default;
    };

    /// For an oven that suits (setting_levels.h).
    ReachedHeat(const Oven& oven, const OvenProgramStyle& style);

    /// As in reached_levels.h.
    [[nodiscard]] Row atStart() const;
    [[nodiscard]] Row after(const AskedOfMinute& minute, const Row& before,
                            std::int64_t below) const;
    static void narrow(Row& row, std::int64_t low, std::int64_t high);
    static void takeBetter(Row& row, const Row& other);
    [[nodiscard]] static bool isAny(const Row& row);
    [[nodiscard]] std::int64_t work() const { return work_; }

private:
    static constexpr Level never = -LevelLanes::unbounded;
    static constexpr std::size_t mostCosts = 3'000; // of a row

    [[nodiscard]] static Row rowOf(std::int64_t first, const Level* levels, std::size_t costs);

    Oven oven_;
    std::int64_t onMinute_;
    mutable std::int64_t work_ = 0;
    // Room, so that none is asked for each time.
    mutable std::vector<Level> off_;
    mutable std::vector<Level> on_;
    mutable std::vector<Level> hottest_;
    mutable std::vector<Level> blocked_;
    mutable std::vector<Level> found_;
    mutable std::vector<LevelsBefore> from_;
};

} // namespace suppertide
