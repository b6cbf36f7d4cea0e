#include "core/assign/oven_box.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <utility>

#include "core/assign/box_preferences.h"
#include "core/assign/closed_up.h"
#include "core/assign/grid_rows.h"
#include "core/assign/needed_walk.h"
#include "core/assign/reached_walk.h"
#include "core/assign/span_places.h"

namespace suppertide {

namespace {

/// Of the whole, given what is to come as the first stretch begins.
std::optional<std::int64_t> leastFromCold(const Oven& oven, const SettingLevels& levels,
                                          NeededWalk<const SettingLevels>& walk,
                                          const NeededWalk<const SettingLevels>::Moment& first,
                                          std::int64_t room)
{
    const std::int64_t longBefore = ovenForgets(oven);
    OvenStretch empty{-SettingLevels::unbounded, SettingLevels::unbounded};
    empty.least = longBefore;
    empty.most = longBefore;
    std::optional<SettingLevels::Row> start;
    walk.through(empty, {longBefore, longBefore}, first, room, false, [&](auto, const auto& begun) {
        start = begun.row;
        return true;
    });
    if (walk.isTooLong()) {
        return std::nullopt;
    }
    return start ? levels.least(*start, std::int64_t{oven.startC} * 1000) : SettingLevels::plenty;
}

std::optional<std::int64_t> leastFromCold(const Oven& /*oven*/, const GridRows& levels,
                                          const NeededWalk<GridRows>& /*walk*/,
                                          const NeededWalk<GridRows>::Moment& first,
                                          std::int64_t /*room*/)
{
    return levels.leastFromCold(first.row);
}

/// Walks through the stretches from the last to the first; costs to come from `room` on do not
/// matter in each stretch, and before the first. Absent: too much to look at.
template <typename Levels>
std::optional<std::int64_t>
leastCost(const Oven& oven, Levels& levels, const std::vector<OvenStretch>& stretches,
          const std::vector<OvenSpan>& spans, const std::vector<std::int64_t>& room)
{
    constexpr std::int64_t mostSteps = 8'000; // minutes
    using Walk = NeededWalk<Levels>;
    using Strands = std::map<SpanPlaces::Lasted, typename Walk::Moment>;
    const SpanPlaces places(spans, lengthsOf(stretches));
    Walk walk(oven, levels, mostSteps);
    const auto takeBetter = [&](Strands& strands, const SpanPlaces::Lasted& lasted,
                                const typename Walk::Moment& moment) {
        if (!levels.isAny(moment.row)) {
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
        std::map<SpanPlaces::Lasted, std::vector<typename Walk::End>> joined;
        for (const auto& [lasted, moment] : here) {
            const StretchLengths own{stretches[i].least, stretches[i].most};
            const StretchLengths lengths = places.lengthsBack(i, lasted, own);
            if (lengths.least == lengths.most && Walk::canJoin(stretches[i], moment)) {
                const SpanPlaces::Lasted now = places.back(i, lasted, lengths.least);
                joined[now].push_back({lengths.least, &moment});
                continue;
            }
            walk.through(stretches[i], lengths, moment, room[i], places.goesBack(i),
                         [&, &soFar = lasted](typename Walk::Length length,
                                              const typename Walk::Moment& begun) {
                             return takeBetter(earlier, places.back(i, soFar, length.minutes),
                                               begun);
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
    return leastFromCold(oven, levels, walk, here.begin()->second, room[0]);
}

/// The same with spans, if that is not too much to look at; 0 if neither way is easy.
template <typename Levels>
std::int64_t
leastCostOfAll(const Oven& oven, Levels& levels, const std::vector<OvenStretch>& stretches,
               const std::vector<OvenSpan>& spans, const std::vector<std::int64_t>& room)
{
    std::optional<std::int64_t> cost;
    if (!spans.empty()) {
        cost = leastCost(oven, levels, stretches, spans, room);
    }
    if (!cost) {
        cost = leastCost(oven, levels, stretches, {}, room);
    }
    return cost.value_or(0);
}

/// A stretch that may be of no length lets what is in begin with the next one.
std::vector<OvenStretch> surelyGoingOn(std::vector<OvenStretch> stretches)
{
    for (std::size_t i = 0; i < stretches.size(); ++i) {
        stretches[i].goesOn = stretches[i].goesOn && i > 0 && stretches[i - 1].least > 0;
    }
    return stretches;
}

/// Where switching on costs too.
BoxCost leastWithSwitching(const Oven& oven, const OvenProgramStyle& style, const OvenBox& box,
                           std::int64_t below)
{
    constexpr std::size_t costsAsWork = 4; // count as one level
    const BoxPreferences preferences = preferencesOf(box.stretches);
    const std::vector<std::int64_t> settings = leastForSettings(oven, preferences.inOrder, style);
    BoxCost result{std::min(below, settings.empty() ? 0 : settings.back()), 0};
    if (result.least >= below) {
        return result;
    }
    GridRows rows(oven, style, sharedColumns(oven, preferences.stays), below,
                  GridRows::Steps::WholeDegrees);
    if (!rows.isKnown()) {
        return result;
    }
    const std::vector<std::int64_t> room(box.stretches.size(), below);
    const std::int64_t cost =
        leastCostOfAll(oven, rows, surelyGoingOn(box.stretches), box.spans, room);
    result.least = std::max(result.least, std::min(below, cost));
    result.work = static_cast<std::int64_t>(rows.size() / costsAsWork);
    return result;
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
    if (style.countsSwitching()) {
        return leastWithSwitching(oven, style, box, below);
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
    const std::int64_t cost = leastCostOfAll(oven, levels, box.stretches, box.spans, room);
    result.least = std::min(below, std::max(apart, cost));
    result.work += levels.work();
    return result;
}

} // namespace suppertide
