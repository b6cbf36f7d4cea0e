// FoodHistory: what happens to one food from the fridge, the shop or the freezer to the table:
// where it is, how warm it is, and what is done with it. The input of judge_history; it knows no
// plan.
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <variant>
#include <vector>

#include "core/base/civil_time.h"
#include "core/base/interval.h"
#include "core/base/plan_time.h"
#include "core/base/result.h"
#include "core/food/food_class.h"
#include "core/safety/minute_span.h"
#include "core/safety/thaw_time.h"

namespace suppertide::safety {

enum class Place
{
    Counter,
    AtTable,
    Fridge,
    Freezer,
    Oven,
    Hob,
    Microwave,
    WaterBath,
    WarmHold,
    IceBath,
    ThawWater, // cold or running water, while thawing
};

inline constexpr std::array allPlaces{Place::Counter,   Place::AtTable,   Place::Fridge,
                                      Place::Freezer,   Place::Oven,      Place::Hob,
                                      Place::Microwave, Place::WaterBath, Place::WarmHold,
                                      Place::IceBath,   Place::ThawWater};

[[nodiscard]] std::string_view nameOf(Place place);
[[nodiscard]] std::optional<Place> findPlace(std::string_view name);
/// Oven, hob, microwave oven and water bath: places that are there to heat.
[[nodiscard]] bool isHeating(Place place);
/// Fridge, freezer and ice bath.
[[nodiscard]] bool isCold(Place place);

/// How warm a food is at a minute after the plan's origin, in °C. Between samples: linear.
struct TemperatureSample
{
    double minute = 0;
    double core = 0; // where it warms and cools last
    double surface = 0;

    friend bool operator==(const TemperatureSample&, const TemperatureSample&) = default;
};

/// A stay at one place. An empty curve means that nobody has computed it: then a counter is taken
/// to be at `surroundings`, or 20 °C, a fridge at `surroundings`, or 4 °C, a freezer at −18 °C, and
/// nothing is taken for granted of heat. Before its first and after its last sample a curve is
/// level.
struct HistoryPiece
{
    PlanTime from;
    PlanTime to;
    Place place = Place::Counter;
    std::vector<TemperatureSample> curve;
    std::optional<double> surroundings; // °C of air or water
    bool isCovered = false;             // in a lidded pot, a braise
    bool isFan = false;                 // an oven with its fan on

    friend bool operator==(const HistoryPiece&, const HistoryPiece&) = default;
};

/// Finished as something that keeps: day 1 of its date mark.
struct Made
{
    PlanTime at;

    friend bool operator==(const Made&, const Made&) = default;
};
/// From now on another class of food: raw poultry has become cooked meat.
struct Became
{
    PlanTime at;
    FoodClass food = FoodClass::CookedDish;

    friend bool operator==(const Became&, const Became&) = default;
};
/// The heat that begins now reheats it.
struct Reheated
{
    PlanTime at;
    bool forHotHolding = true; // false: eaten at once

    friend bool operator==(const Reheated&, const Reheated&) = default;
};
/// The thawing that begins now.
struct Thawed
{
    PlanTime at;
    ThawBy method = ThawBy::Fridge;

    friend bool operator==(const Thawed&, const Thawed&) = default;
};
/// Divided into portions or shallow containers: the curve knows what that does; kept for showing.
struct Portioned
{
    PlanTime at;

    friend bool operator==(const Portioned&, const Portioned&) = default;
};
/// Another food, kept already, went into this one: the mixture keeps no longer than its oldest
/// part, and has stood as long as the part had.
struct MixedIn
{
    PlanTime at;
    Minutes fridge{0};               // that the part has been in the fridge (keptSoFar)
    int midnights = 0;               // that have passed over the part unfrozen since it was made
    std::vector<MinuteSpan> stood{}; // off the heat and out of the cold until then (stoodSoFar)

    friend bool operator==(const MixedIn&, const MixedIn&) = default;
};

using HistoryEvent = std::variant<Made, Became, Reheated, Thawed, Portioned, MixedIn>;

struct FoodHistory
{
    FoodKind kind; // what it is at its beginning
    std::optional<double> kilograms;
    std::vector<HistoryPiece> pieces; // in order, without overlaps
    std::vector<HistoryEvent> events; // in any order
    bool isEaten = true; // at its end; false: it goes into another food, whose history goes on

    friend bool operator==(const FoodHistory&, const FoodHistory&) = default;
};

/// Pieces out of order or overlapping, samples out of order, outside their piece, or not within
/// −80…600 °C. The sentence says which. Linear.
[[nodiscard]] Result<void> checkHistory(const FoodHistory& history);

/// The class that the food has at a time: the last one it became.
[[nodiscard]] FoodClass classAt(const FoodHistory& history, PlanTime time);

/// What a food has behind it when it goes into another at `until` (as MixedIn{until, …}): minutes
/// in the fridge and midnights passed unfrozen, both since it was last raw or was made, what it
/// took over included.
[[nodiscard]] MixedIn keptSoFar(const FoodHistory& history, PlanTime until,
                                const PlanCalendar& calendar);

} // namespace suppertide::safety
