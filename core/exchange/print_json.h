// Prints a JsonValue for people: what fits stands on one line, the rest is indented by two, keys in
// the order in which they were put. The same value always gives the same text.
#pragma once

#include <string>

#include "core/exchange/json_value.h"

namespace suppertide {

/// Lines of about 100 characters, with a line end after the last.
[[nodiscard]] std::string printJson(const JsonValue& value);
/// All on one line, as small as can be.
[[nodiscard]] std::string printCompactJson(const JsonValue& value);

} // namespace suppertide
