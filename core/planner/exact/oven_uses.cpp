#include "core/planner/exact/oven_uses.h"

#include <algorithm>
#include <utility>

#include "core/assign/closed_up.h"
#include "core/planner/exact/reading.h"

namespace suppertide::exact {

namespace {

/// What an oven holds in a solution.
struct Inside
{
    std::vector<HeldStay> held;
    Literals chosen;

    [[nodiscard]] std::vector<OvenStay> stays() const
    {
        std::vector<OvenStay> result;
        for (const HeldStay& one : held) {
            result.push_back(one.stay);
        }
        return result;
    }
};

using Stays = IndexedVector<OvenDemandIndex, std::optional<Stretch>>;

Inside insideOf(const Model& model, const Stays& stays, const std::vector<Bound>& values,
                OvenIndex oven)
{
    const auto valueOf = [&](const Term& term) { return values[term.variable.index] + term.plus; };
    Inside inside;
    for (const OvenDemandIndex index : model.problem().ovenDemands.indices()) {
        const auto& held = stays[index];
        for (const auto& [candidate, chosen] : model.ovens[index]) {
            if (candidate == oven && holds(values, chosen)) {
                inside.held.push_back({ovenStay(model.problem().ovenDemands[index],
                                                interval(valueOf(held->from), valueOf(held->to))),
                                       held->from, held->to});
                inside.chosen.push_back(chosen);
            }
        }
    }
    return inside;
}

/// The literals that say what is in and when, by the clock.
Literals becauseByTheClock(const Inside& inside)
{
    Literals because = inside.chosen;
    for (const HeldStay& one : inside.held) {
        for (const auto& [term, at] : {std::pair(one.from, minuteOf(one.stay.during.start)),
                                       std::pair(one.to, minuteOf(one.stay.during.end))}) {
            because.push_back(engine::atMost(term, static_cast<Bound>(at)));
            because.push_back(engine::atLeast(term, static_cast<Bound>(at)));
        }
    }
    return because;
}

/// Whether what the oven costs follows from how the stays lie to each other, if they come late
/// enough: an oven that starts warm is of use only at once.
bool countsFromAnyTime(const Model& model, const Inside& inside, const Oven& oven)
{
    return !inside.held.empty() && model.differences && oven.startC <= oven.ambientC &&
           std::ranges::all_of(inside.held, [&](const HeldStay& one) {
               const Term& zero = inside.held.front().from;
               return model.differences->knows(zero, one.from) &&
                      model.differences->knows(zero, one.to);
           });
}

/// The literals that say what is in and how it lies to each other; absent: that does not tell.
std::optional<Literals> becauseToEachOther(const Model& model, const Inside& inside,
                                           const Oven& oven)
{
    if (!countsFromAnyTime(model, inside, oven)) {
        return std::nullopt;
    }
    const std::int64_t forgets = ovenForgets(oven);
    const HeldStay& first = *std::ranges::min_element(
        inside.held, {}, [](const HeldStay& one) { return one.stay.during.start; });
    if (minuteOf(first.stay.during.start) < forgets) {
        return std::nullopt;
    }
    Literals because = whySequence(sequenceOf(inside.held), *model.differences, forgets);
    because.insert(because.end(), inside.chosen.begin(), inside.chosen.end());
    // No earlier than an oven that is cold can be warm.
    because.push_back(engine::atLeast(first.from, static_cast<Bound>(forgets)));
    return because;
}

/// Why so much and no less, for as wide times as can be shown.
WidenedClaim widened(const Model& model, const Inside& inside, OvenIndex oven, std::int64_t limit)
{
    if (!countsFromAnyTime(model, inside, model.problem().ovens[oven])) {
        return {};
    }
    WidenedClaim claim = widenedClaim(*model.ovenBoxes[oven], inside.held, *model.differences,
                                      model.engine().trail(), limit);
    for (const std::size_t i : claim.stays) {
        claim.because->push_back(inside.chosen[i]);
    }
    return claim;
}

} // namespace

std::vector<OvenUse> ovenUses(const Model& model, const std::vector<Bound>& values,
                              OvenPrograms& programs, std::int64_t below, bool widens)
{
    const auto limits = ovenLimits(model, values, below);
    std::vector<OvenUse> uses;
    for (const OvenIndex oven : model.problem().ovens.indices()) {
        const Inside inside = insideOf(model, model.ovenStays, values, oven);
        const KnownProgram known = programs.of(oven, inside.stays(), limits[oven]);
        std::optional<Literals> because;
        if (!known.isImpossible) {
            because = becauseToEachOther(model, inside, model.problem().ovens[oven]);
        }
        OvenUse use{oven,
                    std::nullopt,
                    known.bound,
                    limits[oven],
                    known.isImpossible,
                    because ? *std::move(because) : becauseByTheClock(inside),
                    std::nullopt};
        if (widens && known.bound >= limits[oven] &&
            limits[oven] > values[model.ovenLeast[oven].index]) {
            use.tooDear = widened(model, inside, oven, limits[oven]);
        }
        if (known.program) {
            use.cost = known.cost;
        }
        uses.push_back(std::move(use));
    }
    return uses;
}

std::vector<Literals> withoutProgram(const Model& model, const std::vector<Bound>& values,
                                     OvenPrograms& programs)
{
    std::vector<Literals> clauses;
    for (const OvenIndex oven : model.problem().ovens.indices()) {
        const Inside inside = insideOf(model, model.ovenStretches, values, oven);
        if (programs.of(oven, inside.stays(), 0).isImpossible) {
            Literals& clause = clauses.emplace_back();
            for (const Literal literal : becauseByTheClock(inside)) {
                clause.push_back(~literal);
            }
        }
    }
    return clauses;
}

} // namespace suppertide::exact
