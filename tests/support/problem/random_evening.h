// Random problems of which many have a schedule: mostly tied forwards in time, with some of
// everything that the format has.
#pragma once

#include "core/problem/problem.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::test {

/// A few tasks and some of everything else; it may or may not have a schedule.
[[nodiscard]] Problem anyEvening(Random& random, std::int64_t tasks);

} // namespace suppertide::test
