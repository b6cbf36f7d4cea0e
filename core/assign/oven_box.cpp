#include "core/assign/oven_box.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <utility>

#include "core/assign/box_preferences.h"
#include "core/assign/closed_up.h"
#include "core/assign/needed_walk.h"
#include "core/assign/reached_walk.h"
#include "core/assign/span_places.h"

namespace suppertide {

namespace {

/// Walks through the stretches from the last to the first; costs to come from `room` on do not
/// matter in each stretch, and before the first. Absent: too much to look at.
std::optional<std::int64_t> leastCost(const Oven& oven, const SettingLevels& levels,
                                      const std::vector<OvenStretch>& stretches,
                                      const std::vector<OvenSpan>& spans,
                                      const std::vector<std::int64_t>& room)
{
    constexpr std::int64_t mostSteps = 8'000; // minutes
    using Strands = std::map<SpanPlaces::Lasted, NeededWalk::Moment>;
    const SpanPlaces places(spans, lengthsOf(stretches));
    NeededWalk walk(oven, levels, mostSteps);
    const auto takeBetter = [&](Strands& strands, const SpanPlaces::Lasted& lasted,
                                const NeededWalk::Moment& moment) {
        if (!SettingLevels::isAny(moment.row)) {
            return !walk.isTooLong();
        }
        const auto [best, isNew] = strands.try_emplace(lasted, moment);
        if (!isNew) {
            walk.takeBetter(best->second, moment);
        }
        return !walk.isTooLong();
    };
    Strands here{{{}, walk.atEnd(stretches.back())}};
    for (std::size_t i = stretches.size(); i-- > 0;) {
        Strands earlier;
        std::map<SpanPlaces::Lasted, std::vector<NeededWalk::End>> joined;
        for (const auto& [lasted, moment] : here) {
            const StretchLengths own{stretches[i].least, stretches[i].most};
            const StretchLengths lengths = places.lengthsBack(i, lasted, own);
            if (lengths.least == lengths.most && NeededWalk::canJoin(stretches[i], moment)) {
                const SpanPlaces::Lasted now = places.back(i, lasted, lengths.least);
                joined[now].push_back({lengths.least, &moment});
                continue;
            }
            walk.through(
                stretches[i], lengths, moment, room[i], places.goesBack(i),
                [&, &soFar = lasted](NeededWalk::Length length, const NeededWalk::Moment& begun) {
                    return takeBetter(earlier, places.back(i, soFar, length.minutes), begun);
                });
        }
        for (const auto& [lasted, ends] : joined) {
            takeBetter(earlier, lasted, walk.together(stretches[i], ends, room[i]));
        }
        if (walk.isTooLong()) {
            return std::nullopt;
        }
        here = std::move(earlier);
    }
    if (here.empty()) { // no lengths go together at less
        return SettingLevels::plenty;
    }
    const std::int64_t longBefore = ovenForgets(oven);
    const OvenStretch empty{
        -SettingLevels::unbounded, SettingLevels::unbounded, false, {}, longBefore, longBefore};
    Strands start;
    walk.through(empty, {longBefore, longBefore}, here.begin()->second, room[0], false,
                 [&](NeededWalk::Length, const NeededWalk::Moment& begun) {
                     return takeBetter(start, {}, begun);
                 });
    if (walk.isTooLong()) {
        return std::nullopt;
    }
    return start.empty()
               ? SettingLevels::plenty
               : levels.least(start.begin()->second.row, std::int64_t{oven.startC} * 1000);
}

/// From where on a brief look leaves it at heat and settings each by itself: mostly so many minutes
/// on and half a change are all that both together cost more.
std::int64_t mostByBoth(const OvenProgramStyle& style)
{
    constexpr std::int64_t minutesOn = 30;
    return minutesOn * std::max<std::int64_t>(1, style.onMinute) + style.change / 2;
}

} // namespace

std::vector<StretchLengths> lengthsOf(const std::vector<OvenStretch>& stretches)
{
    std::vector<StretchLengths> result;
    result.reserve(stretches.size());
    for (const OvenStretch& stretch : stretches) {
        result.push_back({stretch.least, stretch.most});
    }
    return result;
}

BoxCost leastCostInBox(const Oven& oven, const OvenProgramStyle& style, const OvenBox& box,
                       std::int64_t below, BoxLook look)
{
    BoxCost result;
    if (!SettingLevels::suits(oven)) {
        return result;
    }
    const BoxPreferences preferences = preferencesOf(box.stretches);
    const std::vector<std::int64_t> settings = leastForSettings(oven, preferences.inOrder, style);
    const auto settingsUpTo = [&](std::size_t count) {
        return count == 0 ? 0 : settings[count - 1];
    };
    const std::vector<std::int64_t> heats = leastHeatUpTo(oven, style, box, below, result.work);
    const std::int64_t heat = heats.empty() ? 0 : heats.back();
    const std::int64_t apart = std::min(below, heat) + settingsUpTo(preferences.inOrder.size());
    const bool isFar = look == BoxLook::Brief && below - apart > mostByBoth(style);
    result.least = std::min(apart, below);
    if (apart >= below || isFar) {
        return result;
    }
    // What comes before a stretch leaves less for what follows.
    std::vector<std::int64_t> room(box.stretches.size(), below);
    for (std::size_t i = 1; i < room.size() && !heats.empty(); ++i) {
        room[i] = std::clamp<std::int64_t>(below - heats[i] - settingsUpTo(preferences.upTo[i]), 0,
                                           room[i - 1]);
    }
    const SettingLevels levels(oven, preferences.stays, style, below, heat);
    std::optional<std::int64_t> cost;
    if (!box.spans.empty()) {
        cost = leastCost(oven, levels, box.stretches, box.spans, room);
    }
    if (!cost) {
        cost = leastCost(oven, levels, box.stretches, {}, room);
    }
    result.least = std::min(below, std::max(apart, cost.value_or(0)));
    result.work += levels.work();
    return result;
}

} // namespace suppertide
