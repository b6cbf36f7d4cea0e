#include "core/problem/schedule.h"

namespace suppertide {

Schedule emptyScheduleFor(const Problem& problem)
{
    Schedule result;
    result.options.resize(problem.choices.size());
    result.starts.resize(problem.tasks.size());
    result.cooks.resize(problem.tasks.size());
    result.units.resize(problem.demands.size());
    result.ovens.resize(problem.ovenDemands.size());
    result.programs.resize(problem.ovens.size());
    return result;
}

} // namespace suppertide
