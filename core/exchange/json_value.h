// JsonValue: a JSON text as a tree, read strictly: the same key twice in one object, a byte order
// mark, deep nesting and texts above 16 MB are refused. Decimals stay as they are written, so that
// a reader can take them exactly. Used by the readers of this folder through json_reader.h.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/base/result.h"

namespace suppertide {

/// A number with a decimal point, an exponent or more digits than 64 bits hold, as written.
struct JsonDecimal
{
    std::string text;
};

struct JsonMember;

struct JsonValue
{
    using List = std::vector<JsonValue>;
    using Object = std::vector<JsonMember>; // in the order of the text
    std::variant<std::monostate, bool, std::int64_t, JsonDecimal, std::string, List, Object> data;
};

struct JsonMember
{
    std::string key;
    JsonValue value;
};

/// Texts longer than this are refused; a plan of 250 tasks takes a hundredth of it.
inline constexpr std::size_t mostJsonBytes = 16U << 20U;

/// BadInput if `text` is not one JSON value; the message names the line or the place.
[[nodiscard]] Result<JsonValue> parseJson(std::string_view text);

/// The whole of a file. NotFound or Io if it cannot be read, BadInput if it is too large.
[[nodiscard]] Result<std::string> readTextFile(const std::string& file);

} // namespace suppertide
