#include "core/assign/level_row.h"

namespace suppertide {

LevelRow::LevelRow(std::int64_t first, std::size_t costs, const std::vector<std::size_t>& ends,
                   const Level* levels, std::size_t stride)
    : first_(first), costs_(costs)
{
    thread_local std::vector<std::size_t> kept; // room, so that none is asked for each time
    findDifferent(levels, ends.size() - 1, stride, costs, kept);
    kept.push_back(ends.size() - 1); // none so far
    groups_ = kept.size();
    levels_.resize(placeOf(groups_) - lane);
    for (std::size_t i = 0; i < groups_; ++i) {
        const std::size_t last = i + 1 < groups_ ? kept[i + 1] - 1 : kept[i];
        levels_[i] = static_cast<Level>(ends[last]);
        copyPadded(levels + kept[i] * stride, costs, lanes(), levels_.data() + placeOf(i) - lane);
    }
}

void LevelRow::narrow(Level low, Level high)
{
    for (std::size_t i = 0; i < groups_; ++i) {
        Level* place = levels_.data() + placeOf(i);
        for (std::size_t k = 0; k < lanes() * lane; ++k) {
            const Level level = std::max(place[k], low);
            place[k] = level > high ? unbounded : level;
        }
    }
}

LevelRow LevelRow::lower(const LevelRow& one, const LevelRow& two)
{
    if (one.isUnknown() || two.isUnknown()) {
        return {};
    }
    const std::int64_t first = std::min(one.first_, two.first_);
    const auto costs = static_cast<std::size_t>(std::max(one.end(), two.end()) - first);
    const auto later = static_cast<std::size_t>(std::max(one.first_, two.first_) - first);
    const std::size_t stride = LevelLanes::countFor(costs) * lane;
    std::vector<Level> levels((one.groups_ + two.groups_) * stride + lane);
    std::vector<std::size_t> ends;
    const auto write = [&](std::size_t i, std::size_t j) {
        Level* place = levels.data() + ends.size() * stride;
        if (later <= lane) {
            lowerOf(one.lanesOf(i, static_cast<std::size_t>(one.first_ - first)),
                    two.lanesOf(j, static_cast<std::size_t>(two.first_ - first)), stride / lane,
                    place);
        }
        for (std::size_t k = 0; k < costs && later > lane; ++k) {
            const std::int64_t cost = first + static_cast<std::int64_t>(k);
            place[k] = std::min(one.at(i, cost), two.at(j, cost));
        }
    };
    std::size_t i = 0;
    std::size_t j = 0;
    while (i < one.groups_ && j < two.groups_) {
        write(i, j);
        const std::size_t last = std::min(one.endOf(i), two.endOf(j));
        ends.push_back(last);
        i += one.endOf(i) == last ? std::size_t{1} : 0;
        j += two.endOf(j) == last ? std::size_t{1} : 0;
    }
    return {first, costs, ends, levels.data(), stride};
}

} // namespace suppertide
