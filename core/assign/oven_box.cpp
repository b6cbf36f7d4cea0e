#include "core/assign/oven_box.h"

#include <algorithm>
#include <cstddef>
#include <optional>
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

/// Walks through the stretches from the last to the first.
class Walk
{
public:
    Walk(const Oven& oven, const SettingLevels& levels) : oven_(oven), levels_(levels) {}

    /// `room`: below which costs to come matter in each stretch, and before the first.
    [[nodiscard]] std::int64_t cost(const std::vector<OvenStretch>& stretches, std::size_t count,
                                    const std::vector<std::int64_t>& room) const
    {
        const OvenStretch& last = stretches[count - 1];
        Moment here{levels_.atEnd(last.low), last.high};
        for (std::size_t i = count; i-- > 0;) {
            here = through(stretches[i], std::move(here), room[i]);
        }
        const std::int64_t longBefore = ovenForgets(oven_);
        const OvenStretch empty{
            -SettingLevels::unbounded, SettingLevels::unbounded, false, {}, longBefore, longBefore};
        here = through(empty, std::move(here), room[0]);
        return levels_.least(here.row, std::int64_t{oven_.startC} * 1000);
    }

private:
    [[nodiscard]] Moment before(const OvenStretch& stretch, const std::vector<int>& preferred,
                                const Moment& after, std::int64_t room) const
    {
        const std::int64_t high = std::min(stretch.high, after.high + oven_.coolMilliCPerMin);
        return {levels_.before({stretch.low, high, after.high, stretch.off, preferred}, after.row,
                               room),
                high};
    }
    void takeBetter(std::optional<Moment>& best, const Moment& other) const
    {
        if (!best) {
            best = other;
            return;
        }
        levels_.takeBetter(best->row, other.row);
        best->high = std::max(best->high, other.high);
    }
    [[nodiscard]] Moment through(const OvenStretch& stretch, Moment here, std::int64_t room) const
    {
        here.high = std::min(here.high, stretch.high);
        SettingLevels::narrow(here.row, stretch.low, here.high);
        std::optional<Moment> best;
        if (stretch.least <= 0) {
            best = here;
        }
        for (std::int64_t length = 1; length <= stretch.most; ++length) {
            const bool begins = length >= stretch.least && !stretch.preferred.empty();
            if (begins) {
                takeBetter(best, before(stretch, stretch.preferred, here, room));
            }
            if (length == stretch.most && begins) {
                break;
            }
            Moment earlier = before(stretch, {}, here, room);
            if (length >= stretch.least && !begins) {
                takeBetter(best, earlier);
            }
            const bool stays = earlier.high == here.high && earlier.row == here.row;
            here = std::move(earlier);
            if (stays && length >= stretch.least) {
                break;
            }
        }
        return *std::move(best);
    }

    const Oven& oven_;
    const SettingLevels& levels_;
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

} // namespace

BoxCost leastCostInBox(const Oven& oven, const OvenProgramStyle& style,
                       const std::vector<OvenStretch>& stretches, std::int64_t below)
{
    if (!SettingLevels::suits(oven)) {
        return {};
    }
    const OvenProgramStyle plainStyle = heatOnly(style);
    const SettingLevels plain(oven, {}, plainStyle, below, 0);
    const Walk plainWalk(oven, plain);
    const Preferences preferences = preferencesOf(stretches);
    const std::vector<std::int64_t> settings =
        SettingLevels::leastUpTo(oven, preferences.inOrder, style);
    const auto settingsUpTo = [&](std::size_t count) {
        return count == 0 ? 0 : settings[count - 1];
    };
    // What comes before a stretch leaves less for what follows.
    std::vector<std::int64_t> room(stretches.size(), below);
    for (std::size_t i = 1; i < stretches.size(); ++i) {
        const std::int64_t heat = plainWalk.cost(stretches, i, room);
        room[i] = std::max<std::int64_t>(
            0, std::min(room[i - 1], below - heat - settingsUpTo(preferences.upTo[i])));
    }
    const std::int64_t heat = plainWalk.cost(stretches, stretches.size(), room);
    const std::int64_t apart = heat + settingsUpTo(preferences.inOrder.size());
    if (apart >= below || (style.preferC == 0 && style.change == 0)) {
        return {std::min(apart, below), plain.work()};
    }
    const SettingLevels levels(oven, preferences.stays, style, below, heat);
    const std::int64_t cost = Walk(oven, levels).cost(stretches, stretches.size(), room);
    return {std::min(below, std::max(apart, cost)), plain.work() + levels.work()};
}

} // namespace suppertide
