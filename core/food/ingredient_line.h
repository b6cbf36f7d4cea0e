// Reading an ingredient line as people write it: "2½ cups (300 g) plain flour, sifted, plus more
// for dusting". What is not understood is kept as it stands.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/food/ingredient_part.h"
#include "core/quantity/amount.h"
#include "core/quantity/kitchen_text.h"

namespace suppertide {

struct IngredientLineReading
{
    std::optional<Amount> amount; // absent if the line gives none ("salt", "some parsley")
    std::optional<Amount> also;   // the same by a second measure
    std::string ingredient;       // as written; empty if the line is a heading
    IngredientPart part = IngredientPart::Whole;
    std::string note; // "large, sifted"
    std::string more; // what more is wanted: "for dusting"
    std::string rest; // what could not be read

    friend bool operator==(const IngredientLineReading&, const IngredientLineReading&) = default;
};

/// Cups, pints, fluid ounces and spoons are taken to be those of the system; metric has spoons of 5
/// and 15 ml, a cup of 250 ml and imperial pints. Never fails: a line that says nothing is all
/// rest.
[[nodiscard]] IngredientLineReading readIngredientLine(std::string_view line, MeasureSystem system);

/// Each line that is not empty.
[[nodiscard]] std::vector<IngredientLineReading> readIngredientLines(std::string_view text,
                                                                     MeasureSystem system);

} // namespace suppertide
