#include "core/planner/exact/one_setting.h"

#include <algorithm>
#include <cstdlib>
#include <limits>
#include <set>
#include <utility>

namespace suppertide::exact {

namespace {

constexpr std::int64_t mostOn = 20'000;

} // namespace

OneSetting::OneSetting(const Oven& oven, const std::vector<PossibleStay>& stays,
                       const OvenProgramStyle& style,
                       const std::shared_ptr<const StartDifferences>& differences)
    : oven_(oven), stays_(stays), style_(style)
{
    std::set<int> ends;
    for (const PossibleStay& stay : stays) {
        for (const int more : {0, 1, 2, 4, 8, 16}) {
            if (stay.stay.prefer && !stay.stay.off) {
                ends.insert(std::clamp(*stay.stay.prefer + more, oven.minC, oven.maxC));
            }
        }
    }
    ends.insert(oven.maxC);
    int coolest = oven.minC;
    for (const int hottest : ends) {
        Oven capped = oven;
        capped.maxC = hottest;
        Range range{coolest, hottest, LeastHeat(capped, mostOn),
                    OvenOrder({capped}, stays, style, differences)};
        beOnWhereItPays(range.heat, style);
        ranges_.push_back(std::move(range));
        coolest = hottest + 1;
    }
}

std::int64_t OneSetting::offPreferred(const std::vector<std::size_t>& inside, int setting) const
{
    std::int64_t sum = 0;
    for (const std::size_t i : inside) {
        const OvenStay& stay = stays_[i].stay;
        if (stay.prefer && !stay.off) {
            sum += style_.preferC * std::min(std::abs(setting - *stay.prefer),
                                             std::abs(oven_.ambientC - *stay.prefer));
        }
    }
    return sum;
}

std::int64_t OneSetting::least(const std::vector<std::size_t>& inside, std::int64_t cost,
                               const CostOf& costOf)
{
    std::vector<std::pair<std::int64_t, Range*>> byPreference;
    for (Range& range : ranges_) {
        // What is off the preferred ones bends at those alone, and each is an end of a range.
        byPreference.emplace_back(
            std::min(offPreferred(inside, range.coolest), offPreferred(inside, range.hottest)),
            &range);
    }
    std::ranges::stable_sort(byPreference, {}, &std::pair<std::int64_t, Range*>::first);
    std::int64_t best = std::numeric_limits<std::int64_t>::max();
    for (const auto& [off, range] : byPreference) {
        if (off + cost >= best) {
            break;
        }
        best = std::min(best, off + costOf(*range));
    }
    return best;
}

std::int64_t OneSetting::leastInOrder(const std::vector<std::size_t>& inside,
                                      const engine::Trail& trail, std::int64_t cost)
{
    return least(inside, cost, [&](Range& range) { return range.order.least(inside, trail); });
}

std::int64_t OneSetting::leastFor(const std::vector<std::size_t>& inside,
                                  const std::vector<OvenStay>& stays, std::int64_t cost)
{
    return least(inside, cost,
                 [&](Range& range) { return style_.onMinute * range.heat.minutesOn(stays); });
}

} // namespace suppertide::exact
