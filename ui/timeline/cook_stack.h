// How the steps of one cook stand on each other: at every minute the heights add up to exactly
// what is taken of the cook. The longest lies lowest. Pure.
#pragma once

#include <span>
#include <vector>

#include "core/base/interval.h"

namespace suppertide::ui {

struct StackItem
{
    Interval when;
    int percent = 0;
};

/// A stretch of an item that rests on one level.
struct StackPiece
{
    std::size_t item = 0; // index into the items given
    Interval when;
    int base = 0; // percent below it
};

/// Pieces in order of item and time; an item that has to step onto another has several. Items of
/// 0 % or no length have none. O(n²) in the number of items that overlap.
[[nodiscard]] std::vector<StackPiece> stackUp(std::span<const StackItem> items);

} // namespace suppertide::ui
