#include "core/sheet/sheet_words.h"

#include <fmt/format.h>

namespace suppertide {

namespace {

std::string_view partName(IngredientPart part)
{
    return part == IngredientPart::Whole ? std::string_view{} : nameOf(part);
}

/// What comes off or out of a whole thing, rather than being a piece of it.
bool isTakenOff(IngredientPart part)
{
    return part == IngredientPart::Zest || part == IngredientPart::Juice ||
           part == IngredientPart::Peel || part == IngredientPart::Seeds;
}

bool speaksOf(const std::string& ingredient, IngredientPart part)
{
    return ingredient.find(partName(part)) != std::string::npos ||
           (part == IngredientPart::Leaves && ingredient.find("leaf") != std::string::npos) ||
           (part == IngredientPart::Bones && ingredient.find("on the bone") != std::string::npos);
}

/// "egg white", "rosemary leaves"; "bay leaf" stays as it is.
std::string thingOf(const ScaledLine& line)
{
    const bool isSaid = line.part == IngredientPart::Whole || speaksOf(line.ingredient, line.part);
    return isSaid ? line.ingredient : fmt::format("{} {}", line.ingredient, partName(line.part));
}

std::string withAmount(const ScaledLine& line, const ReadingStyle& style)
{
    const std::string amount = kitchenText(line.amount, style.measures);
    if (line.amount.unit == Unit::Piece) {
        return isTakenOff(line.part)
                   ? fmt::format("{} of {} {}", partName(line.part), amount, line.ingredient)
                   : fmt::format("{} × {}", amount, thingOf(line));
    }
    switch (dimensionOf(line.amount.unit)) {
    case Dimension::Count: // "2 cloves of garlic"
    case Dimension::Inexact:
    case Dimension::Distance:
        return fmt::format("{} of {}", amount, thingOf(line));
    case Dimension::ToTaste:
        return fmt::format("{} {}", thingOf(line), amount);
    case Dimension::Mass:
    case Dimension::Volume:
        break;
    }
    return fmt::format("{} {}", amount, thingOf(line));
}

} // namespace

std::string amountLine(const ScaledLine& line, const ReadingStyle& style)
{
    const std::string text = withAmount(line, style);
    return line.note.empty() ? text : fmt::format("{} ({})", text, line.note);
}

} // namespace suppertide
