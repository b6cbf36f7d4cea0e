#include "core/plan/batch_room.h"

#include <algorithm>
#include <functional>
#include <vector>

namespace suppertide {

namespace {

/// What `count` vessels of the kind, the largest ones, hold together when filled alike; absent if
/// there are none.
std::optional<Litres> heldByVessels(const Kitchen& kitchen, const VesselUse& use)
{
    std::vector<Litres> each;
    for (const Vessel& vessel : kitchen.vessels) {
        if (vessel.kind == use.kind && vessel.volume >= use.volume) {
            each.insert(each.end(), static_cast<std::size_t>(vessel.count), vessel.volume);
        }
    }
    if (each.empty()) {
        return std::nullopt;
    }
    std::ranges::sort(each, std::greater{});
    // Fewer than are wanted are a clash of their own, which is not to be hidden by more batches.
    const std::size_t last = std::min(each.size(), static_cast<std::size_t>(use.count)) - 1;
    return Litres::ofSmallest(each[last].smallest() * use.count);
}

std::optional<Litres> heldByAppliance(const Kitchen& kitchen, const ApplianceUse& use)
{
    std::optional<Litres> most;
    for (const Appliance& appliance : kitchen.appliances) {
        if (appliance.kind == use.kind && appliance.holds) {
            most = std::max(most.value_or(Litres{}), *appliance.holds);
        }
    }
    return most;
}

struct Filled
{
    Filling with;
    Litres held;
};

std::optional<Filled> filled(const Kitchen& kitchen, const Use& use)
{
    if (const auto* vessel = std::get_if<VesselUse>(&use); vessel && vessel->filling) {
        const auto held = heldByVessels(kitchen, *vessel);
        return held ? std::optional(Filled{*vessel->filling, *held}) : std::nullopt;
    }
    if (const auto* appliance = std::get_if<ApplianceUse>(&use); appliance && appliance->filling) {
        const auto held = heldByAppliance(kitchen, *appliance);
        return held ? std::optional(Filled{*appliance->filling, *held}) : std::nullopt;
    }
    return std::nullopt;
}

constexpr std::int64_t wholePercent = 100;

} // namespace

BatchRoom roomForBatch(const Step& step, const Portions& recipePortions, const Portions& portions,
                       const Kitchen& kitchen)
{
    BatchRoom room;
    room.atOnce = step.portionsPerBatch;
    for (const Use& use : step.uses) {
        const auto full = filled(kitchen, use);
        if (!full) {
            continue;
        }
        const Portions fits =
            recipePortions * Rational{full->held.smallest() * full->with.percent,
                                      full->with.volume.smallest() * wholePercent};
        if (fits < std::min(portions, Portions{1})) {
            room.tooSmall = &use;
        } else {
            room.atOnce = std::min(room.atOnce.value_or(fits), fits);
        }
    }
    return room;
}

Litres roomFor(const Filling& filling, int vessels, const Portions& recipePortions,
               const Portions& portions)
{
    const Rational each = Rational{filling.volume.smallest() * wholePercent,
                                   std::int64_t{filling.percent} * vessels} *
                          portions / recipePortions;
    return Litres::ofSmallest(each.ceiled());
}

} // namespace suppertide
