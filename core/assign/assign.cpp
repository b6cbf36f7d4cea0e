#include "core/assign/assign.h"

#include "core/assign/live_assign.h"

namespace suppertide {

AssignmentPins AssignmentPins::none(const Problem& problem)
{
    AssignmentPins pins;
    pins.cooks.resize(problem.tasks.size());
    pins.units.resize(problem.demands.size());
    pins.ovens.resize(problem.ovenDemands.size());
    return pins;
}

Schedule assign(const Problem& problem, Schedule laidOut, const AssignmentPins& pins)
{
    return LiveAssign(problem).assign(std::move(laidOut), pins);
}

} // namespace suppertide
