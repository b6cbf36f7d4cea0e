#include <algorithm>

#include "core/planner/exact/oven_cost.h"
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
    if (problem.ovenDemands.empty()) {
        return;
    }
    const std::int64_t rate = problem.costs.ovenOnMinute;
    for (const OvenIndex oven : problem.ovens.indices()) {
        const Variable least = model.engine().newVariable(0, Model::mostOvenCost);
        const Variable likely = model.engine().newVariable(0, Model::mostOvenCost);
        model.edge({least, 0}, {likely, 0}, 0, model.always());
        model.ovenLeast.push_back(least);
        model.ovenCost.push_back(likely);
        std::vector<PossibleStay> stays;
        for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
            const OvenDemand& demand = problem.ovenDemands[index];
            const auto& held = model.ovenStretches[index];
            for (const auto& [candidate, chosen] : model.ovens[index]) {
                if (candidate != oven) {
                    continue;
                }
                stays.push_back({held->from, held->to, chosen, ovenStay(demand, interval(0, 1))});
                // As sure parts may be short, a stay counts at least for its length.
                const bool ofOneTask = held->from.variable == held->to.variable;
                const std::int64_t minutes = ofOneTask
                                                 ? leastMinutesOn(problem.ovens[oven], demand,
                                                                  held->to.plus - held->from.plus)
                                                 : 0;
                if (minutes > 0 && rate > 0) {
                    const std::int64_t cost =
                        std::min(rate * minutes, std::int64_t{Model::mostOvenCost});
                    model.implies(chosen, {engine::atLeast(least, static_cast<Bound>(cost))});
                }
            }
        }
        OvenCostPropagator::post(model.engine(), problem.ovens[oven],
                                 ovenProgramStyle(problem.costs, true), std::move(stays), least,
                                 Model::mostOvenCost);
    }
}

} // namespace suppertide::exact
