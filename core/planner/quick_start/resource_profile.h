// ResourceProfile: whether an amount of a resource is there for a time, beside what is taken
// already, and what has to go if it is not.
#pragma once

#include "core/planner/quick_start/trial.h"

namespace suppertide::quick_start {

struct Need
{
    Span span;
    std::int64_t amount = 0;
    /// Which ends of the span move along with the block.
    bool beginMoves = true;
    bool endMoves = true;
};

/// Makes room by ejecting; false if that is not possible: then the blockage says how to move.
bool makeRoom(Trial& trial, const Resource& resource, const Need& need, std::int64_t capacity);

} // namespace suppertide::quick_start
