// OvenCalendar: whether an oven can take what a block puts into it in a trial: shelves, modes, and
// temperatures by pairs (oven_pairs.h). And about what that costs in changes and minutes on.
#pragma once

#include <vector>

#include "core/planner/quick_start/trial.h"

namespace suppertide::quick_start {

/// About the cost of the stays in one oven: changes by the bands that meet in order of time,
/// minutes on with the ramps between. Much cheaper than the exact program, never used as one.
[[nodiscard]] std::int64_t roughOvenCost(const Oven& oven, std::vector<OvenStay> stays,
                                         const Costs& costs);

class OvenCalendar
{
public:
    explicit OvenCalendar(const Instance& instance) : instance_(&instance) {}

    struct Choice
    {
        std::vector<std::pair<HoldIndex, std::size_t>> servants; // of holds that hold something
        bool found = false;
        std::int64_t cost = 0;
    };
    /// Puts the bundle into the oven with least penalty, then least cost (if asked for), and enters
    /// it there.
    [[nodiscard]] Choice choose(Trial& trial, const std::vector<HoldIndex>& bundle,
                                bool withCost) const;

private:
    [[nodiscard]] bool putAll(Trial& trial, const std::vector<HoldIndex>& bundle, std::size_t oven,
                              Choice& choice) const;
    [[nodiscard]] bool put(Trial& trial, HoldIndex index, const Span& span, std::size_t oven) const;
    [[nodiscard]] bool gather(Trial& trial, const Hold& hold, std::size_t oven) const;
    [[nodiscard]] std::int64_t costAdded(const Trial& trial, std::size_t oven) const;

    const Instance* instance_;
};

} // namespace suppertide::quick_start
