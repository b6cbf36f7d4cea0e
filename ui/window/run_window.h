// Runs the window on a library until it is closed. A QApplication must be there.
#pragma once

#include <memory>

#include "core/base/clock.h"
#include "core/library/library.h"

namespace suppertide::ui {

/// The exit status of the event loop; 1 if the library cannot be loaded, which is said in a dialog.
[[nodiscard]] int runWindow(std::unique_ptr<suppertide::Library> library,
                            const suppertide::Clock& clock);

} // namespace suppertide::ui
