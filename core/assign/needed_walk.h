// NeededWalk: through a stretch of an oven's box from its end to its beginning, minute by minute:
// which temperatures are needed earlier, given those needed later.
#pragma once

#include <algorithm>
#include <cstdint>
#include <functional>
#include <utility>
#include <vector>

#include "core/assign/oven_box.h"
#include "core/assign/setting_levels.h"

namespace suppertide {

class NeededWalk
{
public:
    /// A moment, and the highest temperature that it may have for the sake of what follows.
    struct Moment
    {
        SettingLevels::Row row;
        std::int64_t high = 0;
    };
    /// How long a stretch is, or that long and longer.
    struct Length
    {
        std::int64_t minutes = 0;
        bool orLonger = false;
    };

    /// Both must outlive this. `mostSteps`: minutes after which it ends.
    NeededWalk(const Oven& oven, const SettingLevels& levels, std::int64_t mostSteps)
        : oven_(&oven), levels_(&levels), mostSteps_(mostSteps)
    {}

    [[nodiscard]] Moment atEnd(const OvenStretch& last) const
    {
        return {levels_->atEnd(last.low), last.high};
    }
    /// Tells of each length that the stretch may have, and of the moment at its beginning then,
    /// until it is told to stop (false), or nothing will do. Costs to come from `room` on do not
    /// matter. `eachCounts`: of longer ones that are no different, too.
    template <typename Emit>
    void through(const OvenStretch& stretch, const StretchLengths& lengths, Moment here,
                 std::int64_t room, bool eachCounts, const Emit& emit)
    {
        here.high = std::min(here.high, stretch.high);
        SettingLevels::narrow(here.row, stretch.low, here.high);
        if (!SettingLevels::isAny(here.row)) {
            return;
        }
        if (lengths.least <= 0 && lengths.most >= 0 && !emit(Length{0, false}, here)) {
            return;
        }
        for (std::int64_t length = 1; length <= lengths.most && !isTooLong(); ++length) {
            const bool ends = length >= lengths.least;
            const bool begins = ends && !stretch.preferred.empty();
            if (begins && length == lengths.most) {
                emit(Length{length, false}, before(stretch, stretch.preferred, here, room));
                return;
            }
            Moment earlier = before(stretch, {}, here, room);
            const bool stays = earlier.high == here.high && earlier.row == here.row;
            const bool isLast = ends && stays && !eachCounts;
            const Length found{length, isLast};
            if (begins ? !emit(found, before(stretch, stretch.preferred, here, room))
                       : ends && !emit(found, earlier)) {
                return;
            }
            if (isLast || !SettingLevels::isAny(earlier.row)) {
                return;
            }
            here = std::move(earlier);
        }
    }
    /// A moment at the end of a stretch, and how long the stretch is then.
    struct End
    {
        std::int64_t minutes = 0;
        const Moment* moment = nullptr;
    };
    /// Whether the moment can be met on the way: it lets the stretch be as hot as any.
    [[nodiscard]] static bool canJoin(const OvenStretch& stretch, const Moment& moment)
    {
        return moment.high >= stretch.high;
    }
    /// One walk for several ends, from the latest on, that meets the others on its way: the best of
    /// what is needed at the beginning.
    [[nodiscard]] Moment together(const OvenStretch& stretch, std::vector<End> ends,
                                  std::int64_t room)
    {
        std::ranges::stable_sort(ends, std::greater{}, &End::minutes);
        Moment here;
        std::int64_t left = ends.front().minutes;
        for (auto end = ends.begin(); left >= 0 && !isTooLong(); --left) {
            for (; end != ends.end() && end->minutes == left; ++end) {
                Moment joining{end->moment->row, stretch.high};
                SettingLevels::narrow(joining.row, stretch.low, joining.high);
                if (end == ends.begin()) {
                    here = std::move(joining);
                } else {
                    takeBetter(here, joining);
                }
            }
            if (left > 0) {
                here =
                    before(stretch, left == 1 ? stretch.preferred : std::vector<int>{}, here, room);
            }
        }
        return here;
    }
    /// Whichever of the two is better.
    void takeBetter(Moment& one, const Moment& other) const
    {
        levels_->takeBetter(one.row, other.row);
        one.high = std::max(one.high, other.high);
    }
    /// Not all may have been told of.
    [[nodiscard]] bool isTooLong() const { return steps_ > mostSteps_; }

private:
    [[nodiscard]] Moment before(const OvenStretch& stretch, const std::vector<int>& preferred,
                                const Moment& after, std::int64_t room)
    {
        ++steps_;
        const std::int64_t high = std::min(stretch.high, after.high + oven_->coolMilliCPerMin);
        return {levels_->before({stretch.low, high, after.high, stretch.off, preferred}, after.row,
                                room),
                high};
    }

    const Oven* oven_;
    const SettingLevels* levels_;
    std::int64_t mostSteps_;
    std::int64_t steps_ = 0;
};

} // namespace suppertide
