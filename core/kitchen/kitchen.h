// Kitchen: what there is to cook with, and who cooks. Values only.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/base/id.h"
#include "core/quantity/quantity.h"

namespace suppertide {

using KitchenId = Id<struct KitchenTag>;
using KitchenItemId = Id<struct KitchenItemTag>; // oven, burner, appliance, vessel, cold place
using CookId = Id<struct CookTag>;

/// What a thermometer in an oven showed so long after it was switched on, cold.
struct OvenWarming
{
    Minutes after{0};
    Celsius shown;

    friend bool operator==(const OvenWarming&, const OvenWarming&) = default;
};

struct KitchenOven
{
    KitchenItemId id;
    std::string name;
    int shelves = 2;
    Celsius low = Celsius::degrees(50);
    Celsius high = Celsius::degrees(250);
    bool hasFan = true;
    bool hasGrill = false;
    /// Thousandths of a °C a minute.
    std::int64_t heatMilliCPerMin = 12'000;
    std::int64_t coolMilliCPerMin = 3'000;
    /// Measured by the cook, at most two, the second later and hotter; where there are any, they
    /// count and not heatMilliCPerMin.
    std::vector<OvenWarming> warming{};

    friend bool operator==(const KitchenOven&, const KitchenOven&) = default;
};

/// How a burner heats: decides how much of its power gets into the pan.
enum class BurnerKind
{
    Gas,
    Electric, // hotplate or radiant under glass
    Induction
};

struct Burner
{
    KitchenItemId id;
    std::string name; // "front left"
    Length size;      // the widest pan that it takes
    Power power;
    BurnerKind kind = BurnerKind::Electric;

    friend bool operator==(const Burner&, const Burner&) = default;
};

struct Appliance
{
    KitchenItemId id;
    std::string name;
    std::string kind;              // "blender"
    std::optional<Litres> holds{}; // of what is put into it; absent: nobody has said

    friend bool operator==(const Appliance&, const Appliance&) = default;
};

struct Vessel
{
    KitchenItemId id;
    std::string name;
    std::string kind; // "wide pan"
    Litres volume;
    Length diameter;
    int count = 1;

    friend bool operator==(const Vessel&, const Vessel&) = default;
};

enum class ColdKind
{
    Fridge,
    Freezer
};

struct ColdPlace
{
    KitchenItemId id;
    std::string name;
    ColdKind kind = ColdKind::Fridge;
    Litres room;                        // to spare, not in all
    std::optional<Celsius> temperature; // measured; absent: 4 °C, −18 °C

    friend bool operator==(const ColdPlace&, const ColdPlace&) = default;
};

/// What a cook is doing in some hours. Free: may work. AtHome: awake, but not working. Out or
/// asleep otherwise.
enum class Presence
{
    Free,
    AtHome
};

/// From one clock time to a later one on the same day; 24:00 is {24, 0}.
struct Hours
{
    ClockTime from;
    ClockTime to;
    Presence presence = Presence::Free;

    friend bool operator==(const Hours&, const Hours&) = default;
};

struct HoursOfDay
{
    CivilDate date;
    std::vector<Hours> hours; // rising, not overlapping; none: not there all day

    friend bool operator==(const HoursOfDay&, const HoursOfDay&) = default;
};

struct KitchenCook
{
    CookId id;
    std::string name;
    bool isHost = true; // sits at table with the guests
    std::vector<std::string> skills;
    std::vector<Hours> usualHours{{{8, 0}, {23, 0}, Presence::Free}}; // of every day

    friend bool operator==(const KitchenCook&, const KitchenCook&) = default;
};

/// How long something took, beside what was computed for it: what estimates learn from.
struct TimeTaken
{
    KitchenItemId id;
    std::string name; // "Roast the chicken"
    KitchenItemId on; // oven or burner
    CivilDate date;
    Minutes computed{0}; // without what had been learned
    Minutes taken{0};

    friend bool operator==(const TimeTaken&, const TimeTaken&) = default;
};

struct Kitchen
{
    KitchenId id;
    std::string name;
    std::vector<KitchenOven> ovens;
    std::vector<Burner> burners;
    std::vector<Appliance> appliances;
    std::vector<Vessel> vessels;
    std::vector<ColdPlace> coldPlaces;
    std::vector<KitchenCook> cooks;
    Celsius roomTemperature = Celsius::degrees(20);
    int altitudeMetres = 0; // above the sea
    std::vector<TimeTaken> timesTaken;

    friend bool operator==(const Kitchen&, const Kitchen&) = default;
};

/// Something in a kitchen that cannot be, with its place in words.
struct KitchenFault
{
    std::string place;
    std::string sentence;

    friend bool operator==(const KitchenFault&, const KitchenFault&) = default;
};

/// Ids twice, no name, ranges the wrong way round, rates or sizes of 0, hours that overlap or are
/// on no clock, an oven measured more than twice, or cooling as it warms, a room below −20 or above
/// 60 °C, a fridge or freezer outside −40…15 °C, an altitude outside −400…5000 m, times taken of 0.
/// A kitchen without ovens is no fault: not every dinner needs one.
[[nodiscard]] std::vector<KitchenFault> faultsOf(const Kitchen& kitchen);

} // namespace suppertide
