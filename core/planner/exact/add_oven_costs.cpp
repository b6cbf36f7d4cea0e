#include <algorithm>

#include "core/planner/exact/parts.h"

namespace suppertide::exact {

namespace {

/// The least minutes on while a stay lasts that must be warmer than its surroundings. A minute on
/// warms by no more than the heating rate and a minute off cools by at least what the coolest
/// temperature accepted is above the surroundings, up to the cooling rate; over the stay the two
/// may differ by the width of what is accepted.
std::int64_t leastMinutesOn(const Oven& oven, const OvenDemand& demand, std::int64_t length)
{
    const std::int64_t above = (std::int64_t{demand.acceptLow} - oven.ambientC) * 1000;
    if (above <= 0 || demand.mode == modeOff) {
        return 0;
    }
    const std::int64_t cools = std::min(oven.coolMilliCPerMin, above);
    const std::int64_t width = (std::int64_t{demand.acceptHigh} - demand.acceptLow) * 1000;
    const std::int64_t deficit = cools * length - width;
    const std::int64_t perMinute = oven.heatMilliCPerMin + cools;
    return deficit <= 0 ? 0 : (deficit + perMinute - 1) / perMinute;
}

} // namespace

void addOvenCosts(Model& model)
{
    const Problem& problem = model.problem();
    const std::int64_t rate = problem.costs.ovenOnMinute;
    if (rate == 0) {
        return;
    }
    // Stays may share their minutes, so only the longest one of each oven counts.
    for (const OvenIndex oven : problem.ovens.indices()) {
        const Variable on = model.engine().newVariable(
            0, static_cast<Bound>(std::max<std::int64_t>(0, minuteOf(problem.horizon))));
        bool any = false;
        for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
            const OvenDemand& demand = problem.ovenDemands[index];
            const auto& held = model.ovenStretches[index];
            if (!held || held->from.variable != held->to.variable) {
                continue;
            }
            const std::int64_t least =
                leastMinutesOn(problem.ovens[oven], demand, held->to.plus - held->from.plus);
            for (const auto& [candidate, chosen] : model.ovens[index]) {
                if (candidate == oven && least > 0) {
                    model.implies(chosen, {engine::atLeast(on, static_cast<Bound>(least))});
                    any = true;
                }
            }
        }
        if (any) {
            model.chargeOven(on, rate);
        }
    }
}

} // namespace suppertide::exact
