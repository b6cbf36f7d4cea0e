#include "core/planner/exact/sure_stays.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace suppertide::exact {

namespace {

using engine::atLeast;
using engine::atMost;
using engine::Bound;
using engine::Literals;
using engine::Trail;

/// Minutes; before the first stay.
constexpr std::int64_t longBefore = 10'000;

void take(SureStays& sure, const OvenStay& stay, std::int64_t from, std::int64_t to,
          bool startIsKnown)
{
    sure.begun.push_back(stay);
    sure.begun.back().during = interval(from, to);
    sure.stays.push_back(sure.begun.back());
    sure.stays.back().prefer.reset();
    if (!startIsKnown) {
        sure.begun.back().prefer.reset();
    }
    sure.minutes += to - from;
}

/// To which one most of the others is sure.
std::size_t bestReference(const std::vector<PossibleStay>& stays,
                          const std::vector<std::size_t>& inside,
                          const StartDifferences& differences, const Trail& trail)
{
    std::size_t best = inside.front();
    std::int64_t most = -1;
    for (const std::size_t reference : inside) {
        const engine::Term& zero = stays[reference].from;
        std::int64_t minutes = 0;
        for (const std::size_t i : inside) {
            minutes += std::max<std::int64_t>(0, differences.least(trail, zero, stays[i].to) -
                                                     differences.most(trail, zero, stays[i].from));
        }
        if (minutes > most) {
            most = minutes;
            best = reference;
        }
    }
    return best;
}

/// What of a stay is sure, in minutes from the beginning of another.
struct Part
{
    const PossibleStay* stay;
    std::int64_t from;
    std::int64_t to;
    bool startIsKnown;
};

std::vector<Part> partsFrom(const engine::Term& zero, const std::vector<PossibleStay>& stays,
                            const std::vector<std::size_t>& inside,
                            const StartDifferences& differences, const Trail& trail, bool& allFixed)
{
    std::vector<Part> parts;
    for (const std::size_t i : inside) {
        const PossibleStay& stay = stays[i];
        const Bound from = differences.most(trail, zero, stay.from);
        const Bound to = differences.least(trail, zero, stay.to);
        const bool startIsKnown = differences.least(trail, zero, stay.from) == from;
        allFixed = allFixed && startIsKnown && differences.most(trail, zero, stay.to) == to;
        if (from < to) {
            parts.push_back({&stay, from, to, startIsKnown});
        }
    }
    std::ranges::sort(parts, {}, [](const Part& part) { return std::pair(part.from, part.to); });
    return parts;
}

/// Why the parts are where they are: to the first one of those that are not far from each other.
/// Without `forgets` all to `zero`.
void sayWhere(const std::vector<Part>& parts, const engine::Term& zero,
              const StartDifferences& differences, std::optional<std::int64_t> forgets,
              SureStays& sure)
{
    const engine::Term* reference = forgets ? &parts.front().stay->from : &zero;
    std::int64_t at = forgets ? parts.front().from : 0;
    const Part* last = &parts.front();
    for (const Part& part : parts) {
        const PossibleStay& stay = *part.stay;
        if (forgets && part.from - last->to >= *forgets) {
            differences.sayAtLeast(last->stay->to, stay.from, *forgets, sure.times);
            reference = &stay.from;
            at = part.from;
        }
        differences.sayAtMost(*reference, stay.from, part.from - at, sure.times);
        differences.sayAtLeast(*reference, stay.to, part.to - at, sure.times);
        if (part.startIsKnown) {
            differences.sayAtLeast(*reference, stay.from, part.from - at, sure.starts);
        }
        if (part.to > last->to) {
            last = &part;
        }
    }
}

} // namespace

SureStays sureByTheClock(const std::vector<PossibleStay>& stays,
                         const std::vector<std::size_t>& inside, const Trail& trail)
{
    SureStays sure;
    for (const std::size_t i : inside) {
        const PossibleStay& stay = stays[i];
        const Bound from = trail.most(stay.from);
        const Bound to = trail.least(stay.to);
        const bool startIsKnown = trail.least(stay.from) == from;
        sure.allFixed = sure.allFixed && startIsKnown && trail.most(stay.to) == to;
        if (from >= to) {
            continue;
        }
        take(sure, stay.stay, from, to, startIsKnown);
        if (startIsKnown) {
            sure.starts.push_back(atLeast(stay.from, from));
        }
        sure.times.push_back(atMost(stay.from, from));
        sure.times.push_back(atLeast(stay.to, to));
    }
    return sure;
}

SureStays sureToEachOther(const std::vector<PossibleStay>& stays,
                          const std::vector<std::size_t>& inside,
                          const StartDifferences& differences, std::int64_t forgets,
                          const Trail& trail)
{
    SureStays sure;
    if (inside.empty()) {
        return sure;
    }
    const engine::Term& zero = stays[bestReference(stays, inside, differences, trail)].from;
    const std::vector<Part> parts =
        partsFrom(zero, stays, inside, differences, trail, sure.allFixed);
    if (parts.empty()) {
        return sure;
    }
    for (const Part& part : parts) {
        const std::int64_t shift = longBefore - parts.front().from;
        take(sure, part.stay->stay, part.from + shift, part.to + shift, part.startIsKnown);
    }
    if (sure.allFixed) {
        sayWhere(parts, zero, differences, forgets, sure);
    }
    if (!sure.allFixed || !trail.holdsAll(sure.times) || !trail.holdsAll(sure.starts)) {
        sure.times.clear();
        sure.starts.clear();
        sayWhere(parts, zero, differences, std::nullopt, sure);
    }
    return sure;
}

} // namespace suppertide::exact
