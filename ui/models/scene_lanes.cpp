#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/problem/oven_curve.h"
#include "ui/models/scene_parts.h"

namespace suppertide::ui {

namespace {

/// Lanes of one kind stand close together.
enum Group
{
    Ovens,
    Burners,
    Appliances,
    Vessels,
    Cooks,
    Cold
};

std::string shelvesText(std::int64_t shelves)
{
    return shelves == 1 ? "1 shelf" : fmt::format("{} shelves", shelves);
}

std::string litresText(Litres room)
{
    const std::int64_t tenths = room.smallest();
    return tenths % 10 == 0 ? fmt::format("{} litres", tenths / 10)
                            : fmt::format("{}.{} litres", tenths / 10, tenths % 10);
}

/// Where a ramp ends between two turns of the knob, so that a hold is drawn flat.
std::vector<HeatKnot> withRampEnds(const Oven& oven, const OvenCurve& curve,
                                   const Interval& horizon)
{
    std::vector<HeatKnot> knots;
    const auto& turns = curve.knots();
    for (std::size_t i = 0; i < turns.size(); ++i) {
        const auto& turn = turns[i];
        const PlanTime end = i + 1 < turns.size() ? turns[i + 1].at : horizon.end;
        if (turn.at > horizon.end) {
            break;
        }
        knots.push_back({std::max(turn.at, horizon.start),
                         Celsius::tenths(static_cast<int>(turn.milliC / 100))});
        const std::int64_t target = 1000LL * turn.setC.value_or(oven.ambientC);
        const std::int64_t rate =
            target > turn.milliC ? oven.heatMilliCPerMin : oven.coolMilliCPerMin;
        const std::int64_t gap = target > turn.milliC ? target - turn.milliC : turn.milliC - target;
        const PlanTime reached =
            std::max(turn.at, horizon.start) + Minutes{(gap + rate - 1) / rate};
        if (gap > 0 && reached < end) {
            knots.push_back({reached, Celsius::tenths(static_cast<int>(target / 100))});
        }
    }
    knots.push_back(
        {horizon.end, Celsius::tenths(static_cast<int>(curve.milliC(horizon.end) / 100))});
    return knots;
}

OvenLane ovenOf(const SceneContext& context, OvenIndex index)
{
    const Oven& oven = context.problem.ovens[index];
    const OvenProgram& program = context.plan.schedule.programs[index];
    const Interval horizon{planTime(0), context.problem.horizon};
    OvenLane lane;
    lane.shelves = static_cast<int>(oven.shelves);
    lane.top = Celsius::degrees(std::max(oven.maxC, 100));
    if (program.empty()) {
        return lane;
    }
    const OvenCurve curve(oven, program);
    lane.curve = withRampEnds(oven, curve, horizon);
    for (std::size_t i = 0; i < program.size(); ++i) {
        const PlanTime end = i + 1 < program.size() ? program[i + 1].at : horizon.end;
        OvenSetting setting;
        setting.when = {program[i].at, end};
        if (program[i].setC) {
            setting.set = Celsius::degrees(*program[i].setC);
        }
        const auto& pins = context.source.layout->ovenSettings;
        setting.isPinned = std::any_of(pins.begin(), pins.end(), [&](const OvenSettingPin& pin) {
            const PlanCalendar& calendar = context.formulation.calendar;
            return pin.oven == oven.id && calendar.planTime(pin.from) < end &&
                   program[i].at < calendar.planTime(pin.to) && program[i].setC == pin.setC;
        });
        lane.settings.push_back(setting);
    }
    return lane;
}

CookLane cookOf(const SceneContext& context, CookIndex index)
{
    const Cook& cook = context.problem.cooks[index];
    CookLane lane{cook.free, {}, context.places.times().atTable(cook)};
    std::sort(lane.table.begin(), lane.table.end());
    std::vector<Interval> merged;
    for (const Interval& table : lane.table) {
        if (!merged.empty() && table.start < merged.back().end) {
            merged.back().end = std::max(merged.back().end, table.end);
        } else if (!table.empty()) {
            merged.push_back(table);
        }
    }
    lane.table = merged;
    return lane;
}

std::string cookNote(const SceneContext& context, CookIndex index)
{
    for (const KitchenCook& cook : context.source.kitchen->cooks) {
        if (cook.id.text() == context.problem.cooks[index].id) {
            return cook.isHost ? "host" : "cook";
        }
    }
    return {};
}

ColdLane coldOf(const SceneContext& context, CountIndex index)
{
    const std::int64_t perUnit =
        std::max<std::int64_t>(1, context.formulation.counts[index].perUnit);
    const auto room = [&](std::int64_t amount) {
        return Litres::ofSmallest(amount * 10 / perUnit);
    };
    ColdLane lane{room(context.problem.counts[index].capacity), {}};
    struct Held
    {
        Interval when;
        std::int64_t amount = 0;
        std::string name;
    };
    std::vector<Held> held;
    std::set<PlanTime> turns;
    for (const DemandIndex demand : context.problem.demands.indices()) {
        const Demand& wanted = context.problem.demands[demand];
        const auto when = context.places.times().held(wanted.from, wanted.to);
        if (wanted.count != index || !when) {
            continue;
        }
        const DemandSource& source = context.formulation.demands[demand];
        held.push_back(
            {*when, wanted.amount, source.dishName.empty() ? source.text : source.dishName});
        turns.insert(when->start);
        turns.insert(when->end);
    }
    for (const PlanTime turn : turns) {
        std::int64_t used = 0;
        std::string contents;
        for (const Held& thing : held) {
            if (thing.when.contains(turn)) {
                used += thing.amount;
                contents += fmt::format("{}{} {}", contents.empty() ? "" : ", ",
                                        inSentence(thing.name), litresText(room(thing.amount)));
            }
        }
        lane.level.push_back({turn, room(used), contents});
    }
    return lane;
}

const Burner* findBurner(const Kitchen& kitchen, const std::string& id)
{
    const auto there = std::find_if(kitchen.burners.begin(), kitchen.burners.end(),
                                    [&](const Burner& burner) { return burner.id.text() == id; });
    return there == kitchen.burners.end() ? nullptr : &*there;
}

class LaneBuilder
{
public:
    explicit LaneBuilder(const SceneContext& context) : context_(context) {}

    std::vector<SceneLane> build()
    {
        for (const OvenIndex oven : context_.problem.ovens.indices()) {
            lanes_.push_back({ovenLane(context_.problem, oven),
                              context_.formulation.ovenNames[oven],
                              shelvesText(context_.problem.ovens[oven].shelves),
                              ovenOf(context_, oven),
                              Ovens,
                              {}});
        }
        addPools(ResourceKind::Burner);
        addPools(ResourceKind::Appliance);
        addPools(ResourceKind::Vessel);
        for (const CookIndex cook : context_.problem.cooks.indices()) {
            lanes_.push_back({cookLane(context_.problem, cook),
                              context_.formulation.cookNames[cook],
                              cookNote(context_, cook),
                              cookOf(context_, cook),
                              Cooks,
                              {}});
        }
        addCold(ResourceKind::Fridge);
        addCold(ResourceKind::Freezer);
        return std::move(lanes_);
    }

private:
    void addPools(ResourceKind kind)
    {
        for (const PoolIndex pool : context_.problem.pools.indices()) {
            if (context_.formulation.pools[pool].kind == kind) {
                addPool(pool, kind);
            }
        }
    }

    void addPool(PoolIndex pool, ResourceKind kind)
    {
        const ResourceSource& source = context_.formulation.pools[pool];
        const auto& units = context_.problem.pools[pool].units;
        for (const UnitIndex unit : units.indices()) {
            SceneLane lane;
            lane.id = unitLane(context_.problem, pool, unit);
            const std::string unitName = unit.value() < source.unitNames.size()
                                             ? source.unitNames[unit.value()]
                                             : source.name;
            if (kind == ResourceKind::Burner) {
                lane.name = "Burners"; // said to who cannot see; painted once
                lane.kind = burnerOf(units[unit], unit.value(), units.size());
                lane.group = Burners;
                lane.note = unitName;
            } else if (kind == ResourceKind::Appliance) {
                lane.name = unitName;
                lane.kind = ApplianceLane{};
                lane.group = Appliances;
            } else {
                lane.name = unitName;
                lane.kind = VesselLane{};
                lane.group = Vessels;
            }
            if (isWorthALane(pool, lane, kind)) {
                lanes_.push_back(std::move(lane));
            }
        }
    }

    /// A vessel has a lane only if more of it is wanted than there is; an appliance if it is used.
    [[nodiscard]] bool isWorthALane(PoolIndex pool, const SceneLane& lane, ResourceKind kind) const
    {
        switch (kind) {
        case ResourceKind::Vessel:
            return std::any_of(context_.plan.clashes.begin(), context_.plan.clashes.end(),
                               [&](const Clash& clash) { return clash.pool == pool; });
        case ResourceKind::Appliance:
            return context_.places.isUsed(lane.id);
        case ResourceKind::Oven:
        case ResourceKind::Burner:
        case ResourceKind::Fridge:
        case ResourceKind::Freezer:
        case ResourceKind::Watch:
        case ResourceKind::Cook:
            return true;
        }
        return true;
    }

    [[nodiscard]] BurnerLane burnerOf(const PoolUnit& unit, std::size_t position,
                                      std::size_t burners) const
    {
        const Burner* burner = findBurner(*context_.source.kitchen, unit.id);
        return {burner != nullptr ? burner->size : millimetres(unit.size),
                static_cast<int>(position), static_cast<int>(burners)};
    }

    void addCold(ResourceKind kind)
    {
        for (const CountIndex count : context_.problem.counts.indices()) {
            const ResourceSource& source = context_.formulation.counts[count];
            if (source.kind != kind) {
                continue;
            }
            ColdLane cold = coldOf(context_, count);
            if (kind == ResourceKind::Freezer && cold.level.empty()) {
                continue;
            }
            const std::string note =
                fmt::format("{}, {}", inSentence(source.name), litresText(cold.capacity));
            lanes_.push_back({countLane(context_.problem, count),
                              "Cold space",
                              note,
                              std::move(cold),
                              Cold,
                              {}});
        }
    }

    const SceneContext& context_;
    std::vector<SceneLane> lanes_;
};

} // namespace

std::vector<SceneLane> lanesOf(const SceneContext& context)
{
    return LaneBuilder(context).build();
}

std::vector<SceneLane> lanesOfKitchen(const Kitchen& kitchen)
{
    std::vector<SceneLane> lanes;
    for (const KitchenOven& oven : kitchen.ovens) {
        lanes.push_back({"oven:" + oven.id.text(),
                         oven.name,
                         shelvesText(oven.shelves),
                         OvenLane{oven.shelves, oven.high, {}, {}, {}},
                         Ovens,
                         {}});
    }
    for (std::size_t i = 0; i < kitchen.burners.size(); ++i) {
        const Burner& burner = kitchen.burners[i];
        lanes.push_back(
            {"unit:burners/" + burner.id.text(),
             i == 0 ? "Burners" : "",
             burner.name,
             BurnerLane{burner.size, static_cast<int>(i), static_cast<int>(kitchen.burners.size())},
             Burners,
             {}});
    }
    for (const KitchenCook& cook : kitchen.cooks) {
        lanes.push_back({"cook:" + cook.id.text(),
                         cook.name,
                         cook.isHost ? "host" : "cook",
                         CookLane{},
                         Cooks,
                         {}});
    }
    for (const ColdPlace& place : kitchen.coldPlaces) {
        if (place.kind == ColdKind::Fridge) {
            lanes.push_back({"count:" + place.id.text(),
                             "Cold space",
                             fmt::format("{}, {}", inSentence(place.name), litresText(place.room)),
                             ColdLane{place.room, {}},
                             Cold,
                             {}});
        }
    }
    return lanes;
}

} // namespace suppertide::ui
