#include <algorithm>
#include <cstdint>
#include <map>
#include <memory>
#include <utility>

#include "core/planner/exact/oven_cost.h"
#include "core/planner/exact/parts.h"

namespace suppertide::exact {

namespace {

PossibleStay possibleStay(const Model& model, OvenDemandIndex index, Literal inside,
                          std::int64_t length)
{
    const OvenDemand& demand = model.problem().ovenDemands[index];
    const Stretch& held = *model.ovenStays[index];
    return {held.from,
            held.to,
            inside,
            ovenStay(demand, interval(0, 1)),
            demand.shelves,
            length,
            demand.mode.value_or("")};
}

/// An end of a stay that its beginning says, wherever something is held.
struct SaidEnd
{
    Term by;
    Literal held;
};
using SaidEnds = std::map<std::uint32_t, SaidEnd>; // by variable

SaidEnds sayEnds(Model& model)
{
    SaidEnds said;
    for (const OvenDemandIndex index : model.problem().ovenDemands.indices()) {
        auto& stay = model.ovenStays[index];
        const StayLength& length = model.stayLengths[index];
        if (!stay || !length.isFixed() || stay->from.variable == stay->to.variable) {
            continue;
        }
        const Term end{stay->from.variable, stay->from.plus + static_cast<Bound>(length.least)};
        said.insert_or_assign(stay->to.variable.index,
                              SaidEnd{{end.variable, end.plus - stay->to.plus}, stay->held});
        stay->to = end;
    }
    for (const auto& stay : model.ovenStays) {
        if (stay) {
            said.erase(stay->from.variable.index); // it is a beginning too, and is named as such
        }
    }
    return said;
}

StartDifferences differencesOf(Model& model)
{
    std::vector<Variable> starts;
    for (const OvenDemandIndex index : model.problem().ovenDemands.indices()) {
        if (const auto& held = model.ovenStays[index]) {
            starts.push_back(held->from.variable);
            starts.push_back(held->to.variable);
        }
    }
    return {model.engine(), std::move(starts)};
}

/// Where it is decided which of two comes first, by a lag or by taking turns, both starts may still
/// be anywhere, and say nothing of their difference.
void holdToEdges(Model& model, const StartDifferences& differences, const SaidEnds& said)
{
    const auto isOfLeast = [](engine::View view) { return view == Variable{view / 2}.minus(); };
    for (const engine::Edges::Half& half : model.engine().edges().halves()) {
        if (!isOfLeast(half.from) || !isOfLeast(half.to)) {
            continue;
        }
        Literals apart;
        const auto termOf = [&](engine::View view) {
            const auto end = said.find(view / 2);
            if (end == said.end()) {
                return Term{Variable{view / 2}, 0};
            }
            apart.push_back(~end->second.held);
            return end->second.by;
        };
        const Term from = termOf(half.from);
        const Term to = termOf(half.to);
        if (from.variable == to.variable || !differences.knows(from, to)) {
            continue;
        }
        differences.sayAtLeast(from, to, -std::int64_t{half.weight}, apart);
        if (half.enabler) {
            apart.push_back(~*half.enabler);
        }
        model.engine().addClause(std::move(apart));
    }
}

} // namespace

void addOvenCosts(Model& model)
{
    const Problem& problem = model.problem();
    if (problem.ovenDemands.empty() || problem.ovens.empty()) {
        return;
    }
    const OvenProgramStyle style = ovenProgramStyle(problem.costs, true);
    const SaidEnds said = sayEnds(model);
    model.differences = std::make_shared<const StartDifferences>(differencesOf(model));
    holdToEdges(model, *model.differences, said);
    for (const OvenIndex oven : problem.ovens.indices()) {
        const Variable least = model.engine().newVariable(0, Model::mostOvenCost);
        const Variable likely = model.engine().newVariable(0, Model::mostOvenCost);
        model.edge({least, 0}, {likely, 0}, 0, model.always());
        model.ovenLeast.push_back(least);
        model.ovenCost.push_back(likely);
        std::vector<PossibleStay> stays;
        for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
            for (const auto& [candidate, chosen] : model.ovens[index]) {
                if (candidate == oven) {
                    stays.push_back(
                        possibleStay(model, index, chosen, model.stayLengths[index].least));
                }
            }
        }
        model.ovenBoxes.push_back(std::make_shared<BoxCosts>(problem.ovens[oven], style));
        OvenCostPropagator::post(model.engine(), {problem.ovens[oven]}, style, std::move(stays),
                                 model.differences, model.ovenBoxes[oven], least,
                                 Model::mostOvenCost);
    }
    std::vector<PossibleStay> all;
    for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
        if (const auto& held = model.ovenStays[index]) {
            all.push_back(possibleStay(model, index, held->held, model.stayLengths[index].least));
        }
    }
    model.ovensTogether = model.engine().newVariable(0, Model::mostOvenCost);
    OvenCostPropagator::post(model.engine(), {problem.ovens.begin(), problem.ovens.end()}, style,
                             std::move(all), model.differences, model.ovenBoxes[OvenIndex{0}],
                             *model.ovensTogether, Model::mostOvenCost);
}

} // namespace suppertide::exact
