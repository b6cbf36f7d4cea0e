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

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include "core/assign/oven_program.h"

namespace suppertide {

/// What a minute asks for; temperatures in thousandths of a degree, within ±10⁹.
struct AskedOfMinute
{
    std::int64_t low = 0; // as it begins
    std::int64_t high = 0;
    std::int64_t highNext = 0;  // as it ends
    bool off = false;           // the oven must be
    std::vector<int> preferred; // by stays that begin then
};

class SettingLevels
{
public:
    static constexpr std::int32_t unbounded = 1'000'000'000;

    /// Whether the oven's temperatures are such that levels can be kept of all.
    [[nodiscard]] static bool suits(const Oven& oven);

    /// For an oven that suits. Settings are told apart only where they make for costs below
    /// `below`, as heating costs so much at least. Stays in any order.
    SettingLevels(const Oven& oven, const std::vector<OvenStay>& stays,
                  const OvenProgramStyle& style, std::int64_t below, std::int64_t heating);

    /// Costs from `first` on; the last go for all above, as far as these matter. Without any levels
    /// nothing is known: there would be too many.
    struct Row
    {
        std::int64_t first = 0;
        std::vector<std::int32_t> levels; // a column for each setting, and one for none so far

        friend bool operator==(const Row&, const Row&) = default;
    };
    /// When the last stay has ended.
    [[nodiscard]] Row atEnd(std::int64_t low) const;
    /// Costs to come from `below` on do not matter.
    [[nodiscard]] Row before(const AskedOfMinute& minute, const Row& after,
                             std::int64_t below) const;
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

    /// Settings that are not told apart, rising.
    struct Column
    {
        int coolest = 0;
        int hottest = 0;
    };
    [[nodiscard]] const std::vector<Column>& columns() const { return columns_; }

    /// What a minute costs beside a change.
    struct Prices
    {
        std::int64_t off = 0;
        std::vector<std::int64_t> on; // by column; none: the same at each
        std::int64_t cheapestOn = 0;
        std::int64_t dearestOn = 0;
    };
    [[nodiscard]] Prices pricesOf(const AskedOfMinute& minute) const;

    /// Levels found so far: what has been spent.
    [[nodiscard]] std::int64_t work() const { return work_; }

    /// What stays prefer, and changes, cost at least up to the beginning of each, in order of time.
    [[nodiscard]] static std::vector<std::int64_t>
    leastUpTo(const Oven& oven, const std::vector<int>& preferred, const OvenProgramStyle& style);

private:
    using Level = std::int32_t;
    static constexpr int narrowColumns = 3; // degrees
    void choose(const std::vector<OvenStay>& stays, std::int64_t below);
    /// Of a row, by cost.
    class Places
    {
    public:
        Places(const SettingLevels& levels, const Row& row);
        [[nodiscard]] std::int64_t end() const { return end_; }
        [[nodiscard]] const Level* at(std::int64_t cost) const
        {
            return cost < first_ ? never_ : levels_ + (std::min(cost, end_ - 1) - first_) * width_;
        }

    private:
        std::int64_t first_;
        std::int64_t end_;
        std::int64_t width_;
        const Level* never_;
        const Level* levels_;
    };
    void block(const AskedOfMinute& asked) const;
    [[nodiscard]] const Level* neededOn(const Places& next, const Prices& prices,
                                        std::int64_t cost) const;
    [[nodiscard]] std::int64_t endOf(const Row& row) const
    {
        return row.first + static_cast<std::int64_t>(row.levels.size() / width_);
    }
    [[nodiscard]] std::int64_t find(const Row& row, std::int64_t milliC, std::size_t from,
                                    std::size_t to) const;
    [[nodiscard]] std::size_t columnOf(int setting) const;

    Oven oven_;
    OvenProgramStyle style_;
    Level coldest_;
    Level hottest_;
    std::vector<Column> columns_;  // rising
    std::size_t width_ = 1;        // of a row, with that of no setting so far, the last
    std::vector<Level> hottestOf_; // by column
    std::vector<Level> never_;
    mutable std::int64_t work_ = 0;
    // Room for rows, so that none is asked for each time.
    mutable std::vector<Level> on_;
    mutable std::vector<Level> found_;
    mutable std::vector<Level> any_; // by cost from the first on, at any setting, changes apart
    mutable std::vector<Level> blocked_;
};

} // namespace suppertide
