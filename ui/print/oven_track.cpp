#include "ui/print/oven_track.h"

#include <algorithm>
#include <cstdlib>

#include "core/problem/timetable.h"

namespace suppertide::ui {

namespace {

/// Bars that share a minute get rows of their own.
void spreadOverRows(std::vector<OvenBar>& bars)
{
    std::sort(bars.begin(), bars.end(),
              [](const OvenBar& a, const OvenBar& b) { return a.when < b.when; });
    std::vector<PlanTime> freeFrom;
    for (OvenBar& bar : bars) {
        const auto row = std::find_if(freeFrom.begin(), freeFrom.end(),
                                      [&](PlanTime free) { return free <= bar.when.start; });
        bar.row = static_cast<std::size_t>(row - freeFrom.begin());
        if (row == freeFrom.end()) {
            freeFrom.push_back(bar.when.end);
        } else {
            *row = bar.when.end;
        }
    }
}

std::vector<OvenBar> barsOf(const Formulation& formulation, const Schedule& schedule,
                            const Timetable& times, OvenIndex oven)
{
    std::vector<OvenBar> bars;
    const Problem& problem = formulation.problem;
    for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
        const OvenDemand& demand = problem.ovenDemands[index];
        const auto when = times.held(demand.from, demand.to);
        if (when && schedule.ovens[index] == oven) {
            bars.push_back({*when, formulation.ovenDemands[index].dish});
        }
    }
    spreadOverRows(bars);
    return bars;
}

} // namespace

std::vector<OvenIndex> ovensUsed(const PerHourPlan& plan)
{
    const Schedule& schedule = plan.plan->schedule;
    std::vector<OvenIndex> used;
    for (const OvenIndex oven : plan.plan->formulation->problem.ovens.indices()) {
        const bool isSet = schedule.programs.contains(oven) && !schedule.programs[oven].empty();
        const bool isHeld =
            std::find(schedule.ovens.begin(), schedule.ovens.end(), oven) != schedule.ovens.end();
        if (isSet || isHeld) {
            used.push_back(oven);
        }
    }
    return used;
}

OvenTracks ovenTracksOf(const PerHourPlan& plan, const std::vector<OvenIndex>& ovens)
{
    const Formulation& formulation = *plan.plan->formulation;
    const Schedule& schedule = plan.plan->schedule;
    const Timetable times{formulation.problem, schedule};
    OvenTracks tracks;
    for (const OvenIndex oven : ovens) {
        tracks.push_back({oven, OvenCurve{formulation.problem.ovens[oven], schedule.programs[oven]},
                          barsOf(formulation, schedule, times, oven)});
    }
    return tracks;
}

std::vector<PlanTime> bendsOf(const OvenTrack& track, const Oven& oven, const Interval& during)
{
    std::vector<PlanTime> at = track.curve.turningMinutes(during);
    for (const OvenCurve::Knot& knot : track.curve.knots()) {
        const std::int64_t target = std::int64_t{knot.setC.value_or(oven.ambientC)} * 1000;
        const std::int64_t rate =
            target >= knot.milliC ? oven.heatMilliCPerMin : oven.coolMilliCPerMin;
        const std::int64_t minutes = (std::abs(target - knot.milliC) + rate - 1) / rate;
        const PlanTime reached = knot.at + Minutes{minutes};
        if (during.contains(reached)) {
            at.push_back(reached);
        }
    }
    std::sort(at.begin(), at.end());
    at.erase(std::unique(at.begin(), at.end()), at.end());
    return at;
}

} // namespace suppertide::ui
