#include "core/plan/food_passages.h"

#include <algorithm>
#include <cmath>

#include "core/science/moist_heat.h"
#include "core/science/moist_surface.h"
#include "core/science/surroundings.h"
#include "core/science/water.h"

namespace suppertide {

namespace {

/// Food kept warm on a burner at its lowest or in a flask: common practice.
constexpr double keptWarmAt = 70;
/// A pan at medium heat: common practice.
constexpr double panAt = 160;
/// Of an oven that warms or cools, so much counts as one temperature.
constexpr double steadyWithin = 5;
constexpr double milli = 1000;

double degrees(Celsius temperature)
{
    return temperature.tenths() / 10.0;
}

double coefficient(science::Place place)
{
    return science::surroundingsOf(place).coefficient.likely;
}

double usualTemperature(science::Place place, double otherwise)
{
    return science::surroundingsOf(place).temperature.value_or(otherwise);
}

double minutesOf(const Interval& when)
{
    return static_cast<double>(when.length().count());
}

double warmest(const Kitchen& kitchen, ColdKind kind, double usual)
{
    std::optional<double> warmest;
    for (const ColdPlace& place : kitchen.coldPlaces) {
        if (place.kind == kind) {
            const double here = place.temperature ? degrees(*place.temperature) : usual;
            warmest = std::max(warmest.value_or(here), here);
        }
    }
    return warmest.value_or(usual);
}

void setHeat(FoodPassage& passage, science::Place place, double temperature)
{
    passage.surroundings = temperature;
    passage.heat.parts = {{minutesOf(passage.when), {temperature, coefficient(place)}}};
}

double meanOf(const std::vector<HeatPart>& parts)
{
    double sum = 0;
    double minutes = 0;
    for (const HeatPart& part : parts) {
        sum += part.minutes * part.place.temperature;
        minutes += part.minutes;
    }
    return minutes > 0 ? sum / minutes : 0;
}

bool isWarmOven(KeepPlace place, const std::optional<OvenDemandIndex>& oven)
{
    return place == KeepPlace::Warm && oven.has_value();
}

} // namespace

KitchenClimate climateOf(const Kitchen& kitchen)
{
    KitchenClimate climate;
    climate.room = degrees(kitchen.roomTemperature);
    climate.fridge = warmest(kitchen, ColdKind::Fridge, climate.fridge);
    climate.freezer = warmest(kitchen, ColdKind::Freezer, climate.freezer);
    if (const auto boiling = science::boilingPointAtAltitude(kitchen.altitudeMetres)) {
        climate.boiling = *boiling;
    }
    for (const KitchenOven& oven : kitchen.ovens) {
        if (oven.hasFan) {
            climate.ovensWithFan.push_back(oven.id.text());
        }
    }
    return climate;
}

double temperatureAt(KeepPlace place, const KitchenClimate& climate)
{
    switch (place) {
    case KeepPlace::Nowhere:
    case KeepPlace::Counter:
        return climate.room;
    case KeepPlace::Fridge:
        return climate.fridge;
    case KeepPlace::Freezer:
        return climate.freezer;
    case KeepPlace::Warm:
        return keptWarmAt;
    }
    return climate.room;
}

FoodRoutes::FoodRoutes(const Formulation& formulation, const Schedule& schedule,
                       const KitchenClimate& climate)
    : formulation_(formulation), schedule_(schedule), climate_(climate),
      times_(formulation.problem, schedule)
{
    for (const OvenIndex oven : formulation.problem.ovens.indices()) {
        curves_.push_back(OvenCurve(formulation.problem.ovens[oven], schedule.programs[oven]));
    }
}

bool FoodRoutes::isTaken(const TrackedFood& food) const
{
    if (!food.with) {
        return true;
    }
    const auto& [choice, option] = *food.with;
    return formulation_.problem.choices[choice].options.size() == 1 ||
           schedule_.options[choice] == option;
}

std::vector<FoodPassage> FoodRoutes::passagesOf(const TrackedFood& food) const
{
    std::vector<FoodPassage> passages;
    if (!isTaken(food)) {
        return passages;
    }
    std::optional<PlanTime> until; // of the stages so far
    addShopping(food, passages);
    for (const FoodStage& stage : food.stages) {
        const auto first = times_.interval(stage.first);
        const auto last = times_.interval(stage.last);
        if (!first || !last) {
            continue;
        }
        const Interval when{std::max(first->start, until.value_or(first->start)), last->end};
        if (until && *until < when.start) {
            addGap(food, {*until, when.start}, passages);
        }
        if (when.start < when.end) {
            passages.push_back(stagePassage(food, stage, when));
        }
        until = std::max(when.end, until.value_or(when.end));
    }
    const auto end = endOf(food);
    if (until && end && *until < *end) {
        addGap(food, {*until, *end}, passages);
    }
    if (until && end && food.atTable > Minutes{0}) {
        const PlanTime served = std::max(*until, *end);
        FoodPassage table =
            keepPassage(KeepPlace::Counter, std::nullopt, {served, served + food.atTable});
        table.place = safety::Place::AtTable;
        passages.push_back(std::move(table));
    }
    return passages;
}

void FoodRoutes::addShopping(const TrackedFood& food, std::vector<FoodPassage>& passages) const
{
    std::optional<PlanTime> first;
    for (const FoodStage& stage : food.stages) {
        if (const auto when = times_.interval(stage.first)) {
            first = std::min(first.value_or(when->start), when->start);
        }
    }
    std::optional<PlanTime> home;
    for (const TaskIndex trip : food.bought) {
        const auto when = times_.interval(trip);
        if (first && when && when->end <= *first) {
            home = std::max(home.value_or(when->end), when->end);
        }
    }
    if (home && *home < *first) {
        passages.push_back(keepPassage(food.from, std::nullopt, {*home, *first}));
    }
}

std::optional<PlanTime> FoodRoutes::endOf(const TrackedFood& food) const
{
    std::optional<PlanTime> end;
    for (const TaskPoint& point : food.until) {
        if (const auto time = times_.time(point)) {
            end = std::max(end.value_or(*time), *time);
        }
    }
    return end;
}

FoodPassage FoodRoutes::keepPassage(KeepPlace place, std::optional<OvenDemandIndex> oven,
                                    const Interval& when) const
{
    FoodPassage passage;
    passage.when = when;
    passage.heat.minutes = minutesOf(when);
    const double temperature = temperatureAt(place, climate_);
    switch (place) {
    case KeepPlace::Nowhere:
    case KeepPlace::Counter:
        passage.place = safety::Place::Counter;
        setHeat(passage, science::Place::Counter, temperature);
        break;
    case KeepPlace::Fridge:
        passage.place = safety::Place::Fridge;
        setHeat(passage, science::Place::Fridge, temperature);
        break;
    case KeepPlace::Freezer:
        passage.place = safety::Place::Freezer;
        setHeat(passage, science::Place::Freezer, temperature);
        break;
    case KeepPlace::Warm:
        passage.place = safety::Place::WarmHold;
        setHeat(passage, science::Place::StillOven, temperature);
        break;
    }
    if (isWarmOven(place, oven)) {
        std::vector<HeatPart> parts = ovenHeat(*oven, when, false);
        if (!parts.empty()) {
            passage.surroundings = meanOf(parts);
            passage.heat.parts = std::move(parts);
        }
    }
    return passage;
}

/// What the waits of the food say of a gap, and the counter for what they leave.
void FoodRoutes::addGap(const TrackedFood& food, const Interval& gap,
                        std::vector<FoodPassage>& passages) const
{
    struct Stay
    {
        Interval when;
        const FoodKeep* keep;
    };
    std::vector<Stay> stays;
    for (const FoodKeep& keep : food.keeps) {
        const Lag& lag = formulation_.problem.lags[keep.lag];
        const auto from = times_.time(lag.from);
        const auto to = times_.time(lag.to);
        const bool isSomewhere =
            keep.place != KeepPlace::Nowhere && keep.place != KeepPlace::Counter;
        if (from && to && isSomewhere && *from < *to) {
            const Interval when = Interval{*from, *to}.common(gap);
            if (when.start < when.end) {
                stays.push_back({when, &keep});
            }
        }
    }
    std::ranges::stable_sort(stays, {}, [](const Stay& stay) { return stay.when.start; });
    PlanTime at = gap.start;
    for (const Stay& stay : stays) {
        if (at < stay.when.start) {
            passages.push_back(
                keepPassage(KeepPlace::Counter, std::nullopt, {at, stay.when.start}));
            at = stay.when.start;
        }
        if (at < stay.when.end) {
            passages.push_back(keepPassage(stay.keep->place, stay.keep->oven, {at, stay.when.end}));
            at = stay.when.end;
        }
    }
    if (at < gap.end) {
        passages.push_back(keepPassage(KeepPlace::Counter, std::nullopt, {at, gap.end}));
    }
}

bool FoodRoutes::hasFanOn(OvenDemandIndex demand) const
{
    const auto& mode = formulation_.problem.ovenDemands[demand].mode;
    const auto& oven = schedule_.ovens[demand];
    return (!mode || *mode == "fan") && oven &&
           std::ranges::find(climate_.ovensWithFan, formulation_.problem.ovens[*oven].id) !=
               climate_.ovensWithFan.end();
}

std::vector<HeatPart> FoodRoutes::ovenHeat(OvenDemandIndex demand, const Interval& when,
                                           bool isBare) const
{
    const auto& oven = schedule_.ovens[demand];
    if (!oven || schedule_.programs[*oven].empty()) {
        return {};
    }
    const OvenCurve& curve = curves_[*oven];
    const double dry =
        coefficient(hasFanOn(demand) ? science::Place::FanOven : science::Place::StillOven);
    std::vector<HeatPart> parts;
    const std::vector<PlanTime> turns = curve.turningMinutes(when);
    for (std::size_t i = 1; i < turns.size(); ++i) {
        const double first = static_cast<double>(curve.milliC(turns[i - 1])) / milli;
        const double last = static_cast<double>(curve.milliC(turns[i])) / milli;
        const auto minutes = static_cast<double>((turns[i] - turns[i - 1]).count());
        const auto count = static_cast<int>(std::ceil(std::abs(last - first) / steadyWithin));
        for (int part = 0; part < std::max(count, 1); ++part) {
            const double share = (part + 0.5) / std::max(count, 1);
            const science::Exchange air{first + share * (last - first), dry};
            const auto felt = science::withEvaporation(
                air, isBare ? science::bareSurface.likely : science::coveredSurface.likely);
            parts.push_back({minutes / std::max(count, 1), felt ? *felt : air});
        }
    }
    return parts;
}

FoodPassage FoodRoutes::stagePassage(const TrackedFood& food, const FoodStage& stage,
                                     const Interval& when) const
{
    FoodPassage passage;
    passage.when = when;
    passage.stage = &stage;
    passage.isCovered = stage.does.isLid;
    passage.heat.minutes = minutesOf(when);
    if (stage.does.to) {
        passage.heat.to = degrees(*stage.does.to);
    }
    const bool isStirred = food.shape == FoodShape::Stirred;
    switch (stage.does.treatment) {
    case Treatment::Stand:
        passage.place = safety::Place::Counter;
        setHeat(passage, science::Place::Counter, climate_.room);
        if (stage.does.to) { // by what is stirred into it
            passage.heat.parts.clear();
        }
        break;
    case Treatment::Heat:
        heatInStep(stage, isStirred, passage);
        break;
    case Treatment::Boil:
        passage.place = safety::Place::Hob;
        passage.heat.to = passage.heat.to.value_or(climate_.boiling);
        break;
    case Treatment::Simmer:
    case Treatment::Reduce:
        passage.place = safety::Place::Hob;
        setHeat(passage, science::Place::BoilingWater, climate_.boiling);
        break;
    case Treatment::IceBath:
        passage.place = safety::Place::IceBath;
        setHeat(passage, science::Place::IceBath, usualTemperature(science::Place::IceBath, 0));
        break;
    case Treatment::Thaw:
        passage.place = safety::Place::ThawWater;
        setHeat(passage, science::Place::ColdWater,
                usualTemperature(science::Place::ColdWater, climate_.room));
        break;
    }
    return passage;
}

/// As step_estimate.h has it: in its own steam.
std::vector<HeatPart> FoodRoutes::inClosedPot(std::vector<HeatPart> air) const
{
    for (HeatPart& part : air) {
        const double h = part.place.coefficient;
        const auto place = science::inClosedPot(
            {part.place.temperature, {h, h, h}, climate_.room, climate_.boiling});
        if (place) {
            part.place = {place->temperature, place->coefficient.likely};
        }
    }
    return air;
}

/// Likewise: in the bath that the oven keeps hot.
std::vector<HeatPart> FoodRoutes::inBath(std::vector<HeatPart> air) const
{
    for (HeatPart& part : air) {
        if (const auto bath = science::waterBathInOven(part.place.temperature, climate_.boiling)) {
            part.place = {bath->likely, coefficient(science::Place::WaterBath)};
        }
    }
    return air;
}

void FoodRoutes::heatInStep(const FoodStage& stage, bool isStirred, FoodPassage& passage) const
{
    if (stage.oven) {
        passage.place = safety::Place::Oven;
        passage.isFan = hasFanOn(*stage.oven);
        const std::vector<HeatPart> air = ovenHeat(*stage.oven, passage.when, false);
        passage.heat.parts = stage.does.isInBath ? inBath(air)
                             : isStirred         ? air
                             : stage.does.isLid  ? inClosedPot(air)
                                                 : ovenHeat(*stage.oven, passage.when, true);
        if (!air.empty()) {
            passage.surroundings = meanOf(air);
        }
        return;
    }
    passage.place = safety::Place::Hob;
    if (stage.isOnBurner && !isStirred) {
        // One side at a time touches the pan.
        passage.heat.parts = {
            {passage.heat.minutes, {panAt, coefficient(science::Place::Pan) / 2}}};
    }
}

} // namespace suppertide
