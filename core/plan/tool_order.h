// ToolOrder: which vessels and appliances go from raw food to food that is eaten as it is, or from
// a portion with something in it to one that must be free of it, without being washed in between:
// clashes of kind UnwashedTool. The problem washes between dishes where their recipes give minutes
// for it, and where the layout says so; this looks at what was laid out. Of boards and knives no
// recipe tells, and of things that are only counted nobody knows which went where.
#pragma once

#include <memory>

#include "core/plan/plan.h"

namespace suppertide {

/// What the portions of a task must be free of, as far as they are: what those avoid who are said
/// to eat them. A preparation's eaters are not known.
struct AvoidedIn
{
    std::vector<Substance> any;
    std::vector<Substance> forHealth; // of them, by an allergy or a diet; more may be in it
};
[[nodiscard]] AvoidedIn avoidedIn(const TaskSource& source, const Occasion& occasion);

class ToolOrder
{
public:
    /// What does not hang on times is looked up once. The formulation must outlive this.
    ToolOrder(const Formulation& formulation, const PlanInput& input);
    ~ToolOrder();
    ToolOrder(ToolOrder&&) noexcept;
    ToolOrder& operator=(ToolOrder&&) = delete;
    ToolOrder(const ToolOrder&) = delete;
    ToolOrder& operator=(const ToolOrder&) = delete;

    /// In the order of the later use; each pair of steps once. Only foods that are followed and
    /// portions of which it is known who eats them. A step that cooks raw food leaves none behind.
    [[nodiscard]] std::vector<Clash> clashes(const Schedule& schedule) const;

private:
    class Uses;
    std::unique_ptr<const Uses> uses_;
};

} // namespace suppertide
