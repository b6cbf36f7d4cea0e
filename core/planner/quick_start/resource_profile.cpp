#include "core/planner/quick_start/resource_profile.h"

#include <algorithm>
#include <limits>

namespace suppertide::quick_start {

namespace {

struct Taken
{
    const Entry* entry;
    Span span;
};

struct Peak
{
    Minute at = 0;
    std::int64_t load = 0;
};

std::int64_t loadAt(const std::vector<Taken>& taken, Minute at)
{
    std::int64_t load = 0;
    for (const Taken& one : taken) {
        load += one.span.begin <= at && at < one.span.end ? one.entry->amount : 0;
    }
    return load;
}

/// The first minute of the need at which most is taken.
Peak highest(const std::vector<Taken>& taken, const Span& need)
{
    Peak peak{need.begin, loadAt(taken, need.begin)};
    for (const Taken& one : taken) {
        if (one.span.begin > need.begin && one.span.begin < need.end) {
            const std::int64_t load = loadAt(taken, one.span.begin);
            if (load > peak.load || (load == peak.load && one.span.begin < peak.at)) {
                peak = {one.span.begin, load};
            }
        }
    }
    return peak;
}

/// How far the need must move to be clear of the overload at the peak.
Blockage blockageAt(const std::vector<Taken>& taken, const Need& need, Minute peak)
{
    Minute firstEnd = never;
    Minute lastBegin = -never;
    for (const Taken& one : taken) {
        if (one.span.begin <= peak && peak < one.span.end) {
            firstEnd = std::min(firstEnd, one.span.end);
            lastBegin = std::max(lastBegin, one.span.begin);
        }
    }
    Blockage result;
    if (need.endMoves && lastBegin > -never) {
        result.down = std::max<Minute>(1, need.span.end - lastBegin);
    }
    if (need.beginMoves && firstEnd < never) {
        result.up = std::max<Minute>(1, firstEnd - need.span.begin);
    }
    return result;
}

} // namespace

bool makeRoom(Trial& trial, const Resource& resource, const Need& need, std::int64_t capacity)
{
    if (need.amount > capacity) {
        return false;
    }
    std::vector<Taken> taken;
    const auto gather = [&] {
        taken.clear();
        trial.forEachDuring(resource, need.span, [&](const Entry& entry, const Span& span) {
            if (entry.amount > 0) {
                taken.push_back({&entry, span});
            }
        });
    };
    gather();
    while (!taken.empty()) {
        const Peak peak = highest(taken, need.span);
        if (peak.load + need.amount <= capacity) {
            return true;
        }
        const auto clear = [&](const Span& span) {
            return span.empty() || peak.at < span.begin || span.end <= peak.at;
        };
        const Taken* cheapest = nullptr;
        std::int64_t least = std::numeric_limits<std::int64_t>::max();
        for (const Taken& one : taken) {
            if (!trial.mayEject() || clear(one.span)) {
                continue;
            }
            const auto penalty = trial.reliefPenalty(*one.entry, clear);
            if (penalty && *penalty < least) {
                least = *penalty;
                cheapest = &one;
            }
        }
        if (cheapest == nullptr || !trial.relieve(*cheapest->entry, clear)) {
            trial.blockage.allow(blockageAt(taken, need, peak.at));
            return false;
        }
        gather();
    }
    return true;
}

} // namespace suppertide::quick_start
