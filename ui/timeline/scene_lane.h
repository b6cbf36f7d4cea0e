// The lanes of a timeline Scene: one resource each, as plain values without Qt. Part of scene.h,
// which says how a plan is mapped onto them.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/interval.h"
#include "core/quantity/quantity.h"

namespace suppertide::ui {

/// A corner of an oven's temperature curve; between two the temperature runs in a straight line.
struct HeatKnot
{
    PlanTime time;
    Celsius temperature;

    friend bool operator==(const HeatKnot&, const HeatKnot&) = default;
};

/// A turn of the knob and how long it is in force.
struct OvenSetting
{
    Interval when;
    std::optional<Celsius> set; // none: switched off
    bool isPinned = false;

    friend bool operator==(const OvenSetting&, const OvenSetting&) = default;
};

/// A temperature that somebody asks for and does not get, or the heat of a ghost: drawn dashed.
struct AskedHeat
{
    std::vector<HeatKnot> knots;
    std::string label; // "roots ask 220°", "180°"
    bool isGhost = false;

    friend bool operator==(const AskedHeat&, const AskedHeat&) = default;
};

struct OvenLane
{
    int shelves = 1;
    Celsius top = Celsius::degrees(250); // the lane's whole height is 0 °C to this
    std::vector<HeatKnot> curve;         // rising times, the whole horizon; none: never on
    std::vector<OvenSetting> settings;   // rising, without overlap
    std::vector<AskedHeat> asked;

    friend bool operator==(const OvenLane&, const OvenLane&) = default;
};

struct BurnerLane
{
    Length size;
    int position = 0; // which of the hob's burners, counted from the front left, row by row
    int burners = 1;  // how many the hob has

    friend bool operator==(const BurnerLane&, const BurnerLane&) = default;
};

struct ApplianceLane
{
    friend bool operator==(const ApplianceLane&, const ApplianceLane&) = default;
};

struct VesselLane
{
    friend bool operator==(const VesselLane&, const VesselLane&) = default;
};

struct CookLane
{
    std::vector<Interval> free;   // rising, without overlap; all else is "not here"
    std::vector<Interval> atHome; // not free, but at home (a night's sleep, say)
    std::vector<Interval> table;  // sits at the table

    friend bool operator==(const CookLane&, const CookLane&) = default;
};

/// What a cold place holds from a minute on.
struct ColdStep
{
    PlanTime from;
    Litres used;
    std::string contents; // for the hover card: "stock 3 litres, soup 2 litres"

    friend bool operator==(const ColdStep&, const ColdStep&) = default;
};

struct ColdLane
{
    Litres capacity;
    std::vector<ColdStep> level; // rising times; before the first nothing is in use

    friend bool operator==(const ColdLane&, const ColdLane&) = default;
};

using LaneKind = std::variant<OvenLane, BurnerLane, ApplianceLane, VesselLane, CookLane, ColdLane>;

struct SceneLane
{
    std::string id;   // unique among the lanes, stable from scene to scene
    std::string name; // "Oven", "Maren"; a burner: that of its hob, shown at the first one only
    std::string note; // second line: "2 shelves", "from 16:00", "fridge, 40 litres"
    LaneKind kind;
    int group = 0; // lanes of one group stand close; groups are 4 to 6 px apart
    /// While something is dragged that cannot go here: why not, in a few words.
    std::optional<std::string> refusal;

    friend bool operator==(const SceneLane&, const SceneLane&) = default;
};

} // namespace suppertide::ui
