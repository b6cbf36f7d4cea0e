// Rows of a recipe's page about other tins of the open evening's kitchen: to be read, not changed.
#pragma once

#include <vector>

#include "core/library/library.h"
#include "ui/models/outline.h"

namespace suppertide::ui {

/// Under a heading of their own: a row for each tin, under it the two ways to fill it as the menu
/// page words them, under these what changes. Nothing where the recipe goes by no tin or the
/// kitchen has no other.
[[nodiscard]] std::vector<OutlineRow> tinRows(const LibraryState& library, const Recipe& recipe);

/// Whether a row's kind is of these rows.
[[nodiscard]] bool isTinKind(const std::string& kind);

} // namespace suppertide::ui
