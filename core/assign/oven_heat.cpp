#include "core/assign/oven_heat.h"

#include <algorithm>
#include <numeric>

#include "core/assign/oven_segments.h"

namespace suppertide {

namespace {

/// Far outside any temperature, yet safe to add ramps to.
constexpr std::int64_t unbounded = std::int64_t{1} << 50;

/// Costs from here on are not told apart; far above what an evening's oven costs, and there is a
/// level of each.
constexpr std::int64_t mostUnits = 20'000;
/// Nor does it matter how much more than this switching on costs while something is in: it saves no
/// more minutes.
constexpr std::int64_t mostWithin = 40;

OvenProgramStyle inUnits(OvenProgramStyle style, std::int64_t unit)
{
    style.onMinute /= unit;
    style.switchOn /= unit;
    style.switchOnWithin = std::min(style.switchOnWithin / unit, mostWithin);
    return style;
}

std::int64_t milli(int degrees)
{
    return std::int64_t{degrees} * 1000;
}

} // namespace

OvenHeat::OvenHeat(const Oven& oven, const std::vector<OvenStay>& stays,
                   const OvenProgramStyle& style, std::int64_t below)
    : oven_(oven), unit_(std::max<std::int64_t>(1, std::gcd(style.onMinute, style.switchOn))),
      style_(inUnits(style, unit_)), below_(std::min((below + unit_ - 1) / unit_, mostUnits)),
      coldest_(milli(std::min({oven.minC, oven.startC, oven.ambientC}))),
      hottest_(milli(std::max({oven.maxC, oven.startC, oven.ambientC})))
{
    for (const OvenStay& stay : stays) {
        last_ = std::max(last_, static_cast<int>(minuteOf(stay.during.end)));
    }
    readStays(stays);
    lookBack();
}

void OvenHeat::weigh(const std::map<int, std::int64_t>& offCosts)
{
    for (const auto& [minute, cost] : offCosts) {
        offCosts_.emplace(minute, cost / unit_);
    }
    rowOf_.assign(index(last_) + 1, 0);
    const Levels enough{0, {least_.back()}};
    rows_.push_back({enough, enough, enough, enough});
    for (int minute = last_; minute-- > 0;) {
        if (isAsNext(minute) && rowOf_[index(minute + 1)] == rowOf_[index(minute + 2)]) {
            rowOf_[index(minute)] = rowOf_[index(minute + 1)];
            continue;
        }
        const FourLevels& after = rows_[rowOf_[index(minute + 1)]];
        FourLevels here;
        for (std::size_t i = 0; i < here.size(); ++i) {
            const bool on = i % 2 == 1;
            const bool heated = i >= 2;
            if (heated && !staysEmpty(minute)) {
                here[i] = here[i - 2];
            } else if (on && !style_.countsSwitching()) {
                here[i] = here[i - 1];
            } else {
                here[i] = before(minute, after, on, heated);
            }
        }
        if (!(here == after)) {
            rows_.push_back(std::move(here));
        }
        rowOf_[index(minute)] = rows_.size() - 1;
    }
}

void OvenHeat::readStays(const std::vector<OvenStay>& stays)
{
    const std::size_t moments = index(last_) + 1;
    taken_.assign(moments, false);
    off_.assign(moments, false);
    within_.assign(moments, false);
    least_.assign(moments, -unbounded);
    most_.assign(moments, unbounded);
    for (const OvenStay& stay : stays) {
        const auto begin = index(static_cast<int>(minuteOf(stay.during.start)));
        const auto end = index(static_cast<int>(minuteOf(stay.during.end)));
        for (std::size_t at = begin; at <= end; ++at) {
            least_[at] = std::max(least_[at], milli(stay.acceptLow));
            most_[at] = std::min(most_[at], milli(stay.acceptHigh));
            if (at < end) {
                taken_[at] = true;
                off_[at] = off_[at] || stay.off;
                within_[at] = within_[at] || at > begin;
            }
        }
    }
}

/// What each moment must allow for the sake of those after it: a minute warms by no more than the
/// heating rate and cools by no more than the cooling rate.
void OvenHeat::lookBack()
{
    for (std::size_t at = index(last_); at-- > 0;) {
        const std::int64_t rises = off_[at] ? 0 : oven_.heatMilliCPerMin;
        std::int64_t needed = least_[at + 1] - rises;
        if (off_[at] && least_[at + 1] > milli(oven_.ambientC)) {
            needed = least_[at + 1] + oven_.coolMilliCPerMin;
        } else if (off_[at]) {
            // Surroundings that are warmer than the oven warm it.
            needed = least_[at + 1] - oven_.heatMilliCPerMin;
        }
        least_[at] = std::max(least_[at], needed);
        most_[at] = std::min(most_[at], most_[at + 1] + oven_.coolMilliCPerMin);
        if (least_[at] <= coldest_) {
            least_[at] = -unbounded;
        }
        if (most_[at] >= hottest_) {
            most_[at] = unbounded;
        }
    }
}

bool OvenHeat::isAsNext(int minute) const
{
    const std::size_t at = index(minute);
    return minute + 2 <= last_ && staysEmpty(minute) && staysEmpty(minute + 1) &&
           least_[at] == least_[at + 1] && least_[at] == least_[at + 2] &&
           most_[at] == most_[at + 1] && most_[at] == most_[at + 2];
}

std::pair<int, int> OvenHeat::settingsAt(int minute) const
{
    const std::size_t at = index(minute);
    std::pair<int, int> range{oven_.minC, oven_.maxC};
    // Even from the coldest that is allowed a higher setting would make it too hot.
    if (least_[at] + oven_.heatMilliCPerMin > most_[at + 1]) {
        range.second = std::min(range.second, static_cast<int>(most_[at + 1] / 1000));
    }
    if (most_[at] - oven_.coolMilliCPerMin < least_[at + 1]) {
        range.first = std::max(range.first, static_cast<int>((least_[at + 1] + 999) / 1000));
    }
    return range;
}

std::int64_t OvenHeat::at(const Levels& levels, std::int64_t cost)
{
    if (cost < levels.first) {
        return unbounded;
    }
    const auto place = static_cast<std::size_t>(cost - levels.first);
    return levels.milliC[std::min(place, levels.milliC.size() - 1)];
}

/// The least temperature from which a minute off leads to the one needed.
std::int64_t OvenHeat::ifOff(int minute, std::int64_t needed, bool heated) const
{
    if (needed > most_[index(minute + 1)]) {
        return unbounded;
    }
    const bool cools = needed > milli(oven_.ambientC) || (heated && staysEmpty(minute));
    return cools && needed > -unbounded ? needed + oven_.coolMilliCPerMin : -unbounded;
}

std::int64_t OvenHeat::ifOn(int minute, std::int64_t needed) const
{
    if (needed > most_[index(minute + 1)] || off_[index(minute)]) {
        return unbounded;
    }
    // Hotter than any setting it only cools.
    return needed > milli(oven_.maxC) ? needed + oven_.coolMilliCPerMin
                                      : std::max(-unbounded, needed - oven_.heatMilliCPerMin);
}

OvenHeat::Levels OvenHeat::before(int minute, const FourLevels& after, bool on, bool heated) const
{
    // What begins anew with the next stay is no longer heated.
    const std::size_t same = heated && staysEmpty(minute) ? 2 : 0;
    const std::size_t hot = staysEmpty(minute) ? 2 : 0;
    const Levels& off = after[same];
    const Levels& stillOn = after[hot + 1];
    const std::int64_t price =
        style_.onMinute +
        (on ? 0 : style_.switchOn + (isWithin(minute) ? style_.switchOnWithin : 0));
    const auto offCost = offCosts_.find(minute);
    const std::int64_t offPrice = offCost == offCosts_.end() ? 0 : offCost->second;
    const std::int64_t floor = least_[index(minute)];
    Levels result;
    std::int64_t cost = std::min(off.first + offPrice, stillOn.first + price);
    const auto endOf = [&](const Levels& levels, std::int64_t plus) {
        const bool reachable = levels.milliC.front() < unbounded;
        return reachable ? levels.first + plus + static_cast<std::int64_t>(levels.milliC.size())
                         : 0;
    };
    const std::int64_t end = std::max(endOf(off, offPrice), endOf(stillOn, price));
    result.first = below_;
    for (; cost < std::min(below_, end); ++cost) {
        const std::int64_t level =
            std::max(floor, std::min(ifOff(minute, at(off, cost - offPrice), heated),
                                     ifOn(minute, at(stillOn, cost - price))));
        if (level > std::min(most_[index(minute)], hottest_)) {
            continue;
        }
        if (result.milliC.empty()) {
            result.first = cost;
        }
        result.milliC.push_back(level <= coldest_ ? -unbounded : level);
        if (level == floor || level <= coldest_) {
            break;
        }
    }
    if (result.milliC.empty()) {
        result.milliC.push_back(unbounded);
    }
    return result;
}

std::int64_t OvenHeat::least(int minute, std::int64_t milliC, bool on, bool heated) const
{
    const std::size_t which = (heated ? 2U : 0U) + (on ? 1U : 0U);
    const Levels& levels = rows_[rowOf_[index(minute)]][which];
    const auto place = std::partition_point(levels.milliC.begin(), levels.milliC.end(),
                                            [&](std::int64_t level) { return level > milliC; });
    return unit_ *
           (place == levels.milliC.end() ? below_ : levels.first + (place - levels.milliC.begin()));
}

} // namespace suppertide
