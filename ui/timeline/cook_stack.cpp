#include "ui/timeline/cook_stack.h"

#include <algorithm>
#include <numeric>

namespace suppertide::ui {

namespace {

std::vector<std::size_t> longestFirst(std::span<const StackItem> items)
{
    std::vector<std::size_t> order(items.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return items[a].when.length() > items[b].when.length();
    });
    return order;
}

/// Percent of the items before `rank` in `order` that are under way at `time`.
int baseAt(std::span<const StackItem> items, std::span<const std::size_t> below, PlanTime time)
{
    int base = 0;
    for (const std::size_t index : below) {
        if (items[index].when.contains(time)) {
            base += items[index].percent;
        }
    }
    return base;
}

/// The minutes within `when` at which an item below begins or ends, and both ends of `when`.
std::vector<PlanTime> cuts(std::span<const StackItem> items, std::span<const std::size_t> below,
                           const Interval& when)
{
    std::vector<PlanTime> times{when.start, when.end};
    for (const std::size_t index : below) {
        for (const PlanTime time : {items[index].when.start, items[index].when.end}) {
            if (when.start < time && time < when.end) {
                times.push_back(time);
            }
        }
    }
    std::sort(times.begin(), times.end());
    times.erase(std::unique(times.begin(), times.end()), times.end());
    return times;
}

} // namespace

std::vector<StackPiece> stackUp(std::span<const StackItem> items)
{
    std::vector<StackPiece> pieces;
    std::vector<std::size_t> order = longestFirst(items);
    std::erase_if(order, [&](std::size_t index) {
        return items[index].percent <= 0 || items[index].when.empty();
    });
    for (std::size_t rank = 0; rank < order.size(); ++rank) {
        const std::size_t item = order[rank];
        const std::span<const std::size_t> below{order.data(), rank};
        const std::vector<PlanTime> times = cuts(items, below, items[item].when);
        const std::size_t first = pieces.size();
        for (std::size_t i = 0; i + 1 < times.size(); ++i) {
            const int base = baseAt(items, below, times[i]);
            if (pieces.size() > first && pieces.back().base == base) {
                pieces.back().when.end = times[i + 1];
            } else {
                pieces.push_back({item, {times[i], times[i + 1]}, base});
            }
        }
    }
    std::stable_sort(pieces.begin(), pieces.end(), [](const StackPiece& a, const StackPiece& b) {
        return a.item != b.item ? a.item < b.item : a.when.start < b.when.start;
    });
    return pieces;
}

} // namespace suppertide::ui
