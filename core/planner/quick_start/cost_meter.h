// CostMeter: the exact cost of a plan in which all blocks are placed, with the cheapest program for
// each oven. Remembers the last programs of each oven, as most changes leave most ovens alone.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/assign/oven_program.h"
#include "core/planner/quick_start/partial_plan.h"

namespace suppertide::quick_start {

class CostMeter
{
public:
    explicit CostMeter(const Problem& problem) : problem_(&problem), known_(problem.ovens.size()) {}

    /// The cost; absent if an oven has no program after all: then `unkept` names the holds.
    [[nodiscard]] std::optional<std::int64_t> cost(const PartialPlan& plan);
    [[nodiscard]] const std::vector<HoldIndex>& unkept() const { return unkept_; }
    [[nodiscard]] OvenProgram program(const PartialPlan& plan, OvenIndex oven);

private:
    struct Known
    {
        std::vector<OvenStay> stays;
        OvenProgramResult result;
    };
    const OvenProgramResult& programFor(const PartialPlan& plan, OvenIndex oven);
    [[nodiscard]] std::int64_t lossCost(const PartialPlan& plan) const;
    [[nodiscard]] std::int64_t quietCost(const PartialPlan& plan) const;
    [[nodiscard]] std::int64_t sessionCost(const PartialPlan& plan) const;
    [[nodiscard]] std::int64_t otherCost(const PartialPlan& plan) const;

    const Problem* problem_;
    IndexedVector<OvenIndex, std::vector<Known>> known_;
    std::size_t oldest_ = 0;
    std::vector<HoldIndex> unkept_;
};

/// When a task starts in a plan; absent: not present or not placed.
[[nodiscard]] std::optional<Minute> startOf(const PartialPlan& plan, TaskIndex task);

} // namespace suppertide::quick_start
