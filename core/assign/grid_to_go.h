// GridToGo: for stays in one oven, what the rest of any program costs, minute by minute, by the
// setting last in force and by the temperature in steps from one to the next of which all programs
// lead. Unlike the levels of cost_to_go.h it knows that an oven can be too hot for what follows:
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

#include "core/assign/oven_heat.h"
#include "core/assign/setting_columns.h"

namespace suppertide {

class GridToGo
{
public:
    /// Costs from `below` on are not told apart. `heat` has been weighed; both it and the oven must
    /// outlive this.
    GridToGo(const Oven& oven, const std::vector<OvenStay>& stays, const OvenHeat& heat,
             const OvenProgramStyle& style, std::int64_t below);
    ~GridToGo();
    GridToGo(const GridToGo&) = delete;
    GridToGo& operator=(const GridToGo&) = delete;

    /// Not if the steps would be too small, or it would take too much room.
    [[nodiscard]] bool isKnown() const { return !rows_.empty(); }
    /// The setting last in force is one of these; `on`: in the minute before.
    [[nodiscard]] std::int64_t least(int minute, std::int64_t milliC, bool on, int lowest,
                                     int highest) const;
    /// There was none so far.
    [[nodiscard]] std::int64_t least(int minute, std::int64_t milliC) const;
    static constexpr std::int64_t plenty = std::int64_t{1} << 50;

private:
    using Cost = std::uint16_t;
    using Cell = std::int64_t; // steps above the coldest

    /// Of a moment: columns next to each other that are no different are one group; the last one
    /// stands for none so far.
    struct Row
    {
        Cell low = 0;
        std::size_t count = 0;         // of cells
        std::vector<std::size_t> ends; // of groups, the column after
        std::size_t place = 0;         // in the room; by group, whether it was on, and cell
    };
    /// Cells from the first to the last.
    struct Range
    {
        Cell first = 0;
        Cell last = 0;
    };
    /// What a minute costs beside a change.
    struct Prices
    {
        std::int64_t off = 0;
        std::vector<std::int64_t> on; // by column
        std::int64_t switching = 0;   // on, where it was off
    };

    [[nodiscard]] bool readSteps(const std::vector<OvenStay>& stays);
    void lookBack();
    [[nodiscard]] Range rangeAt(int minute) const;
    [[nodiscard]] Row emptyRow(int minute) const;
    [[nodiscard]] std::size_t sizeOf(const Row& row) const
    {
        return row.ends.size() * layers_ * row.count;
    }
    [[nodiscard]] bool isSame(const Row& one, const Row& two) const;
    [[nodiscard]] Row before(int minute, const Row& next);
    [[nodiscard]] Prices pricesOf(int minute) const;
    void findAny(const Row& next, const Prices& prices, Range cells);
    void findBase(const Row& next, std::size_t group, const Prices& prices, Range cells);
    void addOn(const Row& next, std::size_t group, Range columns, std::int64_t price, Range cells,
               Cost* to) const;
    void addColumn(Row& row, const Row& next, std::size_t group, std::size_t column,
                   const Prices& prices, bool isFirst);
    [[nodiscard]] std::size_t layer(bool on) const { return on && layers_ == 2 ? 1 : 0; }
    [[nodiscard]] const Cost* costsOf(const Row& row, std::size_t group, bool on) const
    {
        return room_.data() + row.place + (group * layers_ + layer(on)) * row.count;
    }
    /// No colder than the coldest.
    [[nodiscard]] Cell cellOf(std::int64_t milliC) const { return (milliC - coldest_) / step_; }
    [[nodiscard]] Cell cellOfDegrees(int degrees) const
    {
        return cellOf(std::int64_t{degrees} * 1000);
    }
    [[nodiscard]] std::int64_t leastIn(int minute, std::int64_t milliC, bool on, std::size_t from,
                                       std::size_t to) const;

    const Oven* oven_;
    const OvenHeat* heat_;
    OvenProgramStyle style_;
    std::int64_t asked_; // costs from there on do not matter
    Cost limit_;         // nor can they be told apart from there on
    std::size_t layers_; // whether it was on in the minute before is told apart
    std::vector<SettingColumn> columns_;
    std::map<int, std::vector<int>> preferred_; // by minute
    std::int64_t coldest_ = 0;                  // thousandths of a degree
    std::int64_t hottest_ = 0;
    std::int64_t step_ = 1;
    Cell heats_ = 0; // in a minute
    Cell cools_ = 0;
    std::vector<Cell> afterOff_; // by cell
    std::vector<Row> rows_;
    std::vector<std::size_t> rowOf_; // by minute
    std::vector<Cost> room_;
    std::size_t used_ = 0;
    // Room, so that none is asked for each time; by cell of a row.
    std::vector<Cost> any_;  // on at any setting
    std::vector<Cost> base_; // off, or at another setting than the last; by layer
    std::vector<Cost> on_;   // on at one of the settings
    std::vector<Cost> made_; // by layer
};

} // namespace suppertide
