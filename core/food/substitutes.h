// Substitutes: ingredients of the table that play the part of another, where a guest must not have
// it. What they contain is the table's to say; whether the dish bears it is the cook's to try.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace suppertide {

/// An ingredient with what may stand in for it, in the same amount; the most like it first.
struct Substitutes
{
    std::string ingredient;
    std::vector<std::string> instead;
    std::string source;

    friend bool operator==(const Substitutes&, const Substitutes&) = default;
};

/// BadInput names table, line and column.
[[nodiscard]] Result<std::vector<Substitutes>> readSubstitutes(std::string_view table);

/// The table that is compiled in.
[[nodiscard]] const std::vector<Substitutes>& allSubstitutes();

/// By any name of the ingredient; empty if the table has none.
[[nodiscard]] const std::vector<std::string>& substitutesFor(std::string_view ingredient);

} // namespace suppertide
