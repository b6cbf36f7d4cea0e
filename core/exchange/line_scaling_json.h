// The rule by which an ingredient's amount follows the portions, in JSON: a word where that says
// all ("fixed"), else an object of one member ({"batch_of": 6}).
#pragma once

#include "core/exchange/json_reader.h"
#include "core/exchange/json_value.h"
#include "core/recipe/line_scaling.h"

namespace suppertide {

[[nodiscard]] LineScaling readLineScaling(const JsonCursor& at);
[[nodiscard]] JsonValue toJson(const LineScaling& scaling);

/// {"round": 24}, {"length": 20, "width": 30}.
[[nodiscard]] Mould readMould(const JsonCursor& at);
[[nodiscard]] JsonValue toJson(const Mould& mould);

} // namespace suppertide
