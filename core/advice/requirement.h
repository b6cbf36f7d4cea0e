// Requirements that a conflict names ("lag:l1"), found again in the problem, and whether a change
// of the evening has any bearing on a conflict at all. For core/advice and core/wording.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/problem/problem.h"

namespace suppertide {

struct WindowOf
{
    TaskIndex task;

    friend bool operator==(const WindowOf&, const WindowOf&) = default;
};

struct HandsOf
{
    TaskIndex task;

    friend bool operator==(const HandsOf&, const HandsOf&) = default;
};

using Requirement =
    std::variant<ChoiceIndex, WindowOf, LagIndex, DemandIndex, OvenDemandIndex, HandsOf>;

/// Absent if the problem has no requirement of that name.
[[nodiscard]] std::optional<Requirement> findRequirement(const Problem& problem,
                                                         const std::string& name);
/// Those that the problem has, in the order given.
[[nodiscard]] std::vector<Requirement> requirementsOf(const Problem& problem,
                                                      const std::vector<std::string>& names);
/// The tasks that a requirement names.
[[nodiscard]] std::vector<TaskIndex> tasksOf(const Problem& problem,
                                             const Requirement& requirement);

/// Whether some requirement of the conflict is not in `after` as it is in `before`, or what it asks
/// of (capacities, ovens, cooks' hours) is not: a change that leaves all of a conflict as it is
/// helps nothing.
[[nodiscard]] bool touches(const Problem& before, const std::vector<std::string>& conflict,
                           const Problem& after);

} // namespace suppertide
