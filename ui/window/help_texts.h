// The longer texts of the Help menu.
#pragma once

#include <QString>

namespace suppertide::ui {

[[nodiscard]] QString tourText();
/// What the program cannot know, and whose word prevails.
[[nodiscard]] QString cautionsText();
[[nodiscard]] QString aboutText();

} // namespace suppertide::ui
