#include "core/night/oven_now.h"

#include <algorithm>

#include "core/problem/oven_curve.h"

namespace suppertide {

namespace {

constexpr std::int64_t milli = 1000;

/// At a minute the oven is known to have been within low…high.
struct Evidence
{
    PlanTime at;
    std::int64_t lowMilliC = 0;
    std::int64_t highMilliC = 0;
};

std::int64_t moved(const Oven& oven, std::int64_t milliC, std::optional<int> setC, Minutes passed)
{
    const std::int64_t target = setC.value_or(oven.ambientC) * milli;
    return target >= milliC ? std::min(target, milliC + oven.heatMilliCPerMin * passed.count())
                            : std::max(target, milliC - oven.coolMilliCPerMin * passed.count());
}

/// From one minute to a later one under the program.
std::int64_t advanced(const Oven& oven, const OvenProgram& program, std::int64_t milliC,
                      const Interval& during)
{
    const OvenCurve curve(oven, program);
    PlanTime at = during.start;
    for (const ProgramEntry& entry : program) {
        if (entry.at > at && entry.at < during.end) {
            milliC = moved(oven, milliC, curve.setting(at), entry.at - at);
            at = entry.at;
        }
    }
    return moved(oven, milliC, curve.setting(at), during.end - at);
}

std::vector<Evidence> evidenceOf(const Formulation& whole, const Schedule& schedule,
                                 const EveningFacts& facts, const Progress& progress,
                                 OvenIndex oven)
{
    const Problem& problem = whole.problem;
    std::vector<Evidence> evidence;
    for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
        const OvenDemand& demand = problem.ovenDemands[index];
        const StepFact& fact = facts.steps[demand.from.task];
        if (schedule.ovens[index] != oven || !fact.isBegun() || demand.mode == modeOff) {
            continue;
        }
        const PlanTime from = demand.from.edge == Edge::Start ? fact.when.start : fact.when.end;
        if (from <= facts.now) {
            evidence.push_back({from, demand.acceptLow * milli, demand.acceptHigh * milli});
        }
    }
    for (const OvenReading& reading : progress.ovens) {
        const PlanTime at = whole.calendar.planTime(reading.at);
        if (reading.oven == problem.ovens[oven].id && at <= facts.now && at >= planTime(0)) {
            evidence.push_back({at, reading.celsius * milli, reading.celsius * milli});
        }
    }
    std::ranges::stable_sort(evidence, {}, &Evidence::at);
    return evidence;
}

} // namespace

IndexedVector<OvenIndex, int> ovensNow(const Formulation& whole, const Schedule& schedule,
                                       const EveningFacts& facts, const Progress& progress)
{
    IndexedVector<OvenIndex, int> degrees(whole.problem.ovens.size());
    for (const OvenIndex index : whole.problem.ovens.indices()) {
        const Oven& oven = whole.problem.ovens[index];
        std::int64_t milliC = oven.startC * milli;
        PlanTime at = planTime(0);
        for (const Evidence& each : evidenceOf(whole, schedule, facts, progress, index)) {
            milliC = advanced(oven, schedule.programs[index], milliC, {at, each.at});
            milliC = std::clamp(milliC, each.lowMilliC, each.highMilliC);
            at = each.at;
        }
        milliC = advanced(oven, schedule.programs[index], milliC, {at, std::max(at, facts.now)});
        // Half degrees up: an oven at its setting stays there.
        degrees[index] = static_cast<int>((milliC + milli / 2) / milli);
    }
    return degrees;
}

} // namespace suppertide
