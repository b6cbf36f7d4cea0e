// Fridge order: which raw food stands in the fridge while food that is eaten as it is stands there
// too. Nobody says on which shelf, so it is a caution for paper, no clash.
#pragma once

#include <vector>

#include "core/plan/plan.h"

namespace suppertide {

struct RawBesideReady
{
    FoodIndex raw;
    FoodIndex ready;
    Interval when; // both are there

    friend bool operator==(const RawBesideReady&, const RawBesideReady&) = default;
};

/// Each pair of foods once, at the first time at which they meet; in order of time. Only stays that
/// the plan knows count: waits, not where a food was before its first step.
[[nodiscard]] std::vector<RawBesideReady> rawBesideReady(const Formulation& formulation,
                                                         const Schedule& schedule);

} // namespace suppertide
