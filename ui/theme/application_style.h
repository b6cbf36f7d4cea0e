// The application's palette and style sheet in one of the two looks, for everything that is not
// painted by ourselves.
#pragma once

#include <QPalette>
#include <QString>

#include "ui/theme/palette.h"

namespace suppertide::ui {

[[nodiscard]] QPalette widgetPalette(const Palette& palette);

/// The style sheet with the palette's colours filled in, for type of that scale.
[[nodiscard]] QString styleSheetFor(const Palette& palette, double textScale);

} // namespace suppertide::ui
