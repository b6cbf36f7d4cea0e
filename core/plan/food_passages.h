// Food passages: where a followed food is from its first step to the table under one schedule, and
// what heat it meets there: the surroundings of each stay, minute by minute where an oven warms or
// cools. What that does to the food is computed in food_temperatures.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/formulation.h"
#include "core/problem/oven_curve.h"
#include "core/problem/schedule.h"
#include "core/problem/timetable.h"
#include "core/safety/food_history.h"
#include "core/science/heated_body.h"

namespace suppertide {

/// The same surroundings for so long.
struct HeatPart
{
    double minutes = 0;
    science::Exchange place;

    friend bool operator==(const HeatPart&, const HeatPart&) = default;
};

/// How the temperature of a food goes during a stay.
struct PassageHeat
{
    double minutes = 0;          // how long the stay is
    std::vector<HeatPart> parts; // empty: by `to` alone, or not known
    std::optional<double> to;    // °C in its middle, at the end, where a cook measures and stops

    friend bool operator==(const PassageHeat&, const PassageHeat&) = default;
};

struct FoodPassage
{
    Interval when;
    safety::Place place = safety::Place::Counter;
    std::optional<double> surroundings; // °C, the mean of the stay
    bool isCovered = false;
    bool isFan = false;
    const FoodStage* stage = nullptr; // null: it is kept, or stands
    PassageHeat heat;
};

/// The kitchen's temperatures in °C, and which of its ovens have a fan.
struct KitchenClimate
{
    double room = 20;
    double fridge = 4;    // the warmest that is said of one: nobody says in which it stands
    double freezer = -18; // likewise
    double boiling = 100;
    std::vector<std::string> ovensWithFan; // by their ids

    friend bool operator==(const KitchenClimate&, const KitchenClimate&) = default;
};
[[nodiscard]] KitchenClimate climateOf(const Kitchen& kitchen);
/// Of a place where food is kept; warm: 70 °C.
[[nodiscard]] double temperatureAt(KeepPlace place, const KitchenClimate& climate);

/// One schedule as the foods of a plan go through it. Both arguments must outlive it.
class FoodRoutes
{
public:
    FoodRoutes(const Formulation& formulation, const Schedule& schedule,
               const KitchenClimate& climate);

    /// In order, without overlaps, from its first stage on, or from when it was bought; empty if it
    /// is not cooked in this schedule: none of its steps is present, or the method that it belongs
    /// to is not taken.
    [[nodiscard]] std::vector<FoodPassage> passagesOf(const TrackedFood& food) const;

private:
    [[nodiscard]] bool isTaken(const TrackedFood& food) const;
    [[nodiscard]] FoodPassage stagePassage(const TrackedFood& food, const FoodStage& stage,
                                           const Interval& when) const;
    [[nodiscard]] FoodPassage keepPassage(KeepPlace place, std::optional<OvenDemandIndex> oven,
                                          const Interval& when) const;
    /// From coming home with it to its first stage, where it is kept.
    void addShopping(const TrackedFood& food, std::vector<FoodPassage>& passages) const;
    void addGap(const TrackedFood& food, const Interval& gap,
                std::vector<FoodPassage>& passages) const;
    /// The fan is on where there is one and the step does not ask for something else.
    [[nodiscard]] bool hasFanOn(OvenDemandIndex demand) const;
    [[nodiscard]] std::vector<HeatPart> inClosedPot(std::vector<HeatPart> air) const;
    [[nodiscard]] std::vector<HeatPart> inBath(std::vector<HeatPart> air) const;
    [[nodiscard]] std::vector<HeatPart> ovenHeat(OvenDemandIndex demand, const Interval& when,
                                                 bool isBare) const;
    void heatInStep(const FoodStage& stage, bool isStirred, FoodPassage& passage) const;
    [[nodiscard]] std::optional<PlanTime> endOf(const TrackedFood& food) const;

    const Formulation& formulation_;
    const Schedule& schedule_;
    KitchenClimate climate_;
    Timetable times_;
    IndexedVector<OvenIndex, OvenCurve> curves_;
};

} // namespace suppertide
