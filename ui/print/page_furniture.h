// Page furniture: what stands on a page beside its rows: head, names of the columns, foot; and the
// blocks before the first and after the last row of a sheet: clashes, dishes, cautions.
#pragma once

#include "ui/print/sheet_block.h"

namespace suppertide::ui {

struct PageNumber
{
    std::size_t page = 1; // from 1
    std::size_t of = 1;
};

/// Title, day and the columns' names. Its height is where rows may begin, from the page's top.
[[nodiscard]] SheetBlock layOutHead(const Sheet& sheet, std::size_t day);

/// The foot, from its own top.
[[nodiscard]] SheetBlock layOutFoot(const Sheet& sheet, const PageNumber& number);

/// What collides, if anything does, and the pattern of each dish.
[[nodiscard]] std::vector<SheetBlock> blocksBefore(const Sheet& sheet);

/// Cautions that hold throughout.
[[nodiscard]] std::vector<SheetBlock> blocksAfter(const Sheet& sheet);

/// A day that begins further down a page.
[[nodiscard]] SheetBlock layOutDayHeading(const Sheet& sheet, std::size_t day);

} // namespace suppertide::ui
