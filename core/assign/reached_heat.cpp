#include "core/assign/reached_heat.h"

#include <algorithm>

namespace suppertide {

namespace {

constexpr std::size_t lane = LevelLanes::lane;

std::int64_t endOf(const ReachedHeat::Row& row)
{
    return row.first + static_cast<std::int64_t>(row.costs);
}

/// `count` levels from a cost on.
void copyFrom(const ReachedHeat::Row& row, std::int64_t cost, std::size_t count,
              std::vector<LevelLanes::Level>& to)
{
    to.resize(count);
    for (LevelLanes::Level& level : to) {
        const std::int64_t place = std::min(cost, endOf(row) - 1) - row.first;
        level =
            place < 0 ? -LevelLanes::unbounded : row.levels[lane + static_cast<std::size_t>(place)];
        ++cost;
    }
}

} // namespace

ReachedHeat::ReachedHeat(const Oven& oven, const OvenProgramStyle& style)
    : oven_(oven), onMinute_(style.onMinute)
{}

/// Of levels that rise, without those at either end that say nothing.
ReachedHeat::Row ReachedHeat::rowOf(std::int64_t first, const Level* levels, std::size_t costs)
{
    std::size_t begin = 0;
    while (begin + 1 < costs && levels[begin] == never) {
        ++begin;
    }
    while (costs > begin + 1 && levels[costs - 1] == levels[costs - 2]) {
        --costs;
    }
    Row row{first + static_cast<std::int64_t>(begin), costs - begin, {}};
    row.levels.assign((LevelLanes::countFor(row.costs) + 2) * lane, levels[costs - 1]);
    std::fill_n(row.levels.begin(), lane, never);
    std::copy(levels + begin, levels + costs, row.levels.begin() + lane);
    return row;
}

ReachedHeat::Row ReachedHeat::atStart() const
{
    const Level start = oven_.startC * 1000;
    return rowOf(0, &start, 1);
}

ReachedHeat::Row ReachedHeat::after(const AskedOfMinute& minute, const Row& before,
                                    std::int64_t below) const
{
    if (before.isUnknown()) {
        return {};
    }
    const std::int64_t end = std::min(below, endOf(before) + onMinute_);
    if (end <= before.first || !isAny(before)) {
        return rowOf(below, &never, 1);
    }
    const auto costs = static_cast<std::size_t>(end - before.first);
    if (costs > mostCosts) {
        return {};
    }
    const std::size_t width = LevelLanes::countFor(costs) * lane;
    const bool isBlocked = minute.off || (minute.low + oven_.heatMilliCPerMin > minute.highNext &&
                                          std::int64_t{oven_.minC} * 1000 > minute.highNext);
    hottest_.assign(width, oven_.maxC * 1000);
    blocked_.assign(width, isBlocked ? never : LevelLanes::unbounded);
    found_.resize(width);
    const bool isInLanes = onMinute_ <= static_cast<std::int64_t>(lane);
    if (!isInLanes) {
        copyFrom(before, before.first, width, off_);
        copyFrom(before, before.first - onMinute_, width, on_);
    }
    const Level* here = before.levels.data() + lane;
    from_.assign(
        1, {isInLanes ? here : off_.data(), isInLanes ? here - onMinute_ : on_.data(), never});
    Level best = never;
    leadFrom({LevelLanes::levelOf(minute.low), LevelLanes::levelOf(minute.highNext),
              static_cast<Level>(oven_.heatMilliCPerMin),
              static_cast<Level>(oven_.coolMilliCPerMin), oven_.ambientC * 1000},
             from_, width, hottest_.data(), blocked_.data(), found_.data(), &best);
    work_ += static_cast<std::int64_t>(width);
    return rowOf(before.first, found_.data(), costs);
}

void ReachedHeat::narrow(Row& row, std::int64_t low, std::int64_t high)
{
    narrowReached(row.levels, low, high);
}

void ReachedHeat::takeBetter(Row& row, const Row& other)
{
    if (row.isUnknown() || other.isUnknown()) {
        row = {};
        return;
    }
    const std::int64_t first = std::min(row.first, other.first);
    const auto costs = static_cast<std::size_t>(std::max(endOf(row), endOf(other)) - first);
    std::vector<Level> one;
    std::vector<Level> two;
    copyFrom(row, first, costs, one);
    copyFrom(other, first, costs, two);
    std::ranges::transform(one, two, one.begin(), [](Level a, Level b) { return std::max(a, b); });
    row = rowOf(first, one.data(), costs);
}

bool ReachedHeat::isAny(const Row& row)
{
    return row.isUnknown() || row.levels.back() != never;
}

} // namespace suppertide
