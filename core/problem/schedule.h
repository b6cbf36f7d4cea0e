// Schedule: an answer to a Problem: an option for each choice, a start for each present task,
// cooks, units, ovens and a program for each oven. Nothing here says that it holds: core/check
// judges. Each list runs parallel to the problem's list of the same kind.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/problem/problem.h"

namespace suppertide {

enum class ScheduleStatus
{
    Optimal,
    Feasible,
    Infeasible,
    Unknown
};

/// From `at` on the oven is set to `setC`; absent: off.
struct ProgramEntry
{
    PlanTime at;
    std::optional<int> setC;

    friend bool operator==(const ProgramEntry&, const ProgramEntry&) = default;
};

using OvenProgram = std::vector<ProgramEntry>; // `at` strictly rising

struct Schedule
{
    ScheduleStatus status = ScheduleStatus::Unknown;
    std::optional<std::int64_t> cost;
    std::optional<std::int64_t> bound;
    std::vector<std::string> conflict; // "lag:l1", "window:t9" …

    IndexedVector<ChoiceIndex, std::optional<OptionIndex>> options;
    IndexedVector<TaskIndex, std::optional<PlanTime>> starts;
    IndexedVector<TaskIndex, std::vector<CookIndex>> cooks;
    IndexedVector<DemandIndex, std::optional<UnitIndex>> units;
    IndexedVector<OvenDemandIndex, std::optional<OvenIndex>> ovens;
    IndexedVector<OvenIndex, OvenProgram> programs;
    std::vector<TaskIndex> namedWithoutCooks; // given an empty list of cooks, which a file may say

    friend bool operator==(const Schedule&, const Schedule&) = default;
};

/// A schedule with lists of the right lengths, in which nothing is decided.
[[nodiscard]] Schedule emptyScheduleFor(const Problem& problem);

} // namespace suppertide
