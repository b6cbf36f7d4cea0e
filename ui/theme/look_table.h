// Look table: the colours and pattern tiles as parsed from the embedded resource. Only palette.cpp
// and patterns.cpp read it.
#pragma once

#include <array>

#include "ui/theme/palette.h"
#include "ui/theme/patterns.h"

namespace suppertide::ui {

struct LookTable
{
    std::array<PatternRows, allPatterns.size()> patterns{};
    Palette light;
    Palette dark;
};

/// Parsed at the first call. The table is part of the program: one that does not parse, or lacks
/// a colour, is a broken contract.
[[nodiscard]] const LookTable& lookTable();

} // namespace suppertide::ui
