// SheetWords: an ingredient with its amount, and figures within a recipe's own words, as the sheet
// prints them. For core/sheet only.
#pragma once

#include <string>

#include "core/plan/formulation.h"
#include "core/wording/wording.h"

namespace suppertide {

/// "500 ml double cream", "6 × egg white", "zest of ¾ lemon", "a pinch of nutmeg", "salt to taste",
/// with the note in brackets: "210 g trout fillet (skin and bones out)". In the measures of the
/// style, if it names any.
[[nodiscard]] std::string amountLine(const ScaledLine& line, const ReadingStyle& style = {});

} // namespace suppertide
