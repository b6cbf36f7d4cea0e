// Evidence: all that the judges look at: a problem, a schedule, and what follows from the two
// alone: when things happen, how warm the ovens are, when cooks sit at table. It judges nothing.
#pragma once

#include <optional>
#include <vector>

#include "core/check/ties.h"
#include "core/problem/oven_curve.h"
#include "core/problem/timetable.h"

namespace suppertide {

class Evidence
{
public:
    /// Both must outlive this, the schedule in its place. Its lists must be as long as the
    /// problem's.
    Evidence(const Problem& problem, const Schedule& schedule);

    [[nodiscard]] const Problem& problem() const { return *problem_; }
    [[nodiscard]] const Schedule& schedule() const { return *schedule_; }
    [[nodiscard]] const Ties& ties() const { return ties_; }
    [[nodiscard]] const Timetable& times() const { return times_; }
    [[nodiscard]] const OvenCurve& curve(OvenIndex oven) const { return curves_[oven]; }
    [[nodiscard]] const std::vector<Interval>& atTable(CookIndex cook) const
    {
        return atTable_[cook];
    }
    /// From when to when a demand or oven demand holds something; absent if it does not.
    template <typename AnyDemand>
    [[nodiscard]] std::optional<Interval> held(const AnyDemand& demand) const
    {
        return times_.held(demand.from, demand.to);
    }
    /// Each task once, in order of start; those without a start last.
    [[nodiscard]] std::vector<TaskIndex> inOrderOfStart(std::vector<TaskIndex> tasks) const;

    /// After the schedule has changed: presence, one cook's times at table, one oven's curve.
    void refreshPresence();
    void refreshTable(CookIndex cook);
    void refreshCurve(OvenIndex oven);

private:
    const Problem* problem_;
    const Schedule* schedule_;
    Ties ties_;
    Timetable times_;
    IndexedVector<OvenIndex, OvenCurve> curves_;
    IndexedVector<CookIndex, std::vector<Interval>> atTable_;
};

} // namespace suppertide
