// GridRows: for some moment of an oven's program, by the setting last in force and by the
// temperature in steps from one to the next of which all programs lead, what is to come costs; and
// how that follows from the moment a minute later.
//
//     °C                149    150    151  …  190
//     last set to 150     –     41     43       –
//     last set to 190     –      –      –      37
//
// Unlike the levels of setting_levels.h it knows that an oven can be too hot for what follows, and
// what switching on costs. Source: R. Bellman, Dynamic programming (1957).
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/assign/oven_program.h"
#include "core/assign/setting_columns.h"
#include "core/assign/setting_levels.h"

namespace suppertide {

class GridRows
{
public:
    using Cost = std::uint16_t;
    using Cell = std::int64_t; // steps above the coldest

    /// Of a moment: columns next to each other that are no different are one group; the last one
    /// stands for none so far. Its costs are kept by the grid that made it.
    struct Row
    {
        Cell low = 0;
        std::size_t count = 0;         // of cells
        std::vector<std::size_t> ends; // of groups, the column after
        std::size_t place = 0;         // in the room; by group, whether it was on, and cell
    };

    enum class Steps
    {
        Exact,
        WholeDegrees, // a minute leads to either neighbour of what it leads to: a bound, but fast
    };
    /// Costs from `below` on are not told apart. The oven must outlive this.
    GridRows(const Oven& oven, const OvenProgramStyle& style, std::vector<SettingColumn> columns,
             std::int64_t below, Steps steps);
    ~GridRows();
    GridRows(const GridRows&) = delete;
    GridRows& operator=(const GridRows&) = delete;

    /// Not if the steps would be too small.
    [[nodiscard]] bool isKnown() const { return !afterOff_.empty(); }
    /// Costs written down so far.
    [[nodiscard]] std::size_t size() const { return used_; }

    /// When nothing is to come, at all temperatures between, in thousandths of a degree.
    [[nodiscard]] Row atEnd(std::int64_t low, std::int64_t high);
    [[nodiscard]] Row before(const AskedOfMinute& minute, const Row& after, std::int64_t below);
    /// Before so many minutes with nothing in, after which an oven has cooled to the room.
    [[nodiscard]] Row beforeLong(const Row& after, std::int64_t minutes, std::int64_t below);
    [[nodiscard]] bool isSame(const Row& one, const Row& two) const;
    /// Whether anything will do.
    [[nodiscard]] bool isAny(const Row& row) const;
    /// For a moment that must be no cooler, and no hotter.
    void narrow(Row& row, std::int64_t low, std::int64_t high);
    /// Whichever of the two is better.
    void takeBetter(Row& row, const Row& other);
    /// How much more all costs are earlier; absent: not all by the same.
    [[nodiscard]] std::optional<std::int64_t> riseBetween(const Row& later,
                                                          const Row& earlier) const;
    /// All costs of a row that was made last.
    void raise(const Row& row, std::int64_t by, std::int64_t below);
    /// Forgets a row that was made last.
    void dropLast(const Row& row) { used_ = row.place; }

    /// The setting last in force is one of these; `on`: in the minute before.
    [[nodiscard]] std::int64_t least(const Row& row, std::int64_t milliC, bool on, int lowest,
                                     int highest) const;
    /// There was none so far.
    [[nodiscard]] std::int64_t least(const Row& row, std::int64_t milliC) const;
    /// The same after the oven has been empty and cold for as long as need be.
    [[nodiscard]] std::int64_t leastFromCold(const Row& row) const
    {
        return leastFromCold(row, row.ends.size() - 1);
    }
    static constexpr std::int64_t plenty = std::int64_t{1} << 50;

private:
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

    void readSteps(Steps steps);
    /// The setting last in force is of this group.
    [[nodiscard]] std::int64_t leastFromCold(const Row& row, std::size_t last) const;
    [[nodiscard]] std::int64_t leastIfKeptWarm(const Row& row, std::size_t last,
                                               std::int64_t minutes) const;
    [[nodiscard]] Row rowBetween(std::int64_t low, std::int64_t high) const;
    [[nodiscard]] std::size_t sizeOf(const Row& row) const
    {
        return row.ends.size() * layers_ * row.count;
    }
    void makeRoom(std::size_t more);
    [[nodiscard]] Prices pricesOf(const AskedOfMinute& minute) const;
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
    /// More than can be told apart, if that matters.
    [[nodiscard]] std::int64_t tooDear() const;
    [[nodiscard]] std::int64_t leastIn(const Row& row, std::int64_t milliC, bool on,
                                       std::size_t from, std::size_t to) const;

    const Oven* oven_;
    OvenProgramStyle style_;
    std::int64_t asked_; // costs from there on do not matter
    Cost limit_ = 0;     // of the minute that is looked at: from there on they do not matter
    std::size_t layers_; // whether it was on in the minute before is told apart
    std::vector<SettingColumn> columns_;
    std::int64_t coldest_ = 0; // thousandths of a degree
    std::int64_t hottest_ = 0;
    std::int64_t step_ = 1;
    struct Moved // cells, in a minute
    {
        Cell least = 0;
        Cell most = 0;
    };
    Moved heats_;
    Moved cools_;
    std::vector<Moved> afterOff_; // by cell, to which
    std::vector<Cost> room_;
    std::size_t used_ = 0;
    // Room, so that none is asked for each time; by cell of a row.
    std::vector<Cost> any_;  // on at any setting
    std::vector<Cost> base_; // off, or at another setting than the last; by layer
    std::vector<Cost> on_;   // on at one of the settings
    std::vector<Cost> made_; // by layer
};

} // namespace suppertide
