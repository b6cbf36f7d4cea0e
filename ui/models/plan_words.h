// What is said of a plan and of one that is offered in its stead: the figures side by side, how far
// it is from the best at most, and what taking it would change.
#pragma once

#include <QString>

#include <cstdint>
#include <optional>
#include <vector>

#include "core/plan/plan.h"
#include "core/plan/plan_change.h"

namespace suppertide::ui {

/// What the planner has proven of a plan: none costs less than `bound`.
struct Proof
{
    std::int64_t cost = 0;
    std::int64_t bound = 0;

    [[nodiscard]] bool isBest() const { return bound >= cost; }
    friend bool operator==(const Proof&, const Proof&) = default;
};

/// "best there is", "at most 3 % from the best", "not known yet".
[[nodiscard]] QString distanceText(const std::optional<Proof>& proof);

/// A figure of the plan as it is, and as it would be.
struct FigureCell
{
    QString label;   // "last hour"
    QString meaning; // in full, for its tool tip and for who does not see it
    QString now;     // "41 min"
    QString offered; // empty: nothing is offered, or it is the same

    /// "41 min → 35 min".
    [[nodiscard]] QString text() const;
    friend bool operator==(const FigureCell&, const FigureCell&) = default;
};

/// A plan with what is proven of it.
struct JudgedPlan
{
    PlanPtr plan;
    std::optional<Proof> proof;
};

/// Hands-on in the last hour, oven changes, oven on, sessions, quality lost, from the best.
[[nodiscard]] std::vector<FigureCell> figureCells(const JudgedPlan& now,
                                                  const std::optional<JudgedPlan>& offered);

/// "3 steps move, at most 20 min; 1 oven change fewer; nothing collides any more".
[[nodiscard]] QString changeText(const Plan& now, const Plan& offered);

} // namespace suppertide::ui
