// ToolOrder: which vessels and appliances go from raw food to food that is eaten as it is, or from
// a portion with something in it to one that must be free of it, without being washed in between.
// The problem washes between dishes where their recipes give minutes for it; this looks at what
// was laid out. It is a caution for paper: boards and knives, of which no recipe tells, follow the
// same rule.
#pragma once

#include "core/plan/plan.h"

namespace suppertide {

struct ToolConflict
{
    std::string tool; // "mixing bowl"
    TaskIndex earlier;
    TaskIndex later;
    std::string rule;                  // of core/safety
    std::vector<Substance> substances; // left by the earlier; empty: raw food is what is left

    friend bool operator==(const ToolConflict&, const ToolConflict&) = default;
};

/// In the order of the later use. Only things that are told apart, and only foods that are followed
/// and portions of which it is known who eats them.
[[nodiscard]] std::vector<ToolConflict>
toolConflicts(const Formulation& formulation, const PlanInput& input, const Schedule& schedule);

} // namespace suppertide
