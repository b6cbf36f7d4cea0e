// ClashFinder: what core/check says is broken, in the terms of food and kitchen: kinds of clash
// with the dishes, things and minutes that they are about, one clash for one cause. Used by
// judgePlan and by LivePlan; judges nothing itself.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/plan/plan.h"
#include "core/problem/timetable.h"

namespace suppertide {

class ClashFinder
{
public:
    /// The formulation must outlive this.
    explicit ClashFinder(const Formulation& formulation);

    /// Worst first, then by time.
    [[nodiscard]] std::vector<Clash> clashes(const Schedule& schedule,
                                             const std::vector<Broken>& broken) const;

private:
    friend class ClashList;

    const Formulation& formulation_;
    std::map<std::string, LagIndex> lags_;
    std::map<std::string, DemandIndex> demands_;
    std::map<std::string, CountIndex> counts_;
    std::map<std::string, PoolIndex> pools_;
};

/// Worst first, then by time, then by what they are about.
void sortClashes(std::vector<Clash>& clashes);

/// Of the ovens in which some demand is not kept: each pair of demands that cannot both be kept, as
/// one clash. What is broken without such a pair is given as a clash of one demand.
[[nodiscard]] std::vector<Clash> ovenClashes(const Formulation& formulation,
                                             const Schedule& schedule, const Timetable& times,
                                             const std::vector<Broken>& broken);

/// Two of one cause become one.
[[nodiscard]] std::vector<Clash> mergedClashes(const Formulation& formulation,
                                               std::vector<Clash> clashes);

/// Whether the guest avoids it for health, by an allergy or a diet.
[[nodiscard]] bool isDangerous(const Guest& guest, Substance substance);

/// Who gets what they avoid, or nothing, or what nobody knows.
[[nodiscard]] std::vector<Clash> foodClashes(const Formulation& formulation,
                                             const PlanInput& input);

[[nodiscard]] PlanFigures figuresOf(const Formulation& formulation, const Schedule& schedule);

} // namespace suppertide
