// Palette: the named colours of the light and of the dark look, read from the table that the
// program carries (resources/look-palette.json). Colours are opaque sRGB.
#pragma once

#include <QColor>

#include <array>

#include "ui/theme/patterns.h"

namespace suppertide::ui {

enum class Appearance
{
    Light,
    Dark
};

struct Neutrals
{
    QColor paper, lane, panel, card, rule, line, ink, ink2, pleatA, pleatB, heat, heatLine, cold,
        coldLine, allowed, hands;
};

/// A colour with the one that text on it has.
struct Fill
{
    QColor colour;
    QColor textOn;
};

struct Roles
{
    Fill impossible, unsafe, undesirable, ok, selected, now, pinned;
};

/// A dish's hue and its fill pattern.
struct DishFill
{
    Fill fill;
    Pattern pattern = Pattern::Plain;
};

inline constexpr std::size_t hueCount = 8;

struct Palette
{
    Appearance appearance = Appearance::Light;
    Neutrals neutral;
    Roles role;
    std::array<DishFill, hueCount> dishes;

    /// Hue and pattern of the dish with this look (0 = A). From the ninth on hues come again with
    /// the pattern three further, and so on: 64 unlike pairs. Requires look >= 0.
    [[nodiscard]] DishFill dish(int look) const;
    /// House jobs and trips: secondary ink, no pattern.
    [[nodiscard]] DishFill houseJob() const;
};

/// The two palettes are parsed once.
[[nodiscard]] const Palette& paletteFor(Appearance appearance);

/// "A" … "Z", "AA", "AB" …: the letter of a look. Requires look >= 0.
[[nodiscard]] QString dishLetter(int look);

} // namespace suppertide::ui
