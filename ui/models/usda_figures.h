// Figures of the USDA's table for an ingredient that ours lacks: offered as commands of its row,
// kept as an ingredient of the user's own.
#pragma once

#include "ui/models/outline.h"

namespace suppertide::ui {

/// One for each of the foods that the cook may mean; none for an ingredient that is known.
[[nodiscard]] std::vector<RowCommand> usdaCommands(const LibraryState& library,
                                                   const std::string& ingredient);

/// Puts density, piece and yield into the larder. What it contains is left to be said. Absent if
/// the command is none of those.
[[nodiscard]] std::optional<Edit> takeUsdaFigures(const LibraryState& library,
                                                  const std::string& ingredient,
                                                  const std::string& command);

} // namespace suppertide::ui
