// BoxPreferences: the temperatures that stays of an oven's box prefer, in the order of their
// beginnings.
#pragma once

#include <cstddef>
#include <vector>

#include "core/assign/oven_box.h"

namespace suppertide {

/// What is preferred, by stretch; and the stays, as far as settings go.
struct BoxPreferences
{
    std::vector<int> inOrder;
    std::vector<std::size_t> upTo; // by stretch: how many begin before it
    std::vector<OvenStay> stays;
};

[[nodiscard]] BoxPreferences preferencesOf(const std::vector<OvenStretch>& stretches);

} // namespace suppertide
