// GridToGo: for stays in one oven, what the rest of any program costs, minute by minute, by the
// setting last in force and by the temperature (grid_rows.h). Unlike the levels of cost_to_go.h it
// knows that an oven can be too hot for what follows:
//
//     °C       149    150    151  …  170  …  190
//     9:58       –     43      –       –       –   exactly 150 °C until 10:00,
//     10:00      –     41      –       –       –
//     10:02      –      –      –      39       –   no hotter than 170 °C until 10:02,
//     10:04      –      –      –       –      37   no cooler than 190 °C from 10:04 on
//
// Takes some milliseconds: for stays for which the levels are not enough. Source: R. Bellman,
// Dynamic programming (1957). A step of cheapest_program.h; used by nothing else.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <vector>

#include "core/assign/grid_rows.h"
#include "core/assign/oven_heat.h"

namespace suppertide {

class GridToGo
{
public:
    /// Costs from `below` on are not told apart. `heat` has been weighed; both it and the oven must
    /// outlive this.
    GridToGo(const Oven& oven, const std::vector<OvenStay>& stays, const OvenHeat& heat,
             const OvenProgramStyle& style, std::int64_t below);

    /// Not if the steps would be too small, or it would take too much room.
    [[nodiscard]] bool isKnown() const { return !rows_.empty(); }
    /// The setting last in force is one of these; `on`: in the minute before.
    [[nodiscard]] std::int64_t least(int minute, std::int64_t milliC, bool on, int lowest,
                                     int highest) const;
    /// There was none so far.
    [[nodiscard]] std::int64_t least(int minute, std::int64_t milliC) const;
    static constexpr std::int64_t plenty = GridRows::plenty;

private:
    void lookBack();
    [[nodiscard]] AskedOfMinute askedOf(int minute) const;
    [[nodiscard]] const GridRows::Row& rowAt(int minute) const
    {
        return rows_[rowOf_[static_cast<std::size_t>(minute)]];
    }

    const OvenHeat* heat_;
    std::int64_t below_;
    GridRows grid_;
    std::map<int, std::vector<int>> preferred_; // by minute
    std::vector<GridRows::Row> rows_;
    std::vector<std::size_t> rowOf_; // by minute
};

} // namespace suppertide
