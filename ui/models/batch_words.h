// How many portions of a step the open evening's kitchen takes at once, in words.
#pragma once

#include <QString>

#include "core/library/library.h"

namespace suppertide::ui {

/// "In Skerry Light 7½ portions go in at once."; empty where nothing is said to be filled, or
/// nothing in the kitchen bounds it.
[[nodiscard]] QString batchWords(const LibraryState& library, const Recipe& recipe,
                                 const Step& step);

} // namespace suppertide::ui
