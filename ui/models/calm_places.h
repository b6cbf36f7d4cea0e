// The named places between fresh and calm, and how the wishes of the preferences are said.
#pragma once

#include <QString>

#include <array>

#include "core/occasion/occasion.h"

namespace suppertide::ui {

inline constexpr std::array<int, 3> calmPlaces{10, 50, 90};

/// The name of the place nearest to it: "straight from the stove", "a bit of both", "sitting
/// with the guests".
[[nodiscard]] QString calmName(int calm);
/// The next named place in that direction (1: calmer, -1: fresher); the same at the last one.
[[nodiscard]] int nextCalmPlace(int calm, int direction);
/// "none", "some", "much".
[[nodiscard]] QString wishName(Wish wish);

} // namespace suppertide::ui
