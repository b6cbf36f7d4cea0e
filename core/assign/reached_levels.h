// ReachedLevels: the counterpart of SettingLevels: for some moment of an oven's program and each
// setting that may have been in force last, the greatest temperature that so much cost so far can
// have led to; and how that moment's levels follow from the earlier one's. Together with what is
// needed from then on they tell what any program costs at least that passes through the moment.
//
//     cost so far     last set to 180    last set to 230
//              12             128 °C                  –
//              20             180 °C             208 °C
//
// What follows from them is a bound: a temperature that is lower is taken to be no better. Source:
// R. Bellman, Dynamic programming (1957), forward form.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/assign/level_lanes.h"
#include "core/assign/setting_levels.h"

namespace suppertide {

class ReachedLevels
{
public:
    /// Costs from `first` on; the last go for all above. Without any levels nothing is known: there
    /// would be too many.
    struct Row
    {
        std::int64_t first = 0;
        std::vector<LevelLanes::Level> levels; // by cost, then column

        [[nodiscard]] bool isUnknown() const { return levels.empty(); }
        friend bool operator==(const Row&, const Row&) = default;
    };

    /// Of the same oven, style and settings told apart; `needed` must outlive this.
    ReachedLevels(const Oven& oven, const OvenProgramStyle& style, const SettingLevels& needed);

    /// Before anything has been set.
    [[nodiscard]] Row atStart() const;
    /// Costs so far from `below` on do not matter. What the minute asks for as it begins the row
    /// already meets.
    [[nodiscard]] Row after(const AskedOfMinute& minute, const Row& before,
                            std::int64_t below) const;
    /// For a moment that must be no cooler, and no hotter.
    static void narrow(Row& row, std::int64_t low, std::int64_t high);
    /// Whichever of the two is better.
    void takeBetter(Row& row, const Row& other) const;
    /// Whether anything is reached.
    [[nodiscard]] static bool isAny(const Row& row);
    /// Whether some program that costs less than `below` leads to what is needed.
    [[nodiscard]] bool meets(const Row& reached, const SettingLevels::Row& needed,
                             std::int64_t below) const;

    /// Levels found so far: what has been spent.
    [[nodiscard]] std::int64_t work() const { return work_; }

private:
    using Level = LevelLanes::Level;
    static constexpr Level never = -SettingLevels::unbounded;

    void block(const AskedOfMinute& minute) const;
    [[nodiscard]] Level afterChange(const Row& before, std::int64_t cost) const;
    void readFrom(const Row& before, const SettingLevels::Prices& prices, std::int64_t first,
                  std::int64_t end) const;
    [[nodiscard]] const Level* pricedFrom(const Row& before, const SettingLevels::Prices& prices,
                                          std::int64_t cost) const;
    [[nodiscard]] std::int64_t endOf(const Row& row) const
    {
        return row.first + static_cast<std::int64_t>(row.levels.size() / width_);
    }
    [[nodiscard]] const Level* at(const Row& row, std::int64_t cost) const;

    const SettingLevels* needed_;
    Oven oven_;
    OvenProgramStyle style_;
    std::vector<SettingColumn> columns_;
    std::size_t width_; // of a row, with that of no setting so far, in whole lanes
    std::vector<Level> never_;
    std::vector<Level> none_;      // that of no setting so far can have no more while on
    std::vector<Level> hottestOf_; // by column
    mutable std::int64_t work_ = 0;
    // Room for rows, so that none is asked for each time.
    mutable std::vector<Level> any_; // of the row before, by cost: at any setting
    mutable std::vector<Level> priced_;
    mutable std::vector<LevelsBefore> from_; // by cost
    mutable std::vector<Level> found_;
    mutable std::vector<Level> best_;
    mutable std::vector<Level> blocked_;
};

} // namespace suppertide
