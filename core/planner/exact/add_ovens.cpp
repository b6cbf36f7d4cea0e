#include <algorithm>

#include "core/planner/engine/timetable.h"
#include "core/planner/exact/pairs.h"
#include "core/planner/exact/parts.h"
#include "core/planner/exact/stay_lengths.h"

namespace suppertide::exact {

namespace {

/// Of one oven; beyond it sums could overflow.
constexpr std::int64_t mostShelves = 100'000;

std::int64_t milli(int degrees)
{
    return std::int64_t{degrees} * 1000;
}

std::int64_t rampMinutes(std::int64_t difference, std::int64_t rate)
{
    return difference <= 0 ? 0 : (difference + rate - 1) / rate;
}

/// The temperatures that an oven may have as a stay begins and as it ends.
struct Levels
{
    std::int64_t least = 0;
    std::int64_t most = 0;
};

struct Stay
{
    OvenDemandIndex index;
    const OvenDemand* demand = nullptr;
    Stretch held;
    std::int64_t leastLength = 0;

    [[nodiscard]] bool isOff() const { return demand->mode == modeOff; }
    [[nodiscard]] Levels atStart(const Oven& oven) const
    {
        Levels levels{milli(demand->acceptLow), milli(demand->acceptHigh)};
        if (isOff() && demand->acceptLow > oven.ambientC) {
            levels.least += oven.coolMilliCPerMin * leastLength;
        }
        return levels;
    }
    [[nodiscard]] Levels atEnd(const Oven& oven) const
    {
        Levels levels{milli(demand->acceptLow), milli(demand->acceptHigh)};
        if (isOff()) {
            levels.most = std::max(std::min(milli(oven.ambientC), levels.most),
                                   levels.most - oven.coolMilliCPerMin * leastLength);
        }
        return levels;
    }
};

std::int64_t rampBetween(const Oven& oven, const Levels& before, const Levels& after)
{
    return std::max(rampMinutes(after.least - before.most, oven.heatMilliCPerMin),
                    rampMinutes(before.least - after.most, oven.coolMilliCPerMin));
}

bool mayShare(const OvenDemand& one, const OvenDemand& other)
{
    return (!one.mode || !other.mode || *one.mode == *other.mode) &&
           one.acceptLow <= other.acceptHigh && other.acceptLow <= one.acceptHigh;
}

/// Whether an oven can have what the stay accepts at all, empty and given time.
bool suits(const Oven& oven, const Stay& stay)
{
    const OvenDemand& demand = *stay.demand;
    const int hottest = std::max({oven.maxC, oven.startC, oven.ambientC});
    const int coolest = std::min({oven.minC, oven.startC, oven.ambientC});
    return demand.acceptLow <= hottest && demand.acceptHigh >= coolest &&
           stay.atStart(oven).least <= milli(demand.acceptHigh) && demand.shelves <= oven.shelves;
}

/// The literal also says that something is held, if that is not sure.
Stay stayOf(Model& model, OvenDemandIndex index)
{
    const OvenDemand& demand = model.problem().ovenDemands[index];
    Stretch held = model.stretch(demand.from, demand.to, model.selector("oven:" + demand.id));
    const bool ofOneTask = held.from.variable == held.to.variable;
    const std::int64_t least = model.stayLengths[index].least;
    const std::int64_t length =
        ofOneTask ? held.to.plus - held.from.plus : std::max<std::int64_t>(1, least);
    if (length <= 0) {
        held.held = ~model.always();
    } else if (!ofOneTask && least <= 0 && !model.isNever(held.held)) {
        const Literal something = engine::isTrue(model.boolean(held.held));
        model.edge(held.from, held.to, 1, something);
        model.edge(held.to, held.from, 0, model.all({held.held, ~something}));
        held.held = something;
    }
    return {index, &demand, held, std::max<std::int64_t>(1, length)};
}

void chooseOven(Model& model, const Stay& stay)
{
    Literals any;
    const auto& ovens = model.problem().ovens;
    std::vector<OvenIndex> possible;
    for (const OvenIndex oven : ovens.indices()) {
        const auto& listed = stay.demand->ovens;
        if ((!listed || std::find(listed->begin(), listed->end(), oven) != listed->end()) &&
            suits(ovens[oven], stay)) {
            possible.push_back(oven);
        }
    }
    for (const OvenIndex oven : possible) {
        const Literal chosen =
            possible.size() == 1 ? stay.held.held : engine::isTrue(model.engine().newBoolean());
        model.implies(chosen, {stay.held.held});
        for (const Literal other : any) {
            model.engine().addClause({~other, ~chosen});
        }
        any.push_back(chosen);
        model.ovens[stay.index].emplace_back(oven, chosen);
        const Levels start{milli(ovens[oven].startC), milli(ovens[oven].startC)};
        const std::int64_t ramp = rampBetween(ovens[oven], start, stay.atStart(ovens[oven]));
        model.implies(chosen, {engine::atLeast(stay.held.from, static_cast<Bound>(ramp))});
    }
    model.implies(stay.held.held, any);
}

std::optional<Literal> inOven(const Model& model, const Stay& stay, OvenIndex oven)
{
    for (const auto& [candidate, chosen] : model.ovens[stay.index]) {
        if (candidate == oven) {
            return chosen;
        }
    }
    return std::nullopt;
}

/// With the oven off it cools, so another stay that must be warm ends soon after the first minute
/// of it, or begins after its end: 20–110 °C off from 12:00 on, at 3 °C a minute, and 90–110 °C can
/// share no more than the first 6 minutes. Absent: they may share all.
std::optional<std::int64_t> mostShared(const Oven& oven, const Stay& off, const Stay& warm)
{
    if (!off.isOff() || warm.demand->acceptLow <= oven.ambientC) {
        return std::nullopt;
    }
    const std::int64_t fall = milli(off.demand->acceptHigh) - milli(warm.demand->acceptLow);
    const std::int64_t most = fall / oven.coolMilliCPerMin;
    return most < off.leastLength ? std::optional{most} : std::nullopt;
}

void keepApartFromOff(Model& model, OvenIndex index, const Stay& off, const Stay& warm,
                      Literal both)
{
    const Oven& oven = model.problem().ovens[index];
    if (const auto most = mostShared(oven, off, warm)) {
        addApart(model, off.held, rampBetween(oven, off.atEnd(oven), warm.atStart(oven)), warm.held,
                 -*most, both);
    }
}

void keepApart(Model& model, const Stay& one, const Stay& other)
{
    for (const OvenIndex index : model.problem().ovens.indices()) {
        const Oven& oven = model.problem().ovens[index];
        const auto first = inOven(model, one, index);
        const auto second = inOven(model, other, index);
        if (!first || !second) {
            continue;
        }
        if (mayShare(*one.demand, *other.demand)) {
            const Literal both = model.all({*first, *second});
            keepApartFromOff(model, index, one, other, both);
            keepApartFromOff(model, index, other, one, both);
            continue;
        }
        addApart(model, one.held, rampBetween(oven, one.atEnd(oven), other.atStart(oven)),
                 other.held, rampBetween(oven, other.atEnd(oven), one.atStart(oven)),
                 model.all({*first, *second}));
    }
}

void keepTogether(Model& model, const Stay& one, const Stay& other)
{
    const Literal both = model.all({one.held.held, other.held.held});
    for (const OvenIndex oven : model.problem().ovens.indices()) {
        const auto first = inOven(model, one, oven);
        const auto second = inOven(model, other, oven);
        if (first) {
            model.engine().addClause(second ? Literals{~both, ~*first, *second}
                                            : Literals{~both, ~*first});
        }
        if (second) {
            model.engine().addClause(first ? Literals{~both, ~*second, *first}
                                           : Literals{~both, ~*second});
        }
    }
}

void keepShelves(Model& model, const std::vector<Stay>& stays)
{
    std::int64_t allShelves = 0;
    std::vector<engine::TimetableItem> together;
    for (const OvenIndex oven : model.problem().ovens.indices()) {
        const std::int64_t shelves = model.problem().ovens[oven].shelves;
        allShelves += shelves;
        std::int64_t sum = 0;
        std::vector<engine::TimetableItem> items;
        for (const Stay& stay : stays) {
            const auto chosen = inOven(model, stay, oven);
            if (chosen && stay.demand->shelves > 0) {
                items.push_back({stay.held.from, stay.held.to,
                                 static_cast<Bound>(stay.demand->shelves), *chosen});
                sum += stay.demand->shelves;
            }
        }
        if (sum > shelves) {
            engine::TimetablePropagator::post(model.engine(), std::move(items),
                                              static_cast<Bound>(shelves));
        }
    }
    for (const Stay& stay : stays) {
        if (stay.demand->shelves > 0 && stay.demand->shelves <= allShelves) {
            together.push_back({stay.held.from, stay.held.to,
                                static_cast<Bound>(stay.demand->shelves), stay.held.held});
        }
    }
    if (model.problem().ovens.size() > 1 && together.size() > 1) {
        engine::TimetablePropagator::post(model.engine(), std::move(together),
                                          static_cast<Bound>(allShelves));
    }
}

} // namespace

void addOvens(Model& model)
{
    const Problem& problem = model.problem();
    for (const Oven& oven : problem.ovens) {
        if (oven.shelves > mostShelves) {
            model.refuse();
            return;
        }
    }
    if (!model.style().selectors) {
        model.stayLengths = stayLengths(problem);
    }
    std::vector<Stay> stays;
    for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
        const Stay stay = stayOf(model, index);
        if (model.isNever(stay.held.held)) {
            continue;
        }
        if (stay.demand->acceptLow > stay.demand->acceptHigh) {
            model.engine().addFact(~stay.held.held);
            continue;
        }
        chooseOven(model, stay);
        model.ovenStretches[index] = stay.held;
        model.ovenStays[index] = stay.held;
        stays.push_back(stay);
    }
    for (std::size_t i = 0; i < stays.size(); ++i) {
        for (std::size_t j = i + 1; j < stays.size(); ++j) {
            keepApart(model, stays[i], stays[j]);
            if (stays[i].demand->group && stays[i].demand->group == stays[j].demand->group) {
                keepTogether(model, stays[i], stays[j]);
            }
        }
    }
    keepShelves(model, stays);
}

} // namespace suppertide::exact
