// What the readers of problems and of schedules share: the header of a file, and how a fault is
// told.
#pragma once

#include <string_view>

#include "core/base/result.h"
#include "core/exchange/json_reader.h"

namespace suppertide {

/// Takes "format" and "version"; a fault unless they are `format` and 1.
void readHeader(JsonFields& top, std::string_view format);

/// `what` is "problem" or "schedule".
[[nodiscard]] Failure unreadable(std::string_view what, std::string_view fault);
[[nodiscard]] Failure unreadable(std::string_view what, const Failure& notJson);

} // namespace suppertide
