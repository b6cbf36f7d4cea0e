// Problems of a few tasks in some minutes with some of everything that the format has: small enough
// for a second reading to find the best schedule by itself. About half of them have one.
#pragma once

#include "core/problem/problem.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::test {

/// Two to five tasks in 7 to 16 minutes.
[[nodiscard]] Problem anyTinyProblem(Random& random);

} // namespace suppertide::test
