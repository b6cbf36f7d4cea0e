#include "core/food/store_section.h"

#include <algorithm>

namespace suppertide {

namespace {

constexpr std::array<std::string_view, allStoreSections.size()> sectionNames{"fruit and vegetables",
                                                                             "bread",
                                                                             "meat",
                                                                             "fish",
                                                                             "dairy and eggs",
                                                                             "dry goods",
                                                                             "baking",
                                                                             "tins and jars",
                                                                             "oils and sauces",
                                                                             "spices",
                                                                             "drinks",
                                                                             "frozen",
                                                                             "other"};

} // namespace

std::string_view nameOf(StoreSection section)
{
    return sectionNames.at(static_cast<std::size_t>(section));
}

std::optional<StoreSection> findStoreSection(std::string_view name)
{
    const auto found = std::ranges::find_if(
        allStoreSections, [name](StoreSection section) { return nameOf(section) == name; });
    return found == allStoreSections.end() ? std::nullopt : std::optional{*found};
}

} // namespace suppertide
