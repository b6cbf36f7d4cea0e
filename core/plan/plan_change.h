// PlanChange: what one plan of an evening changes of another: the steps that move, and how far.
// Both may come from different formulations; steps are told by their ids and compared in UTC.
#pragma once

#include <vector>

#include "core/plan/plan.h"

namespace suppertide {

struct StepMove
{
    TaskIndex task; // in the later plan
    Minutes by{0};  // later; negative: earlier

    friend bool operator==(const StepMove&, const StepMove&) = default;
};

struct PlanChange
{
    std::vector<StepMove> moved; // seen steps (core/plan/seen_step.h), each once
    int otherWay = 0;            // steps that only one of the two plans has: another method
    int coursesMoved = 0;        // served at another time

    [[nodiscard]] Minutes most() const; // the farthest that one moves
    [[nodiscard]] bool empty() const { return moved.empty() && otherWay == 0 && coursesMoved == 0; }
    friend bool operator==(const PlanChange&, const PlanChange&) = default;
};

[[nodiscard]] PlanChange changeBetween(const Plan& before, const Plan& after);

} // namespace suppertide
