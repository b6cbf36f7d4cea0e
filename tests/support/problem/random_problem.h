// Small random problems and schedules that are well formed but mostly broken: for comparing judges.
#pragma once

#include "core/problem/schedule.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::test {

/// Two to eight tasks in at most 60 minutes, with some of everything that the format has.
[[nodiscard]] Problem anyProblem(Random& random);

/// Starts, options, cooks, units, ovens and programs at random; some left out.
[[nodiscard]] Schedule anySchedule(const Problem& problem, Random& random);

/// The schedule with one to three things changed.
[[nodiscard]] Schedule edited(const Problem& problem, Schedule schedule, Random& random);

} // namespace suppertide::test
