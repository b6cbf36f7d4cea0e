// LeastHeat: how many minutes an oven must be on for the sake of the stays in it, whatever its
// program. Remembers what it has found, and takes for one what differs only in when it begins and
// in how long the oven stands empty and cold between.
//
//     accepts 180…200   |==========|
//     off               \  /\  /\  /     cools by 4 a minute, warms by 15
//     on           ////  \/  \/  \/
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "core/assign/oven_pairs.h"
#include "core/problem/problem.h"

namespace suppertide {

class LeastHeat
{
public:
    /// Minutes from `most` on are not told apart.
    LeastHeat(const Oven& oven, std::int64_t most);
    /// From now on the oven is on in the minute in which a stay begins that prefers a setting
    /// which is so many degrees or more from the surroundings.
    void beOnAtStarts(int degrees) { onFrom_ = degrees; }

    /// From the beginning, when the oven is as warm as it starts. Stays in any order.
    [[nodiscard]] std::int64_t minutesOn(std::vector<OvenStay> stays);
    /// From a first minute at which the oven is so warm, in thousandths of a degree.
    [[nodiscard]] std::int64_t minutesOn(const std::vector<OvenStay>& stays, std::int64_t milliC);

private:
    struct Moment
    {
        std::int64_t least; // that it may be, for the sake of what follows
        std::int64_t most;
        bool taken = false; // the minute that begins here
        bool off = false;
        bool on = false;
    };
    [[nodiscard]] bool isOnAtStart(const OvenStay& stay) const;
    void readStays(const std::vector<OvenStay>& stays);
    void lookBack();
    void stepBack(const Moment& here, const Moment& next);
    [[nodiscard]] std::int64_t ifOff(const Moment& here, const Moment& next,
                                     std::int64_t needed) const;
    [[nodiscard]] std::int64_t ifOn(const Moment& here, const Moment& next,
                                    std::int64_t needed) const;

    Oven oven_;
    std::int64_t most_;
    std::optional<int> onFrom_; // degrees
    std::int64_t ambient_;      // in thousandths of a degree, as all that follows
    std::int64_t coldest_;
    std::int64_t hottest_;
    std::int64_t toHeat_; // minutes, from the coldest to the hottest
    std::int64_t toCool_;
    std::vector<Moment> moments_;
    /// The least temperature from which so many minutes on do, from `first_` minutes on.
    std::vector<std::int64_t> needed_;
    std::int64_t first_ = 0;
    std::vector<std::int64_t> before_;
    std::map<std::vector<std::int64_t>, std::int64_t> known_;
};

} // namespace suppertide
