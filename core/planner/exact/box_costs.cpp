#include "core/planner/exact/box_costs.h"

#include <algorithm>
#include <cstddef>
#include <utility>

#include "core/assign/box_widening.h"

namespace suppertide::exact {

namespace {

constexpr std::size_t mostRemembered = 40'000;

std::vector<std::int64_t> shapeOf(const OvenBox& box)
{
    std::vector<std::int64_t> shape;
    shape.reserve(box.stretches.size() * 5 + box.spans.size() * 3);
    for (const OvenStretch& stretch : box.stretches) {
        shape.insert(shape.end(), {stretch.low, stretch.high, stretch.off ? 1 : 0,
                                   static_cast<std::int64_t>(stretch.preferred.size())});
        shape.insert(shape.end(), stretch.preferred.begin(), stretch.preferred.end());
    }
    for (const OvenSpan& span : box.spans) {
        shape.insert(shape.end(), {static_cast<std::int64_t>(span.first),
                                   static_cast<std::int64_t>(span.last), span.minutes});
    }
    return shape;
}

std::vector<std::int64_t> lengthsOf(const OvenBox& box)
{
    std::vector<std::int64_t> lengths;
    lengths.reserve(box.stretches.size() * 2);
    for (const OvenStretch& stretch : box.stretches) {
        lengths.push_back(stretch.least);
        lengths.push_back(stretch.most);
    }
    return lengths;
}

} // namespace

std::optional<std::int64_t> BoxCosts::known(const OvenBox& box, std::int64_t below) const
{
    const auto ofShape = known_.find(shapeOf(box));
    if (ofShape == known_.end()) {
        return std::nullopt;
    }
    const auto found = ofShape->second.find(lengthsOf(box));
    if (found == ofShape->second.end()) {
        return std::nullopt;
    }
    const Known& cost = found->second;
    const bool isEnough = below <= cost.below || cost.least < cost.below;
    return isEnough ? std::optional{std::min(below, cost.least)} : std::nullopt;
}

std::int64_t BoxCosts::least(const OvenBox& box, std::int64_t below)
{
    if (const auto found = known(box, below)) {
        return *found;
    }
    if (count_ >= mostRemembered) {
        known_.clear();
        count_ = 0;
    }
    const BoxCost cost = leastCostInBox(oven_, style_, box, below);
    work_ += cost.work;
    known_[shapeOf(box)][lengthsOf(box)] = {below, cost.least};
    ++count_;
    return cost.least;
}

OvenBox BoxCosts::widened(const OvenBox& box, const std::vector<StretchLengths>& open,
                          std::int64_t least)
{
    WidenedBox found = widenedBox(oven_, style_, box, open, least);
    work_ += found.work;
    return std::move(found.box);
}

} // namespace suppertide::exact
