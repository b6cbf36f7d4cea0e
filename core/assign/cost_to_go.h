// CostToGo: for stays in one oven, what the rest of any program costs at least, minute by minute,
// by the temperature and by the setting last in force (setting_levels.h). A step of
// cheapest_program.h; used by nothing else.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/assign/oven_heat.h"
#include "core/assign/setting_levels.h"

namespace suppertide {

class CostToGo
{
public:
    /// Costs from `below` on are not told apart. `heat` has been weighed; the oven suits
    /// (setting_levels.h).
    CostToGo(const Oven& oven, const std::vector<OvenStay>& stays, const OvenHeat& heat,
             const OvenProgramStyle& style, std::int64_t below);

    /// Not if it would take too much room.
    [[nodiscard]] bool isKnown() const { return !rows_.empty(); }
    /// The setting last in force is one of these.
    [[nodiscard]] std::int64_t least(int minute, std::int64_t milliC, int lowest, int highest) const
    {
        return levels_.least(rowAt(minute), milliC, lowest, highest);
    }
    /// There was none so far.
    [[nodiscard]] std::int64_t least(int minute, std::int64_t milliC) const
    {
        return levels_.least(rowAt(minute), milliC);
    }

private:
    [[nodiscard]] const SettingLevels::Row& rowAt(int minute) const
    {
        return rows_[rowOf_[static_cast<std::size_t>(minute)]];
    }

    SettingLevels levels_;
    std::vector<SettingLevels::Row> rows_;
    std::vector<std::size_t> rowOf_; // by minute
};

} // namespace suppertide
