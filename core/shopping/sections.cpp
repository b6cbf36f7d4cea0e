#include "core/shopping/sections.h"

#include <algorithm>

#include "core/food/store_section.h"

namespace suppertide::shopping {

std::size_t placeOfSection(const std::string& section, const Larder& larder)
{
    const auto said = std::ranges::find(larder.sections, section);
    if (said != larder.sections.end()) {
        return static_cast<std::size_t>(said - larder.sections.begin());
    }
    // After those that the cook has put in order.
    const std::size_t first = larder.sections.size();
    const auto known = findStoreSection(section);
    const auto usual = std::ranges::find(allStoreSections, known.value_or(StoreSection::Other));
    return first + (known ? static_cast<std::size_t>(usual - allStoreSections.begin())
                          : allStoreSections.size());
}

} // namespace suppertide::shopping
