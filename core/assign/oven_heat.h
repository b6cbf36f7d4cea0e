// OvenHeat: for stays in one oven, minute by minute, the temperatures from which all that follows
// can be kept, and what the minutes on that it asks for cost at least, whatever the settings. A
// step of cheapest_program.h; used by it and its other steps.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <utility>
#include <vector>

#include "core/assign/oven_program.h"

namespace suppertide {

class OvenHeat
{
public:
    /// Costs from `below` on are not told apart.
    OvenHeat(const Oven& oven, const std::vector<OvenStay>& stays, const OvenProgramStyle& style,
             std::int64_t below);

    /// Finds what `least` says. `offCosts`: what being off in a minute costs beside, rounded down
    /// to the unit of the other costs.
    void weigh(const std::map<int, std::int64_t>& offCosts);

    /// The end of the last stay; 0 if there is none.
    [[nodiscard]] int last() const { return last_; }
    /// In this minute and the next.
    [[nodiscard]] bool staysEmpty(int minute) const
    {
        return minute + 1 < last_ && !taken_[index(minute)] && !taken_[index(minute + 1)];
    }
    /// Temperatures that a minute may begin with, as far as what is in and what follows goes.
    [[nodiscard]] std::int64_t leastAt(int minute) const { return least_[index(minute)]; }
    [[nodiscard]] std::int64_t mostAt(int minute) const { return most_[index(minute)]; }
    /// Whether nothing distinguishes a minute from the next one, nor that from the one after.
    [[nodiscard]] bool isAsNext(int minute) const;
    /// Whether some stay has begun before and ends after.
    [[nodiscard]] bool isWithin(int minute) const { return within_[index(minute)]; }
    [[nodiscard]] bool mustBeOff(int minute) const { return off_[index(minute)]; }
    /// Whether what is in, and what follows, can be kept from this temperature.
    [[nodiscard]] bool allows(int minute, std::int64_t milliC) const
    {
        return least_[index(minute)] <= milliC && milliC <= most_[index(minute)];
    }
    /// The lowest and the highest setting at which the oven may be on in this minute.
    [[nodiscard]] std::pair<int, int> settingsAt(int minute) const;
    /// What minutes on, and switching on, cost at least from here to the last stay's end; `on`: the
    /// oven is on in the minute before; `heated`: while it is empty, it does not cool to the
    /// surroundings.
    [[nodiscard]] std::int64_t least(int minute, std::int64_t milliC, bool on, bool heated) const;

private:
    /// The least temperature from which each cost is enough, from cost `first` on; the last one
    /// goes for all costs above.
    struct Levels
    {
        std::int64_t first = 0;
        std::vector<std::int64_t> milliC;

        friend bool operator==(const Levels&, const Levels&) = default;
    };
    using FourLevels = std::array<Levels, 4>; // heated · 2 + on

    [[nodiscard]] static std::size_t index(int minute) { return static_cast<std::size_t>(minute); }
    [[nodiscard]] static std::int64_t at(const Levels& levels, std::int64_t cost);
    void readStays(const std::vector<OvenStay>& stays);
    void lookBack();
    [[nodiscard]] Levels before(int minute, const FourLevels& after, bool on, bool heated) const;
    [[nodiscard]] std::int64_t ifOff(int minute, std::int64_t needed, bool heated) const;
    [[nodiscard]] std::int64_t ifOn(int minute, std::int64_t needed) const;

    Oven oven_;
    std::int64_t unit_;      // of costs, all of which are so many of it
    OvenProgramStyle style_; // in units
    std::int64_t below_;     // in units
    std::int64_t coldest_;   // that the oven can ever be, in thousandths of a degree
    std::int64_t hottest_;
    int last_ = 0;
    std::map<int, std::int64_t> offCosts_; // in units
    std::vector<bool> taken_;              // by minute
    std::vector<bool> off_;
    std::vector<bool> within_;
    std::vector<std::int64_t> least_; // by the moment at which a minute begins
    std::vector<std::int64_t> most_;
    std::vector<FourLevels> rows_;
    std::vector<std::size_t> rowOf_; // by moment
};

} // namespace suppertide
