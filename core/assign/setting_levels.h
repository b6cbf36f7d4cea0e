// SettingLevels: for some moment of an oven's program and each setting that may have been in force
// last, the least temperature from which so much cost to come is enough; and how that moment's
// levels follow from the next one's. Minutes on, changes of setting, and what stays prefer at their
// beginning are counted at once.
//
//     cost to come     last set to 180    last set to 230
//               21                   –             181 °C
//               26              20 °C              158 °C
//
// What follows from them is a bound: a temperature that is higher is taken to be as good as a lower
// one. Source: R. Bellman, Dynamic programming (1957).
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/assign/level_lanes.h"
#include "core/assign/level_row.h"
#include "core/assign/oven_program.h"
#include "core/assign/setting_columns.h"

namespace suppertide {

/// What a minute asks for; temperatures in thousandths of a degree, within ±10⁹.
struct AskedOfMinute
{
    std::int64_t low = 0; // as it begins
    std::int64_t high = 0;
    std::int64_t highNext = 0;  // as it ends
    bool off = false;           // the oven must be
    std::vector<int> preferred; // by stays that begin then
    bool within = false;        // some stay has begun before and ends after
};

class SettingLevels
{
public:
    static constexpr std::int32_t unbounded = LevelRow::unbounded;

    /// Whether the oven's temperatures are such that levels can be kept of all.
    [[nodiscard]] static bool suits(const Oven& oven);

    /// For an oven that suits. Settings are told apart only where they make for costs below
    /// `below`, as heating costs so much at least. Stays in any order.
    SettingLevels(const Oven& oven, const std::vector<OvenStay>& stays,
                  const OvenProgramStyle& style, std::int64_t below, std::int64_t heating);

    /// Unknown: there would be too many costs to tell apart.
    using Row = LevelRow;
    /// When the last stay has ended.
    [[nodiscard]] Row atEnd(std::int64_t low, std::int64_t high = unbounded) const;
    /// Costs to come from `below` on do not matter.
    [[nodiscard]] Row before(const AskedOfMinute& minute, const Row& after,
                             std::int64_t below) const;
    /// Whether anything will do.
    [[nodiscard]] static bool isAny(const Row& row)
    {
        // For none so far no more is needed than with a setting.
        return row.isUnknown() || row.at(row.groups() - 1, row.end()) != unbounded;
    }
    [[nodiscard]] static bool isSame(const Row& one, const Row& two) { return one == two; }
    /// For a moment that must be no cooler, and no hotter.
    static void narrow(Row& row, std::int64_t low, std::int64_t high);
    /// Whichever of the two is better.
    void takeBetter(Row& row, const Row& other) const;

    /// What is to come costs at least, if the setting last in force is one of these; `plenty`: more
    /// than matters.
    [[nodiscard]] std::int64_t least(const Row& row, std::int64_t milliC, int lowest,
                                     int highest) const;
    /// If there was none so far.
    [[nodiscard]] std::int64_t least(const Row& row, std::int64_t milliC) const;
    static constexpr std::int64_t plenty = std::int64_t{1} << 50;

    /// By column of a row; it has one more, for none so far.
    [[nodiscard]] const std::vector<SettingColumn>& columns() const { return columns_; }

    /// What a minute costs beside a change.
    struct Prices
    {
        std::int64_t off = 0;
        std::vector<std::int64_t> on; // by column; none: the same at each
        std::int64_t cheapestOn = 0;
        std::int64_t dearestOn = 0;
    };
    [[nodiscard]] Prices pricesOf(const AskedOfMinute& minute) const;

    /// Levels found so far, and what it takes to begin a row in as many: what has been spent.
    [[nodiscard]] std::int64_t work() const { return work_; }

private:
    using Level = LevelRow::Level;
    /// Columns for which a minute is the same.
    struct Part
    {
        std::size_t group = 0;  // of the row after
        std::size_t end = 0;    // the column after
        std::int64_t price = 0; // of being on; from `plenty` on: cannot be
    };
    class Spread;
    void divide(const AskedOfMinute& minute, const Prices& prices, const Row& after,
                std::int64_t below) const;
    void divideByHeat(const Row& after, std::size_t group, std::size_t end, Level ceiling) const;
    [[nodiscard]] std::size_t blockedFrom(const AskedOfMinute& minute) const;
    void readNext(const Row& after, const Prices& prices, std::size_t lanes) const;
    std::size_t lookThrough(const LevelsAsked& minute, std::size_t costs) const;
    [[nodiscard]] Row rowFrom(std::int64_t first, std::size_t costs, Level low) const;
    [[nodiscard]] Row rowOf(std::int64_t cost, Level level) const;
    [[nodiscard]] std::int64_t find(const Row& row, std::int64_t milliC, std::size_t from,
                                    std::size_t to) const;
    [[nodiscard]] std::size_t columnOf(int setting) const;

    Oven oven_;
    OvenProgramStyle style_;
    Level coldest_;
    Level hottest_;
    std::vector<SettingColumn> columns_;
    std::vector<Level> hottestOf_; // by column
    mutable std::int64_t work_ = 0;
    // Room, so that none is asked for each time.
    mutable std::vector<Part> parts_;
    mutable std::vector<LevelsNext> next_; // by part
    mutable std::vector<LevelsNext> none_; // for none so far
    mutable std::vector<Level> spread_;
    mutable std::vector<std::size_t> splits_;
    mutable std::vector<Level> best_; // by cost
    mutable std::vector<Level> changed_;
    mutable std::vector<Level> worst_;
    mutable std::vector<Level> found_; // by part, and for none so far; then cost
    mutable std::vector<std::size_t> ends_;
};

} // namespace suppertide
