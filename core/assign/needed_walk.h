// NeededWalk: through a stretch of an oven's box from its end to its beginning, minute by minute:
// which temperatures are needed earlier, given those needed later. `Levels`: SettingLevels, or
// GridRows.
#pragma once

#include <algorithm>
#include <cstdint>
#include <functional>
#include <type_traits>
#include <utility>
#include <vector>

#include "core/assign/closed_up.h"
#include "core/assign/grid_rows.h"
#include "core/assign/oven_box.h"
#include "core/assign/setting_levels.h"

namespace suppertide {

template <typename Levels>
class NeededWalk
{
public:
    using Row = typename Levels::Row;
    /// A moment, and the highest temperature that it may have for the sake of what follows.
    struct Moment
    {
        Row row;
        std::int64_t high = 0;
    };
    /// How long a stretch is, or that long and longer.
    struct Length
    {
        std::int64_t minutes = 0;
        bool orLonger = false;
    };

    /// Both must outlive this. `mostSteps`: minutes after which it ends.
    NeededWalk(const Oven& oven, Levels& levels, std::int64_t mostSteps)
        : oven_(&oven), levels_(&levels), mostSteps_(mostSteps)
    {}

    [[nodiscard]] Moment atEnd(const OvenStretch& last) const
    {
        return {levels_->atEnd(last.low, last.high), last.high};
    }
    /// Tells of each length that the stretch may have, and of the moment at its beginning then,
    /// until it is told to stop (false), or nothing will do. Costs to come from `room` on do not
    /// matter. `eachCounts`: of longer ones that are no different, too.
    template <typename Emit>
    void through(const OvenStretch& stretch, const StretchLengths& lengths, Moment here,
                 std::int64_t room, bool eachCounts, const Emit& emit)
    {
        here.high = std::min(here.high, stretch.high);
        levels_->narrow(here.row, stretch.low, here.high);
        if (!levels_->isAny(here.row)) {
            return;
        }
        if constexpr (std::is_same_v<Levels, GridRows>) {
            if (!stretch.holds() && !eachCounts) {
                throughEmpty(stretch, lengths, std::move(here), room, emit);
                return;
            }
        }
        if (lengths.least <= 0 && lengths.most >= 0 && !emit(Length{0, false}, here)) {
            return;
        }
        const std::int64_t sure =
            std::max<std::int64_t>(0, std::min(lengths.least, lengths.most) - 1);
        here = earlierBy(stretch, sure, std::move(here), room);
        for (std::int64_t length = sure + 1; length <= lengths.most && !isTooLong(); ++length) {
            const bool ends = length >= lengths.least;
            const bool begins = ends && beginsOtherwise(stretch);
            if (begins && length == lengths.most) {
                emit(Length{length, false}, before(stretch, true, here, room));
                return;
            }
            Moment earlier = before(stretch, false, here, room);
            const bool stays = earlier.high == here.high && levels_->isSame(earlier.row, here.row);
            const bool isLast = ends && stays && !eachCounts;
            const Length found{length, isLast};
            if (begins ? !emit(found, before(stretch, true, here, room))
                       : ends && !emit(found, earlier)) {
                return;
            }
            if (isLast || !levels_->isAny(earlier.row)) {
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
        for (auto end = ends.begin(); end != ends.end() && !isTooLong(); ++end) {
            // The first minute of the stretch is the last to be walked.
            here = walked(stretch, left, end->minutes, std::move(here), room);
            left = end->minutes;
            Moment joining{end->moment->row, stretch.high};
            levels_->narrow(joining.row, stretch.low, joining.high);
            if (end == ends.begin()) {
                here = std::move(joining);
            } else {
                takeBetter(here, joining);
            }
        }
        return walked(stretch, left, 0, std::move(here), room);
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
    /// What is best of all lengths, at once.
    template <typename Emit>
    void throughEmpty(const OvenStretch& stretch, const StretchLengths& lengths, Moment here,
                      std::int64_t room, const Emit& emit)
    {
        if (lengths.most < lengths.least) {
            return;
        }
        std::int64_t length = 0;
        if (lengths.least >= ovenForgets(*oven_)) {
            ++steps_;
            here = {levels_->beforeLong(here.row, lengths.least, room), SettingLevels::unbounded};
            length = lengths.least;
        }
        for (; length < lengths.most && levels_->isAny(here.row) && !isTooLong(); ++length) {
            Moment earlier = before(stretch, false, here, room);
            if (length >= lengths.least) {
                takeBetter(earlier, here);
                if (levels_->isSame(earlier.row, here.row)) {
                    break;
                }
            }
            here = std::move(earlier);
        }
        emit(Length{std::min(length, lengths.most), true}, here);
    }
    /// So many minutes earlier, none of them the first.
    [[nodiscard]] Moment earlierBy(const OvenStretch& stretch, std::int64_t minutes, Moment here,
                                   std::int64_t room)
    {
        for (; minutes > 0 && !isTooLong(); --minutes) {
            Moment earlier = before(stretch, false, here, room);
            if (!levels_->isAny(earlier.row)) {
                return earlier;
            }
            if constexpr (std::is_same_v<Levels, GridRows>) {
                const auto rise = levels_->riseBetween(here.row, earlier.row);
                if (rise && earlier.high == here.high) {
                    levels_->raise(earlier.row, *rise * (minutes - 1), room);
                    return earlier;
                }
            }
            here = std::move(earlier);
        }
        return here;
    }
    /// From so many minutes to go in a stretch to fewer.
    [[nodiscard]] Moment walked(const OvenStretch& stretch, std::int64_t from, std::int64_t to,
                                Moment here, std::int64_t room)
    {
        const std::int64_t plain = std::max<std::int64_t>(to, 1);
        here = earlierBy(stretch, from - plain, std::move(here), room);
        return from > 0 && to == 0 ? before(stretch, true, here, room) : here;
    }
    /// Whether its first minute is no different from the others.
    [[nodiscard]] static bool beginsOtherwise(const OvenStretch& stretch)
    {
        return !stretch.preferred.empty() || stretch.holds() != stretch.goesOn;
    }
    [[nodiscard]] Moment before(const OvenStretch& stretch, bool isFirst, const Moment& after,
                                std::int64_t room)
    {
        ++steps_;
        const std::int64_t high = std::min(stretch.high, after.high + oven_->coolMilliCPerMin);
        return {levels_->before({stretch.low, high, after.high, stretch.off,
                                 isFirst ? stretch.preferred : std::vector<int>{},
                                 isFirst ? stretch.goesOn : stretch.holds()},
                                after.row, room),
                high};
    }

    const Oven* oven_;
    Levels* levels_;
    std::int64_t mostSteps_;
    std::int64_t steps_ = 0;
};

} // namespace suppertide
