// Figure: what menus are compared by, as numbers that can be sorted and drawn, and which menus
// nothing beats in two of them.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/menus/compared_menu.h"

namespace suppertide::menus {

enum class Figure
{
    HandsOn,
    LastHour,
    Ahead,
    Steps,
    ExtraSteps,
    OvenChanges,
    OvenOn,
    Energy,
    Price,
    Repeated
};

inline constexpr std::array allFigures{
    Figure::HandsOn,     Figure::LastHour, Figure::Ahead,  Figure::Steps, Figure::ExtraSteps,
    Figure::OvenChanges, Figure::OvenOn,   Figure::Energy, Figure::Price, Figure::Repeated};

/// "hands-on", "last-hour" …, as on the command line and in files; and back.
[[nodiscard]] std::string_view keyOf(Figure figure);
[[nodiscard]] std::optional<Figure> findFigure(std::string_view key);

/// Whether more is better: of what is made ahead alone.
[[nodiscard]] bool isMoreBetter(Figure figure);

/// In the figure's unit: minutes, steps, changes, watt hours, hundredths of the currency,
/// ingredients. Absent: not known, or there is no plan.
[[nodiscard]] std::optional<std::int64_t> valueOf(const ComparedMenu& menu, Figure figure);

/// Sorted best first; unknown ones last; equal ones by number. Numbers are places in `menus`.
[[nodiscard]] std::vector<std::size_t> sortedBy(std::span<const ComparedMenu> menus, Figure figure);

/// The menus that no other beats: none is at least as good in both figures and better in one (the
/// maxima of a set of vectors: Kung, Luccio & Preparata, On Finding the Maxima of a Set of
/// Vectors, J. ACM 22 (1975) 469–476; for two figures one pass after sorting, O(n log n)). Only
/// menus that can be cooked and of which both figures are known; equal ones all belong. In order
/// of the first figure.
[[nodiscard]] std::vector<std::size_t> unbeaten(std::span<const ComparedMenu> menus, Figure one,
                                                Figure other);

} // namespace suppertide::menus
