// Followed foods of a making: those of each variant with its methods, and how long one may stay in
// a place of a wait by the occasion's rules. For the formulate_*.cpp files alone.
#pragma once

#include <optional>
#include <vector>

#include "core/plan/evening.h"
#include "core/safety/wait_limits.h"

namespace suppertide {

struct OpenFood
{
    const FollowedFood* food = nullptr;
    std::optional<MethodKey> method; // it is only there with
};

/// The foods of a variant, those of its methods included.
[[nodiscard]] std::vector<OpenFood> foodsOf(const Making& making, const MakingVariant& variant);

/// A wait is a food's if it begins or ends at a step that the food is named in.
[[nodiscard]] bool isFoodsWait(const FollowedFood& food, const StepPoint& from,
                               const StepPoint& to);

/// How long the followed foods of these variants may stay in that place during the wait; nothing if
/// there is none, or no rule about it. What is served afterwards stands at table too.
[[nodiscard]] std::optional<safety::WaitLimit> safetyLimit(const Evening& evening,
                                                           const Making& making,
                                                           const std::vector<std::size_t>& variants,
                                                           const Wait& wait, KeepPlace place);

} // namespace suppertide
