// Sections of a shop in the order in which one walks through it.
#pragma once

#include <cstddef>
#include <string>

#include "core/larder/larder.h"

namespace suppertide::shopping {

/// The larder's order, then the program's own, then what neither knows.
[[nodiscard]] std::size_t placeOfSection(const std::string& section, const Larder& larder);

} // namespace suppertide::shopping
