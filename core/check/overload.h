// Where uses add up to more than there is: for counts, shelves and a cook's attention alike.
#pragma once

#include <cstdint>
#include <vector>

#include "core/problem/problem.h"

namespace suppertide {

/// What `task`s take of something while it is held.
struct Use
{
    Interval when;
    std::int64_t amount = 0;
    TaskPoint from;
    TaskPoint to;
};

struct Overload
{
    Interval when;         // all its minutes are above the capacity
    std::int64_t most = 0; // in use at the fullest of them
};

/// In order of time, each as long as it can be. Uses are half-open; empty ones count for nothing.
[[nodiscard]] std::vector<Overload> overloads(const std::vector<Use>& uses, std::int64_t capacity);

/// The tasks whose uses take part in an overload.
[[nodiscard]] std::vector<TaskIndex> tasksDuring(const std::vector<Use>& uses,
                                                 const Interval& when);

} // namespace suppertide
