// Opening the window on a library: the user's own, a named one, or a fresh demo.
#pragma once

#include "app/verbs.h"

namespace suppertide::app {

/// Runs the window until it is closed. `count` and `words` are main's own: Qt keeps them.
[[nodiscard]] Exit runWindow(const CommandLine& line, const VerbContext& context, int& count,
                             char** words);

} // namespace suppertide::app
