// OwnTable: a table that the build has put into this program. That it can be read is a promise of
// the build, held by a test for each; a user's table is read by its reader alone.
#pragma once

#include <utility>

#include "core/base/contracts.h"
#include "core/base/result.h"

namespace suppertide {

/// What was read. `promise` says what is broken if it could not be: "the table of … can be read".
template <typename T>
[[nodiscard]] T ownTable(Result<T> read, const char* promise)
{
    ensures(read.has_value(), promise);
    return std::move(read).value();
}

} // namespace suppertide
