#include "core/shopping/part_words.h"

namespace suppertide::shopping {

std::string_view wordFor(IngredientPart part)
{
    switch (part) {
    case IngredientPart::Whole:
        return "";
    case IngredientPart::Zest:
        return "zest";
    case IngredientPart::Juice:
        return "juice";
    case IngredientPart::Yolk:
        return "yolk";
    case IngredientPart::White:
        return "white";
    case IngredientPart::Leaves:
        return "leaves";
    case IngredientPart::Stalks:
        return "stalks";
    case IngredientPart::Bones:
        return "bones";
    case IngredientPart::Meat:
        return "meat";
    case IngredientPart::Peel:
        return "peel";
    case IngredientPart::Seeds:
        return "seeds";
    }
    return "";
}

} // namespace suppertide::shopping
