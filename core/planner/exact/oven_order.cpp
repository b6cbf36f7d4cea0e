#include "core/planner/exact/oven_order.h"

#include <algorithm>
#include <array>
#include <limits>
#include <utility>

namespace suppertide::exact {

namespace {

using engine::Bound;
using engine::Literals;
using engine::Trail;

constexpr std::int64_t mostOn = 20'000; // minutes
constexpr std::int64_t mostCost = 1'000'000'000;
constexpr std::int64_t longest = 2'000; // minutes of a stay that is looked at
constexpr std::size_t none = std::numeric_limits<std::size_t>::max();

std::int64_t milli(int degrees)
{
    return std::int64_t{degrees} * 1000;
}

std::int64_t toCoolAndHeat(const Oven& oven)
{
    const std::int64_t range = milli(oven.maxC - oven.ambientC);
    return std::max<std::int64_t>(0, range / oven.coolMilliCPerMin + range / oven.heatMilliCPerMin +
                                         2);
}

} // namespace

void beOnWhereItPays(LeastHeat& heat, const OvenProgramStyle& style)
{
    if (style.preferC > 0) {
        heat.beOnAtStarts(static_cast<int>((style.onMinute + style.preferC - 1) / style.preferC));
    }
}

OvenOrder::OvenOrder(const std::vector<Oven>& ovens, const std::vector<PossibleStay>& stays,
                     const OvenProgramStyle& style,
                     std::shared_ptr<const StartDifferences> differences)
    : ovens_(ovens), stays_(stays), style_(style), differences_(std::move(differences))
{
    style_.switchOnWithin = 0; // it is counted with changes of setting (band_changes.h)
    for (const Oven& oven : ovens_) {
        forgets_ = std::max(forgets_, toCoolAndHeat(oven));
        shelves_ = std::max(shelves_, oven.shelves);
        heats_.emplace_back(oven, mostOn);
        beOnWhereItPays(heats_.back(), style);
    }
}

bool OvenOrder::canMeet(std::size_t one, std::size_t other) const
{
    const PossibleStay& a = stays_[one];
    const PossibleStay& b = stays_[other];
    return a.shelves + b.shelves <= shelves_ && a.stay.acceptLow <= b.stay.acceptHigh &&
           b.stay.acceptLow <= a.stay.acceptHigh &&
           (a.mode.empty() || b.mode.empty() || a.mode == b.mode);
}

/// In the cheapest oven that is as hot as it may be when the stay begins.
std::int64_t OvenOrder::costWhileIn(std::size_t stay)
{
    std::int64_t cost = mostCost;
    for (std::size_t oven = 0; oven < ovens_.size(); ++oven) {
        cost = std::min(cost, heatFor(oven, stay)
                                  .least(static_cast<int>(toCoolAndHeat(ovens_[oven])),
                                         milli(stays_[stay].stay.acceptHigh), true, false));
    }
    return cost;
}

/// Those that ask for most first, as long as none can be in together with another.
std::vector<std::size_t> OvenOrder::chosenOf(const std::vector<std::size_t>& inside)
{
    std::vector<std::size_t> lookedAt = inside;
    std::erase_if(lookedAt, [&](std::size_t i) {
        return stays_[i].length <= 0 || stays_[i].length > longest;
    });
    std::ranges::stable_sort(lookedAt, std::greater{}, [&](std::size_t i) {
        return stays_[i].stay.off ? 0 : stays_[i].stay.acceptLow;
    });
    if (style_.countsSwitching()) {
        std::ranges::stable_sort(lookedAt, std::greater{},
                                 [&](std::size_t i) { return costWhileIn(i); });
    }
    std::vector<std::size_t> result;
    for (const std::size_t i : lookedAt) {
        if (result.size() < most &&
            std::ranges::none_of(result, [&](std::size_t j) { return canMeet(i, j); })) {
            result.push_back(i);
        }
    }
    return result;
}

/// At the end of a stay.
std::int64_t OvenOrder::hottestAfter(std::size_t oven, std::size_t stay) const
{
    const std::int64_t hottest = milli(stays_[stay].stay.acceptHigh);
    if (!stays_[stay].stay.off) {
        return hottest;
    }
    const std::int64_t cooled = hottest - ovens_[oven].coolMilliCPerMin * stays_[stay].length;
    return std::max(milli(ovens_[oven].ambientC), cooled);
}

const OvenHeat& OvenOrder::heatFor(std::size_t oven, std::size_t stay)
{
    const auto known = heatFor_.find({oven, stay});
    if (known != heatFor_.end()) {
        return known->second;
    }
    const std::int64_t at = toCoolAndHeat(ovens_[oven]);
    OvenStay late = stays_[stay].stay;
    late.during = interval(at, at + stays_[stay].length);
    OvenHeat heat(ovens_[oven], {late}, style_, mostCost);
    heat.weigh({});
    return heatFor_.emplace(std::pair(oven, stay), std::move(heat)).first->second;
}

const std::vector<std::int64_t>& OvenOrder::costsBySwitching(std::size_t oven, std::size_t before,
                                                             std::size_t after)
{
    const PairOfStays key{oven, before, after};
    if (const auto known = bySwitching_.find(key); known != bySwitching_.end()) {
        return known->second;
    }
    const Oven& kind = ovens_[oven];
    const OvenHeat& heat = heatFor(oven, after);
    const auto begins = static_cast<std::size_t>(toCoolAndHeat(kind));
    std::vector<std::int64_t> costs(begins + 1, mostCost);
    const auto from = [&](std::size_t gap) {
        const auto minute = static_cast<int>(begins - gap);
        return before == none ? heat.least(minute, milli(kind.startC), false, false)
                              : heat.least(minute, hottestAfter(oven, before),
                                           !stays_[before].stay.off, false);
    };
    // After so long nothing tells what was in before; the oven may have been on for any other.
    costs.back() = before == none
                       ? from(begins)
                       : heat.least(0, milli(std::max(kind.maxC, kind.startC)), true, false);
    for (std::size_t gap = begins; gap-- > 0;) {
        costs[gap] = std::min(costs[gap + 1], from(gap));
    }
    return bySwitching_.emplace(key, std::move(costs)).first->second;
}

std::int64_t OvenOrder::costBetween(std::size_t oven, std::size_t before, std::size_t after,
                                    std::int64_t gap)
{
    if (!style_.countsSwitching()) {
        return costOfMinutes(oven, before, after, gap);
    }
    const std::vector<std::int64_t>& costs = costsBySwitching(oven, before, after);
    const auto shown = std::clamp<std::int64_t>(gap, 0, std::ssize(costs) - 1);
    const std::int64_t cost = costs[static_cast<std::size_t>(shown)];
    return cost < mostCost ? cost : 0;
}

std::int64_t OvenOrder::costOfMinutes(std::size_t oven, std::size_t before, std::size_t after,
                                      std::int64_t gap)
{
    const Oven& kind = ovens_[oven];
    const std::int64_t toCool = toCoolAndHeat(kind);
    const std::int64_t shown = std::clamp<std::int64_t>(gap, 0, toCool);
    const auto key = std::vector<std::int64_t>{
        static_cast<std::int64_t>(oven), before == none ? -1 : static_cast<std::int64_t>(before),
        static_cast<std::int64_t>(after), shown};
    if (const auto known = between_.find(key); known != between_.end()) {
        return known->second;
    }
    OvenStay stay = stays_[after].stay;
    std::int64_t minutes = 0;
    if (before == none) {
        // An oven that starts warm may be used at once.
        const std::int64_t at = kind.startC > kind.ambientC ? 0 : toCool;
        stay.during = interval(at, at + stays_[after].length);
        minutes = heats_[oven].minutesOn({stay}, milli(kind.startC));
    } else {
        stay.during = interval(shown, shown + stays_[after].length);
        minutes = heats_[oven].minutesOn({stay}, hottestAfter(oven, before));
    }
    const std::int64_t cost = minutes < mostOn ? style_.onMinute * minutes : 0;
    return between_.emplace(key, cost).first->second;
}

std::int64_t OvenOrder::leastBetween(std::size_t before, std::size_t after, std::int64_t gap)
{
    std::int64_t least = mostCost;
    for (std::size_t oven = 0; oven < ovens_.size(); ++oven) {
        least = std::min(least, costBetween(oven, before, after, gap));
    }
    return least;
}

bool OvenOrder::knowsDifferences() const
{
    return differences_ && std::ranges::all_of(chosen_, [&](std::size_t i) {
               return differences_->knows(stays_[i].to, stays_[chosen_.front()].from);
           });
}

std::int64_t OvenOrder::gap(std::size_t before, std::size_t after, const Trail& trail) const
{
    const engine::Term& end = stays_[before].to;
    const engine::Term& start = stays_[after].from;
    const bool known = differences_ && differences_->knows(end, start);
    const Bound least =
        known ? differences_->least(trail, end, start) : trail.least(start) - trail.most(end);
    const Bound furthest =
        known ? differences_->most(trail, end, start) : trail.most(start) - trail.least(end);
    return furthest < 0 ? never : std::clamp<std::int64_t>(least, 0, forgets_);
}

void OvenOrder::readGaps(const Trail& trail)
{
    const std::size_t count = chosen_.size();
    gaps_.assign(count * count, 0);
    for (std::size_t i = 0; i < count; ++i) {
        for (std::size_t j = 0; j < count; ++j) {
            gaps_[i * count + j] = i == j ? 0 : gap(chosen_[i], chosen_[j], trail);
        }
    }
}

Literals OvenOrder::byDifferences() const
{
    Literals because;
    const std::size_t count = chosen_.size();
    for (std::size_t i = 0; i < count; ++i) {
        for (std::size_t j = 0; j < count; ++j) {
            const std::int64_t gap = gaps_[i * count + j];
            const engine::Term& end = stays_[chosen_[i]].to;
            const engine::Term& start = stays_[chosen_[j]].from;
            if (i != j && gap == never) {
                differences_->sayAtMost(end, start, -1, because);
            } else if (i != j && gap > 0) {
                differences_->sayAtLeast(end, start, gap, because);
            }
        }
    }
    return because;
}

/// By when each stay that comes before one long after it ends, by when the other begins; and which
/// cannot come first.
Literals OvenOrder::byTheClock(const Trail& trail) const
{
    Literals because;
    const std::size_t count = chosen_.size();
    for (std::size_t i = 0; i < count; ++i) {
        const PossibleStay& stay = stays_[chosen_[i]];
        bool ends = false;   // by its latest end
        bool begins = false; // from its earliest start
        bool late = false;   // its earliest end
        bool early = false;  // its latest start
        for (std::size_t j = 0; j < count; ++j) {
            if (j != i) {
                ends = ends || gaps_[i * count + j] > 0;
                begins = begins || gaps_[j * count + i] > 0;
                late = late || gaps_[i * count + j] == never;
                early = early || gaps_[j * count + i] == never;
            }
        }
        if (ends) {
            because.push_back(atMost(stay.to, trail.most(stay.to)));
        }
        if (begins) {
            because.push_back(atLeast(stay.from, trail.least(stay.from)));
        }
        if (late) {
            because.push_back(atLeast(stay.to, trail.least(stay.to)));
        }
        if (early) {
            because.push_back(atMost(stay.from, trail.most(stay.from)));
        }
    }
    return because;
}

std::int64_t OvenOrder::ofOneOven()
{
    const std::size_t count = chosen_.size();
    const std::size_t sets = std::size_t{1} << count;
    std::vector<std::int64_t> best(sets * count, mostCost);
    std::vector<std::int64_t> step(count * count, mostCost);
    for (std::size_t i = 0; i < count; ++i) {
        best[(std::size_t{1} << i) * count + i] = leastBetween(none, chosen_[i], 0);
        for (std::size_t j = 0; j < count; ++j) {
            if (i != j && gaps_[i * count + j] != never) {
                step[i * count + j] = leastBetween(chosen_[i], chosen_[j], gaps_[i * count + j]);
            }
        }
    }
    for (std::size_t set = 1; set < sets; ++set) {
        for (std::size_t i = 0; i < count; ++i) {
            const std::int64_t here = best[set * count + i];
            for (std::size_t j = 0; here < mostCost && j < count; ++j) {
                const std::size_t more = set | (std::size_t{1} << j);
                if (more != set) {
                    std::int64_t& there = best[more * count + j];
                    there = std::min(there, here + step[i * count + j]);
                }
            }
        }
    }
    const auto last = best.end() - static_cast<std::ptrdiff_t>(count);
    const std::int64_t least = *std::min_element(last, best.end());
    return least < mostCost ? least : 0;
}

std::int64_t OvenOrder::ofSeveral()
{
    const std::size_t count = chosen_.size();
    std::int64_t sum = 0;
    std::int64_t first = mostCost;
    for (std::size_t j = 0; j < count; ++j) {
        const std::int64_t fromCold = leastBetween(none, chosen_[j], 0);
        std::int64_t least = fromCold;
        for (std::size_t i = 0; i < count; ++i) {
            if (i != j && gaps_[i * count + j] != never) {
                least = std::min(least, leastBetween(chosen_[i], chosen_[j], gaps_[i * count + j]));
            }
        }
        sum += least;
        first = std::min(first, fromCold - least); // one of them comes first of all
    }
    return sum + first;
}

std::int64_t OvenOrder::least(const std::vector<std::size_t>& inside, const Trail& trail)
{
    if (inside != inside_) {
        inside_ = inside;
        chosen_ = chosenOf(inside);
        lastGaps_.clear();
        ++looks_;
    }
    if (chosen_.empty()) {
        return 0;
    }
    readGaps(trail);
    if (gaps_ != lastGaps_) {
        lastGaps_ = gaps_;
        ++looks_;
        cost_ = ovens_.size() == 1 ? ofOneOven() : ofSeveral();
    }
    return cost_;
}

Literals OvenOrder::because(const Trail& trail) const
{
    return knowsDifferences() ? byDifferences() : byTheClock(trail);
}

} // namespace suppertide::exact
