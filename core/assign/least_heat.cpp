#include "core/assign/least_heat.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

#include "core/assign/closed_up.h"

namespace suppertide {

namespace {

/// Far outside any temperature, yet safe to add ramps to.
constexpr std::int64_t unbounded = std::int64_t{1} << 50;
constexpr std::size_t mostRemembered = 50'000;

std::int64_t milli(int degrees)
{
    return std::int64_t{degrees} * 1000;
}

std::int64_t minutesFor(std::int64_t change, std::int64_t rate)
{
    return (change + rate - 1) / rate;
}

} // namespace

LeastHeat::LeastHeat(const Oven& oven, std::int64_t most)
    : oven_(oven), most_(std::max<std::int64_t>(1, most)), ambient_(milli(oven.ambientC)),
      coldest_(milli(std::min({oven.minC, oven.startC, oven.ambientC}))),
      hottest_(milli(std::max({oven.maxC, oven.startC, oven.ambientC}))),
      toHeat_(minutesFor(hottest_ - coldest_, oven.heatMilliCPerMin) + 1),
      toCool_(minutesFor(hottest_ - coldest_, oven.coolMilliCPerMin) + 1)
{}

std::int64_t LeastHeat::minutesOn(std::vector<OvenStay> stays)
{
    stays = closedUp(std::move(stays), Minutes{toCool_ + toHeat_ + 1}).stays;
    std::vector<std::int64_t> key;
    key.reserve(stays.size() * 6);
    for (const OvenStay& stay : stays) {
        key.insert(key.end(),
                   {minuteOf(stay.during.start), minuteOf(stay.during.end), stay.off ? 1 : 0,
                    isOnAtStart(stay) ? 1 : 0, stay.acceptLow, stay.acceptHigh});
    }
    if (const auto known = known_.find(key); known != known_.end()) {
        return known->second;
    }
    if (known_.size() >= mostRemembered) {
        known_.clear();
    }
    const std::int64_t minutes = minutesOn(stays, milli(oven_.startC));
    return known_.emplace(std::move(key), minutes).first->second;
}

std::int64_t LeastHeat::minutesOn(const std::vector<OvenStay>& stays, std::int64_t milliC)
{
    readStays(stays);
    lookBack();
    needed_.assign(1, moments_.back().least);
    first_ = 0;
    for (std::size_t at = moments_.size() - 1; at-- > 0;) {
        stepBack(moments_[at], moments_[at + 1]);
    }
    const auto enough =
        std::ranges::find_if(needed_, [&](std::int64_t needed) { return needed <= milliC; });
    return enough == needed_.end() ? most_ : std::min(most_, first_ + (enough - needed_.begin()));
}

void LeastHeat::readStays(const std::vector<OvenStay>& stays)
{
    std::int64_t last = 0;
    for (const OvenStay& stay : stays) {
        last = std::max<std::int64_t>(last, minuteOf(stay.during.end));
    }
    moments_.assign(static_cast<std::size_t>(last) + 1, {-unbounded, unbounded});
    for (const OvenStay& stay : stays) {
        const auto begin = static_cast<std::size_t>(minuteOf(stay.during.start));
        const auto end = static_cast<std::size_t>(minuteOf(stay.during.end));
        for (std::size_t at = begin; at <= end; ++at) {
            Moment& moment = moments_[at];
            moment.least = std::max(moment.least, milli(stay.acceptLow));
            moment.most = std::min(moment.most, milli(stay.acceptHigh));
            moment.taken = moment.taken || at < end;
            moment.off = moment.off || (at < end && stay.off);
        }
        moments_[begin].on = moments_[begin].on || isOnAtStart(stay);
    }
    for (Moment& moment : moments_) {
        moment.on = moment.on && !moment.off;
    }
}

/// What each moment must allow for the sake of those after it: a minute warms by no more than the
/// heating rate and cools by no more than the cooling rate.
void LeastHeat::lookBack()
{
    for (std::size_t at = moments_.size() - 1; at-- > 0;) {
        Moment& here = moments_[at];
        const Moment& next = moments_[at + 1];
        std::int64_t needed = next.least - oven_.heatMilliCPerMin;
        if (here.off && next.least > ambient_) {
            needed = next.least + oven_.coolMilliCPerMin;
        }
        here.least = std::max(here.least, needed);
        here.most = std::min(here.most, next.most + oven_.coolMilliCPerMin);
        if (here.least <= coldest_) {
            here.least = -unbounded;
        }
        if (here.most >= hottest_) {
            here.most = unbounded;
        }
    }
}

bool LeastHeat::isOnAtStart(const OvenStay& stay) const
{
    return onFrom_ && stay.prefer && !stay.off &&
           std::abs(*stay.prefer - oven_.ambientC) >= *onFrom_;
}

std::int64_t LeastHeat::ifOff(const Moment& here, const Moment& next, std::int64_t needed) const
{
    if (needed > next.most || here.on) {
        return unbounded;
    }
    return needed > ambient_ ? needed + oven_.coolMilliCPerMin : -unbounded;
}

std::int64_t LeastHeat::ifOn(const Moment& here, const Moment& next, std::int64_t needed) const
{
    if (needed > next.most || here.off) {
        return unbounded;
    }
    // Hotter than any setting it only cools.
    return needed > milli(oven_.maxC) ? needed + oven_.coolMilliCPerMin
                                      : std::max(-unbounded, needed - oven_.heatMilliCPerMin);
}

void LeastHeat::stepBack(const Moment& here, const Moment& next)
{
    const std::int64_t floor = here.least <= coldest_ ? -unbounded : here.least;
    const std::int64_t highest = std::min(here.most, hottest_);
    const std::size_t last = needed_.size() - 1;
    before_.clear();
    std::int64_t first = first_;
    for (std::size_t more = 0; more <= last + 1; ++more) {
        const std::int64_t off = ifOff(here, next, needed_[std::min(more, last)]);
        const std::int64_t on = more == 0 ? unbounded : ifOn(here, next, needed_[more - 1]);
        std::int64_t level = std::max(floor, std::min(off, on));
        if (level > highest) {
            first += before_.empty() ? 1 : 0;
            continue;
        }
        level = level <= coldest_ ? -unbounded : level;
        before_.push_back(level);
        if (level == floor) { // more minutes do no more
            break;
        }
    }
    if (before_.empty()) {
        before_.push_back(unbounded);
    }
    first_ = first;
    std::swap(needed_, before_);
}

} // namespace suppertide
