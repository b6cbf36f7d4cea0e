// Theme: what a painter needs to know of the look: the palette, the size of type, and whether the
// system asks for more contrast or less motion. A value; ApplicationTheme says when it changes.
#pragma once

#include <QFont>

#include "ui/theme/palette.h"
#include "ui/theme/typography.h"

namespace suppertide::ui {

struct Theme
{
    const Palette* palette = nullptr; // one of the two, which live as long as the program
    double textScale = 1;             // application font over its nominal size

    [[nodiscard]] const Neutrals& neutral() const { return palette->neutral; }
    [[nodiscard]] const Roles& role() const { return palette->role; }
    [[nodiscard]] QFont font(TypeRole type) const { return fontFor(type, textScale); }
    friend bool operator==(const Theme&, const Theme&) = default;
};

[[nodiscard]] inline Theme makeTheme(Appearance appearance, double textScale = 1)
{
    return {&paletteFor(appearance), textScale};
}

} // namespace suppertide::ui
