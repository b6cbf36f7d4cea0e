#include "core/shopping/part_words.h"

namespace suppertide::shopping {

std::string_view wordFor(IngredientPart part)
{
    return part == IngredientPart::Whole ? std::string_view{} : nameOf(part);
}

} // namespace suppertide::shopping
