// Recipes, kitchens, occasions and the larder to and from JSON values, with the keys of our
// exchange format: the C++ members' names in snake_case; what is at its default is left out. Used
// by exchange.cpp.
#pragma once

#include "core/exchange/json_reader.h"
#include "core/exchange/json_value.h"
#include "core/library/library.h"

namespace suppertide {

[[nodiscard]] Recipe readRecipeAt(const JsonCursor& at);
[[nodiscard]] Kitchen readKitchenAt(const JsonCursor& at);
[[nodiscard]] OccasionRecord readOccasionAt(const JsonCursor& at);
[[nodiscard]] Larder readLarderAt(const JsonCursor& at);

[[nodiscard]] JsonValue toJson(const Recipe& recipe);
[[nodiscard]] JsonValue toJson(const Kitchen& kitchen);
[[nodiscard]] JsonValue toJson(const OccasionRecord& record);
[[nodiscard]] JsonValue toJson(const Larder& larder);

/// Shared by kitchens (usual hours) and occasions (hours of a day).
[[nodiscard]] Hours readHoursAt(const JsonCursor& at);
[[nodiscard]] JsonValue toJson(const Hours& hours);

} // namespace suppertide
