// The buttons of pages: what each says of itself, and room for its words when they turn bold.
#pragma once

#include <QPushButton>

#include "ui/theme/theme.h"

namespace suppertide::ui {

/// With its tip as tool tip, in the status bar and for who cannot see it.
[[nodiscard]] QPushButton* pageButton(const QString& text, const QString& name, const QString& tip,
                                      QWidget* parent);

/// Words of a button that is down are bold (style sheet of the window): they are not cut.
void keepRoomForBold(QPushButton& button, const Theme& theme);

} // namespace suppertide::ui
