// The kitchen's things as counts and pools, and how they are held.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/plan/evening.h"
#include "core/plan/oven_rate.h"

namespace suppertide {

namespace {

constexpr const char* burners = "burners";

/// Calls body(use) for all uses of steps and spans.
template <typename Body>
void forEachUse(const std::vector<Making>& makings, Body body)
{
    const auto inPart = [&](const RecipePart& part) {
        for (const Step& step : part.steps) {
            std::ranges::for_each(step.uses, body);
        }
        for (const Span& span : part.spans) {
            body(span.use);
        }
    };
    for (const Making& making : makings) {
        for (const MakingVariant& variant : making.variants) {
            inPart(variant.recipe.part);
            for (const MethodChoice& choice : variant.recipe.methods) {
                for (const Method& method : choice.methods) {
                    inPart(method.part);
                }
            }
        }
    }
}

/// Kinds of vessel of which a step takes several at once.
std::set<std::string> kindsTakenTogether(const std::vector<Making>& makings)
{
    std::set<std::string> kinds;
    forEachUse(makings, [&](const Use& use) {
        if (const auto* vessel = std::get_if<VesselUse>(&use); vessel && vessel->count > 1) {
            kinds.insert(vessel->kind);
        }
    });
    return kinds;
}

void addPool(Evening& evening, ResourceKind kind, const std::string& id, const std::string& name,
             Pool pool, std::vector<std::string> unitNames)
{
    KitchenThing thing{kind, name, {}, {}, static_cast<std::int64_t>(pool.units.size())};
    pool.id = id;
    thing.pool =
        evening.draft.addPool(std::move(pool), ResourceSource{kind, name, std::move(unitNames), 1});
    evening.things.emplace(std::pair{kind, name}, thing);
}

void addNumber(Evening& evening, ResourceKind kind, const std::string& name, std::int64_t units)
{
    KitchenThing thing{kind, name, {}, {}, units};
    thing.count = evening.draft.addCount({name, units}, ResourceSource{kind, name, {}, 1});
    evening.things.emplace(std::pair{kind, name}, thing);
}

void addBurners(Evening& evening)
{
    Pool pool;
    std::vector<std::string> names;
    for (const Burner& burner : evening.kitchen().burners) {
        pool.units.push_back({burner.id.text(), burner.size.smallest()});
        names.push_back(burner.name);
    }
    if (!pool.units.empty()) {
        addPool(evening, ResourceKind::Burner, burners, burners, std::move(pool), std::move(names));
    }
}

void addAppliances(Evening& evening)
{
    std::set<std::string> kinds;
    for (const Appliance& first : evening.kitchen().appliances) {
        if (!kinds.insert(first.kind).second) {
            continue;
        }
        Pool pool;
        std::vector<std::string> names;
        for (const Appliance& appliance : evening.kitchen().appliances) {
            if (appliance.kind == first.kind) {
                pool.units.push_back(
                    {appliance.id.text(), appliance.holds.value_or(Litres{}).smallest()});
                names.push_back(appliance.name);
            }
        }
        addPool(evening, ResourceKind::Appliance, first.kind, first.kind, std::move(pool),
                std::move(names));
    }
}

void addVesselsOf(Evening& evening, const std::string& kind, bool areTakenTogether)
{
    Pool pool;
    std::vector<std::string> names;
    std::set<std::int64_t> sizes;
    for (const Vessel& vessel : evening.kitchen().vessels) {
        if (vessel.kind != kind) {
            continue;
        }
        sizes.insert(vessel.volume.smallest());
        for (int i = 1; i <= vessel.count; ++i) {
            const std::string number = vessel.count > 1 ? "-" + std::to_string(i) : "";
            pool.units.push_back({vessel.id.text() + number, vessel.volume.smallest()});
            names.push_back(vessel.count > 1 ? vessel.name + " " + std::to_string(i) : vessel.name);
        }
    }
    if (areTakenTogether && sizes.size() == 1) {
        addNumber(evening, ResourceKind::Vessel, kind,
                  static_cast<std::int64_t>(pool.units.size()));
    } else if (!pool.units.empty()) {
        addPool(evening, ResourceKind::Vessel, kind, kind, std::move(pool), std::move(names));
    }
}

void addVessels(Evening& evening)
{
    const std::set<std::string> together = kindsTakenTogether(evening.makings);
    std::set<std::string> kinds;
    for (const Vessel& vessel : evening.kitchen().vessels) {
        if (kinds.insert(vessel.kind).second) {
            addVesselsOf(evening, vessel.kind, together.contains(vessel.kind));
        }
    }
}

void addColdPlace(Evening& evening, ColdKind cold, ResourceKind kind, const std::string& name)
{
    std::int64_t room = 0;
    for (const ColdPlace& place : evening.kitchen().coldPlaces) {
        room += place.kind == cold ? place.room.smallest() : 0;
    }
    constexpr std::int64_t tenthsPerLitre = 10;
    KitchenThing thing{kind, name, {}, {}, room};
    thing.count =
        evening.draft.addCount({name, room}, ResourceSource{kind, name, {}, tenthsPerLitre});
    evening.things.emplace(std::pair{kind, name}, thing);
}

/// The hottest that a dish of the evening asks of an oven; the room's where none is used.
Celsius hottestAsked(const Evening& evening)
{
    Celsius hottest = evening.kitchen().roomTemperature;
    forEachUse(evening.makings, [&hottest](const Use& use) {
        if (const auto* oven = std::get_if<OvenUse>(&use)) {
            hottest = std::max(hottest, oven->prefer.value_or(oven->low));
        }
    });
    return hottest;
}

void addOvens(Evening& evening)
{
    const Celsius hottest = hottestAsked(evening);
    const int room = evening.kitchen().roomTemperature.wholeDegrees();
    for (const KitchenOven& oven : evening.kitchen().ovens) {
        Oven added;
        added.id = oven.id.text();
        added.shelves = oven.shelves;
        added.minC = oven.low.wholeDegrees();
        added.maxC = oven.high.wholeDegrees();
        added.startC = room;
        added.ambientC = room;
        added.heatMilliCPerMin =
            heatingRate(oven, evening.kitchen().roomTemperature, std::min(hottest, oven.high));
        added.coolMilliCPerMin = oven.coolMilliCPerMin;
        evening.draft.addOven(std::move(added), oven.name);
    }
}

/// Units of the thing that are as large as that.
std::int64_t unitsAsLarge(const Evening& evening, const KitchenThing& thing, std::int64_t size)
{
    if (!thing.pool) {
        return thing.units;
    }
    return std::ranges::count_if(evening.draft.problem().pools[*thing.pool].units,
                                 [&](const PoolUnit& unit) { return unit.size >= size; });
}

/// "blender that holds 1.5 l", "wide pan that is large enough": what there is none of.
std::string missing(const std::string& kind, const std::optional<Filling>& filling)
{
    if (!filling) {
        return kind + " that is large enough";
    }
    const std::int64_t tenths = filling->volume.smallest();
    return tenths % 10 == 0 ? fmt::format("{} that holds {} l", kind, tenths / 10)
                            : fmt::format("{} that holds {}.{} l", kind, tenths / 10, tenths % 10);
}

DemandIndex holdThing(Evening& evening, const KitchenThing& thing, Demand demand,
                      const DemandSource& source)
{
    demand.count = thing.count;
    demand.pool = thing.pool;
    return evening.draft.addDemand(std::move(demand), source);
}

bool hasVessel(const Evening& evening, const VesselUse& use, Litres room)
{
    return std::ranges::any_of(evening.kitchen().vessels, [&](const Vessel& vessel) {
        return vessel.kind == use.kind && vessel.volume >= room;
    });
}

std::vector<DemandIndex> holdVessels(Evening& evening, const VesselUse& use, const TaskPoint& from,
                                     const TaskPoint& to, const std::string& id,
                                     const DemandSource& source)
{
    const KitchenThing& kind = thingOf(evening, ResourceKind::Vessel, use.kind);
    const Litres room = std::max(use.volume, use.filling ? use.filling->volume : Litres{});
    const std::int64_t size = room.smallest();
    Demand demand{id + ":" + use.kind, from, to, {}, 1, {}, 0, {}};
    const bool isNoneLarge = kind.pool
                                 ? unitsAsLarge(evening, kind, size) == 0
                                 : kind.units > 0 && use.filling && !hasVessel(evening, use, room);
    if (kind.count || isNoneLarge) {
        // None that large counts as none at all: then only another kitchen helps.
        const KitchenThing& number =
            isNoneLarge ? thingOf(evening, ResourceKind::Vessel, missing(use.kind, use.filling))
                        : kind;
        demand.amount = use.count;
        return {holdThing(evening, number, std::move(demand), source)};
    }
    std::vector<DemandIndex> held;
    demand.minSize = size;
    for (int i = 0; i < use.count; ++i) {
        held.push_back(holdThing(evening, kind, demand, source));
    }
    return held;
}

/// Of one of which nobody has said what it holds, nothing is asked.
DemandIndex holdAppliance(Evening& evening, const ApplianceUse& use, Demand demand,
                          const DemandSource& source)
{
    const KitchenThing& kind = thingOf(evening, ResourceKind::Appliance, use.kind);
    const bool isAnyKnown = unitsAsLarge(evening, kind, 1) > 0;
    if (!use.filling || !kind.pool || !isAnyKnown) {
        return holdThing(evening, kind, std::move(demand), source);
    }
    demand.minSize = use.filling->volume.smallest();
    if (unitsAsLarge(evening, kind, demand.minSize) > 0) {
        return holdThing(evening, kind, std::move(demand), source);
    }
    demand.minSize = 0;
    return holdThing(evening,
                     thingOf(evening, ResourceKind::Appliance, missing(use.kind, use.filling)),
                     std::move(demand), source);
}

std::optional<std::string> modeOf(OvenMode mode)
{
    switch (mode) {
    case OvenMode::Any:
        return std::nullopt;
    case OvenMode::Fan:
        return "fan";
    case OvenMode::Conventional:
        return "conventional";
    case OvenMode::Grill:
        return "grill";
    case OvenMode::Off:
        return modeOff;
    }
    return std::nullopt;
}

bool hasMode(const KitchenOven& oven, OvenMode mode)
{
    return (mode != OvenMode::Fan || oven.hasFan) && (mode != OvenMode::Grill || oven.hasGrill);
}

/// A whole degree within the band, at least on its edge.
int wholeAbove(Celsius temperature)
{
    const int whole = temperature.wholeDegrees();
    return Celsius::degrees(whole) < temperature ? whole + 1 : whole;
}
int wholeBelow(Celsius temperature)
{
    const int whole = temperature.wholeDegrees();
    return Celsius::degrees(whole) > temperature ? whole - 1 : whole;
}

} // namespace

void addKitchen(Evening& evening)
{
    addOvens(evening);
    addBurners(evening);
    addAppliances(evening);
    addVessels(evening);
    addColdPlace(evening, ColdKind::Fridge, ResourceKind::Fridge, "fridge");
    addColdPlace(evening, ColdKind::Freezer, ResourceKind::Freezer, "freezer");
}

const KitchenThing& thingOf(Evening& evening, ResourceKind kind, const std::string& name)
{
    const auto known = evening.things.find({kind, name});
    if (known != evening.things.end()) {
        return known->second;
    }
    addNumber(evening, kind, name, 0);
    return evening.things.at({kind, name});
}

std::vector<DemandIndex> hold(Evening& evening, const Use& use, const TaskPoint& from,
                              const TaskPoint& to, const std::string& id, DemandSource source)
{
    if (const auto* burner = std::get_if<BurnerUse>(&use)) {
        source.thing = "burner";
        const KitchenThing& any = thingOf(evening, ResourceKind::Burner, burners);
        const std::int64_t size = burner->pan.smallest();
        const bool fits = unitsAsLarge(evening, any, size) > 0;
        const KitchenThing& thing =
            fits ? any : thingOf(evening, ResourceKind::Burner, "burner that is wide enough");
        Demand demand{id + ":burner", from, to, {}, 1, {}, fits ? size : 0, {}};
        return {holdThing(evening, thing, std::move(demand), source)};
    }
    if (const auto* appliance = std::get_if<ApplianceUse>(&use)) {
        source.thing = appliance->kind;
        return {holdAppliance(evening, *appliance,
                              {id + ":" + appliance->kind, from, to, {}, 1, {}, 0, {}}, source)};
    }
    if (const auto* vessel = std::get_if<VesselUse>(&use)) {
        source.thing = vessel->kind;
        return holdVessels(evening, *vessel, from, to, id, source);
    }
    return {};
}

OvenDemandIndex holdOven(Evening& evening, const OvenUse& use, const TaskPoint& from,
                         const TaskPoint& to, const std::string& id, DemandSource source)
{
    OvenDemand demand;
    demand.id = id + ":oven";
    demand.from = from;
    demand.to = to;
    demand.shelves = use.shelves;
    demand.acceptLow = wholeAbove(use.low);
    demand.acceptHigh = wholeBelow(use.high);
    if (use.prefer) {
        demand.prefer = use.prefer->wholeDegrees();
    }
    demand.mode = modeOf(use.mode);
    source.thing = "oven";
    std::vector<OvenIndex> able;
    const auto& ovens = evening.kitchen().ovens;
    for (std::size_t i = 0; i < ovens.size(); ++i) {
        if (hasMode(ovens[i], use.mode)) {
            able.emplace_back(i);
        }
    }
    if (able.empty()) {
        const std::string missing = ovens.empty() ? "oven" : "oven with " + *demand.mode;
        holdThing(evening, thingOf(evening, ResourceKind::Oven, missing),
                  {demand.id, from, to, {}, 1, {}, 0, {}}, source);
    } else if (able.size() < ovens.size()) {
        demand.ovens = std::move(able);
    }
    return evening.draft.addOvenDemand(std::move(demand), std::move(source));
}

void keepWatch(Evening& evening, const TaskPoint& from, const TaskPoint& to, const std::string& id,
               DemandSource source)
{
    source.rule = Rule::Cooks;
    source.thing = "somebody awake at home";
    const KitchenThing& watch = thingOf(evening, ResourceKind::Watch, "watch");
    ++evening.draft.count(*watch.count).capacity; // one for each hot step
    holdThing(evening, watch, {id + ":watch", from, to, {}, 1, {}, 0, {}}, source);
}

DemandSource demandSource(const Making& making, Rule rule, std::string thing, std::string text)
{
    DemandSource source;
    source.rule = rule;
    source.dish = making.dish->id;
    source.dishName = making.name;
    source.thing = std::move(thing);
    source.text = std::move(text);
    return source;
}

} // namespace suppertide
