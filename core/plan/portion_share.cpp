#include "core/plan/portion_share.h"

#include <algorithm>

#include "core/base/contracts.h"

namespace suppertide {

PortionShare::PortionShare(std::vector<PortionRange> ranges) : ranges_(std::move(ranges))
{
    std::erase_if(ranges_, [](const PortionRange& range) { return range.to <= range.from; });
    std::ranges::sort(ranges_, {}, &PortionRange::from);
}

Portions PortionShare::total() const
{
    Portions sum;
    for (const PortionRange& range : ranges_) {
        sum = sum + (range.to - range.from);
    }
    return sum;
}

PortionShare PortionShare::common(const PortionShare& other) const
{
    std::vector<PortionRange> both;
    for (const PortionRange& one : ranges_) {
        for (const PortionRange& two : other.ranges_) {
            both.push_back({std::max(one.from, two.from), std::min(one.to, two.to)});
        }
    }
    return PortionShare{std::move(both)};
}

std::vector<PortionShare> PortionShare::cut(const std::vector<Portions>& sizes) const
{
    std::vector<PortionShare> shares;
    auto range = ranges_.begin();
    Portions taken; // of *range
    for (const Portions& size : sizes) {
        std::vector<PortionRange> pieces;
        Portions left = size;
        while (left > Portions{0}) {
            expects(range != ranges_.end(), "no more cut off than there is");
            const Portions from = range->from + taken;
            const Portions to = std::min(from + left, range->to);
            pieces.push_back({from, to});
            left = left - (to - from);
            taken = to - range->from;
            if (to == range->to) {
                ++range;
                taken = Portions{0};
            }
        }
        shares.emplace_back(std::move(pieces));
    }
    return shares;
}

} // namespace suppertide
