// Problems and schedules as JSON files: the form in which the planner and the checker can be run
// and compared by themselves. Reading is strict: unknown keys, missing keys, double keys and ids,
// numbers out of range and references to what is not there are failures that name the place, like
// "tasks[3] (id t4).window". What is well formed but cannot be met is not a failure.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/problem/problem.h"
#include "core/problem/schedule.h"

namespace suppertide {

/// No number but a cost may be larger (in minutes it is 1900 years), so that sums stay in 64 bits.
inline constexpr std::int64_t mostInProblem = 1'000'000'000;

[[nodiscard]] Result<Problem> readProblem(std::string_view text);
[[nodiscard]] Result<Problem> loadProblem(const std::string& file);

/// `problem` is what the schedule answers; ids of the text are looked up in it.
[[nodiscard]] Result<Schedule> readSchedule(std::string_view text, const Problem& problem);
[[nodiscard]] Result<Schedule> loadSchedule(const std::string& file, const Problem& problem);

/// Text that reads back as an equal value: one line an entry, defaults left out.
[[nodiscard]] std::string writeProblem(const Problem& problem);
[[nodiscard]] std::string writeSchedule(const Schedule& schedule, const Problem& problem);

} // namespace suppertide
