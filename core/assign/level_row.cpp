#include "core/assign/level_row.h"

namespace suppertide {

LevelRow::LevelRow(std::int64_t first, std::size_t costs, std::vector<Group>& groups)
    : first_(first), costs_(costs)
{
    for (const Group& group : groups) {
        const bool isNone = &group == &groups.back();
        if (groups_ > 0 && !isNone &&
            std::equal(group.levels, group.levels + costs, groups[groups_ - 1].levels)) {
            groups[groups_ - 1].end = group.end;
        } else {
            groups[groups_++] = group;
        }
    }
    levels_.assign(placeOf(groups_) - lane, unbounded);
    for (std::size_t i = 0; i < groups_; ++i) {
        levels_[i] = static_cast<Level>(groups[i].end);
        Level* place = levels_.data() + placeOf(i);
        std::copy_n(groups[i].levels, costs, place);
        std::fill(place + costs, place + lanes() * lane, groups[i].levels[costs - 1]);
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
    const std::int64_t end = std::max(one.end(), two.end());
    const auto costs = static_cast<std::size_t>(end - first);
    std::vector<Level> levels((one.groups_ + two.groups_) * costs);
    std::vector<Group> groups;
    Level* place = levels.data();
    std::size_t i = 0;
    std::size_t j = 0;
    while (i < one.groups_ && j < two.groups_) {
        groups.push_back({std::min(one.endOf(i), two.endOf(j)), place});
        for (std::int64_t cost = first; cost < end; ++cost) {
            *place++ = std::min(one.at(i, cost), two.at(j, cost));
        }
        const std::size_t last = groups.back().end;
        i += one.endOf(i) == last ? std::size_t{1} : 0;
        j += two.endOf(j) == last ? std::size_t{1} : 0;
    }
    return {first, costs, groups};
}

} // namespace suppertide
