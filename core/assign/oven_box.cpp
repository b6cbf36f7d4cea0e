#include "core/assign/oven_box.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <iterator>
#include <map>
#include <optional>
#include <span>
#include <utility>

#include "core/assign/closed_up.h"

namespace suppertide {

namespace {

using Row = SettingLevels::Row;

/// A moment, and the highest temperature that it may have for the sake of what follows.
struct Moment
{
    Row row;
    std::int64_t high = 0;
};

/// Walks through the stretches from the last to the first. For stays of known length it keeps apart
/// how long they have lasted, two at a time at most; of others the stretches count each by itself.
class Walk
{
public:
    Walk(const Oven& oven, const SettingLevels& levels) : oven_(oven), levels_(levels) {}

    /// `room`: below which costs to come matter in each stretch, and before the first. Absent: too
    /// much to look at.
    [[nodiscard]] std::optional<std::int64_t> cost(std::span<const OvenStretch> stretches,
                                                   const std::vector<OvenSpan>& spans,
                                                   const std::vector<std::int64_t>& room)
    {
        stretches_ = stretches;
        steps_ = 0;
        Strands here{{{0, 0}, {levels_.atEnd(stretches.back().low), stretches.back().high}}};
        for (std::size_t i = stretches.size(); i-- > 0;) {
            enter(spans, i);
            here = through(i, here, room[i]);
            if (steps_ > mostSteps) {
                return std::nullopt;
            }
            leave(i);
        }
        if (here.empty()) { // no lengths go together
            return SettingLevels::plenty;
        }
        const std::int64_t longBefore = ovenForgets(oven_);
        const OvenStretch empty{
            -SettingLevels::unbounded, SettingLevels::unbounded, false, {}, longBefore, longBefore};
        Strands start;
        walk(empty, {longBefore, longBefore}, here.begin()->second, room[0],
             [&](auto, auto moment) { takeBetter(start, {}, std::move(moment)); });
        if (start.empty()) { // it took too long
            return std::nullopt;
        }
        return levels_.least(start.begin()->second.row, std::int64_t{oven_.startC} * 1000);
    }

private:
    static constexpr std::int64_t mostSteps = 8'000;
    /// By how long the stays in the two places have lasted.
    using Lasted = std::array<std::int64_t, 2>;
    using Strands = std::map<Lasted, Moment>;
    struct Lengths
    {
        std::int64_t least = 0;
        std::int64_t most = 0;
    };

    void enter(const std::vector<OvenSpan>& spans, std::size_t stretch)
    {
        for (const OvenSpan& span : spans) {
            const auto free = std::ranges::find(places_, nullptr);
            if (span.last == stretch && span.first < stretch && free != places_.end()) {
                *free = &span;
            }
        }
    }
    void leave(std::size_t stretch)
    {
        for (const OvenSpan*& place : places_) {
            place = place != nullptr && place->first == stretch ? nullptr : place;
        }
    }
    /// How long the stretch may be, given how long the stays have lasted after it.
    [[nodiscard]] Lengths lengths(std::size_t stretch, const Lasted& lasted) const
    {
        Lengths result{stretches_[stretch].least, stretches_[stretch].most};
        for (std::size_t k = 0; k < places_.size(); ++k) {
            if (places_[k] != nullptr) {
                std::int64_t least = places_[k]->minutes - lasted[k];
                std::int64_t most = least;
                for (std::size_t i = places_[k]->first; i < stretch; ++i) {
                    least -= stretches_[i].most;
                    most -= stretches_[i].least;
                }
                result = {std::max(result.least, least), std::min(result.most, most)};
            }
        }
        return result;
    }
    [[nodiscard]] Strands through(std::size_t i, const Strands& after, std::int64_t room)
    {
        Strands result;
        const auto goesOn = [&](const OvenSpan* place) {
            return place != nullptr && place->first < i;
        };
        for (const auto& [lasted, moment] : after) {
            const auto emit = [&, &soFar = lasted](std::int64_t length, Moment earlier) {
                Lasted now{0, 0};
                for (std::size_t k = 0; k < now.size(); ++k) {
                    now[k] = goesOn(places_[k]) ? soFar[k] + length : 0;
                }
                takeBetter(result, now, std::move(earlier));
            };
            walk(stretches_[i], lengths(i, lasted), moment, room, emit,
                 std::ranges::any_of(places_, goesOn));
            if (steps_ > mostSteps) {
                break;
            }
        }
        return result;
    }
    [[nodiscard]] Moment before(const OvenStretch& stretch, const std::vector<int>& preferred,
                                const Moment& after, std::int64_t room)
    {
        ++steps_;
        const std::int64_t high = std::min(stretch.high, after.high + oven_.coolMilliCPerMin);
        return {levels_.before({stretch.low, high, after.high, stretch.off, preferred}, after.row,
                               room),
                high};
    }
    void takeBetter(Strands& strands, const Lasted& lasted, Moment other) const
    {
        const auto [best, isNew] = strands.try_emplace(lasted, other);
        if (!isNew) {
            levels_.takeBetter(best->second.row, other.row);
            best->second.high = std::max(best->second.high, other.high);
        }
    }
    /// Tells of each length that the stretch may have, and of the moment at its beginning then;
    /// unless each counts, not of longer ones that are no different.
    template <typename Emit>
    void walk(const OvenStretch& stretch, const Lengths& lengths, Moment here, std::int64_t room,
              const Emit& emit, bool eachCounts = false)
    {
        here.high = std::min(here.high, stretch.high);
        SettingLevels::narrow(here.row, stretch.low, here.high);
        if (lengths.least <= 0 && lengths.most >= 0) {
            emit(0, here);
        }
        for (std::int64_t length = 1; length <= lengths.most && steps_ <= mostSteps; ++length) {
            const bool begins = length >= lengths.least && !stretch.preferred.empty();
            if (begins) {
                emit(length, before(stretch, stretch.preferred, here, room));
            }
            if (length == lengths.most && begins) {
                break;
            }
            Moment earlier = before(stretch, {}, here, room);
            if (length >= lengths.least && !begins) {
                emit(length, earlier);
            }
            const bool stays = earlier.high == here.high && earlier.row == here.row;
            here = std::move(earlier);
            if (stays && length >= lengths.least && !eachCounts) {
                break;
            }
        }
    }

    const Oven& oven_;
    const SettingLevels& levels_;
    std::span<const OvenStretch> stretches_;
    std::array<const OvenSpan*, 2> places_{};
    std::int64_t steps_ = 0;
};

/// The same oven if settings were free.
OvenProgramStyle heatOnly(OvenProgramStyle style)
{
    style.preferC = 0;
    style.change = 0;
    return style;
}

/// What is preferred, by stretch; and the stays, as far as settings go.
struct Preferences
{
    std::vector<int> inOrder;
    std::vector<std::size_t> upTo; // by stretch: how many begin before it
    std::vector<OvenStay> stays;
};

Preferences preferencesOf(const std::vector<OvenStretch>& stretches)
{
    Preferences result;
    for (const OvenStretch& stretch : stretches) {
        result.upTo.push_back(result.inOrder.size());
        OvenStay stay;
        stay.acceptHigh =
            static_cast<int>(std::clamp<std::int64_t>(stretch.high / 1000, -1, 10'000));
        result.stays.push_back(stay);
        for (const int preferred : stretch.preferred) {
            const auto at = static_cast<std::int64_t>(result.inOrder.size());
            result.inOrder.push_back(preferred);
            stay.prefer = preferred;
            stay.during = interval(at, at + 1);
            result.stays.push_back(stay);
        }
    }
    return result;
}

/// Minutes on; hardly ever do heat and settings together cost so much more than each by itself.
constexpr std::int64_t mostByBoth = 30;
/// What is left is looked at before each third stretch; that takes a look at all earlier ones.
constexpr std::size_t roomEvery = 3;

std::vector<OvenSpan> spansWithin(const std::vector<OvenSpan>& spans, std::size_t stretches)
{
    std::vector<OvenSpan> result;
    std::ranges::copy_if(spans, std::back_inserter(result),
                         [&](const OvenSpan& span) { return span.last < stretches; });
    return result;
}

} // namespace

BoxCost leastCostInBox(const Oven& oven, const OvenProgramStyle& style, const OvenBox& box,
                       std::int64_t below)
{
    if (!SettingLevels::suits(oven)) {
        return {};
    }
    const OvenProgramStyle plainStyle = heatOnly(style);
    const SettingLevels plain(oven, {}, plainStyle, below, 0);
    const Preferences preferences = preferencesOf(box.stretches);
    const std::vector<std::int64_t> settings =
        SettingLevels::leastUpTo(oven, preferences.inOrder, style);
    const auto settingsUpTo = [&](std::size_t count) {
        return count == 0 ? 0 : settings[count - 1];
    };
    const std::span<const OvenStretch> all(box.stretches);
    // What comes before a stretch leaves less for what follows.
    std::vector<std::int64_t> room(all.size(), below);
    for (std::size_t i = 1; i < all.size(); ++i) {
        room[i] = room[i - 1];
        if (i % roomEvery != 0) {
            continue;
        }
        const std::int64_t heat =
            Walk(oven, plain).cost(all.first(i), spansWithin(box.spans, i), room).value_or(0);
        room[i] = std::max<std::int64_t>(
            0, std::min(room[i], below - heat - settingsUpTo(preferences.upTo[i])));
    }
    const auto leastOf = [&](const SettingLevels& levels) {
        if (!box.spans.empty()) {
            if (const auto cost = Walk(oven, levels).cost(all, box.spans, room)) {
                return *cost;
            }
        }
        return Walk(oven, levels).cost(all, {}, room).value_or(0);
    };
    const std::int64_t heat = leastOf(plain);
    const std::int64_t apart = std::min(below, heat) + settingsUpTo(preferences.inOrder.size());
    const bool isFar = below - apart > mostByBoth * std::max<std::int64_t>(1, style.onMinute);
    if (apart >= below || isFar || (style.preferC == 0 && style.change == 0)) {
        return {std::min(apart, below), plain.work()};
    }
    const SettingLevels levels(oven, preferences.stays, style, below, heat);
    const std::int64_t cost = leastOf(levels);
    return {std::min(below, std::max(apart, cost)), plain.work() + levels.work()};
}

} // namespace suppertide
