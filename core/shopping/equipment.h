// Equipment: the things that the evening's steps occupy, and how many of each are in use at once:
// vessels, moulds, appliances. Too few is a clash of the plan; this is the list to set out. And
// mise en place: what to measure out before which step, in the order of the plan.
#pragma once

#include <string>
#include <vector>

#include "core/plan/plan.h"

namespace suppertide::shopping {

struct EquipmentLine
{
    ResourceKind kind = ResourceKind::Vessel;
    std::string name;                // "wide pan"
    std::int64_t atOnce = 0;         // most in use at one time, washing included
    std::int64_t there = 0;          // in the kitchen
    std::optional<PlanTime> busiest; // when so many first are in use
    std::vector<std::string> uses;   // "Braised shoulder: Brown the shoulder", by time

    [[nodiscard]] bool isTooFew() const { return atOnce > there; }
    friend bool operator==(const EquipmentLine&, const EquipmentLine&) = default;
};

struct EquipmentList
{
    std::vector<EquipmentLine> lines; // too few first, then by kind and name
    std::vector<std::string> probes;  // what must be measured inside with a thermometer

    friend bool operator==(const EquipmentList&, const EquipmentList&) = default;
};

/// What the plan occupies, with vessels and appliances as long as they are held or being washed.
[[nodiscard]] EquipmentList equipmentOf(const Plan& plan);

/// To be measured out before a step.
struct MiseEnPlace
{
    PlanTime by;
    std::string dish;
    std::string step;
    std::vector<ScaledLine> lines;

    friend bool operator==(const MiseEnPlace&, const MiseEnPlace&) = default;
};

/// Steps that take ingredients, in the order in which the plan begins them.
[[nodiscard]] std::vector<MiseEnPlace> miseEnPlaceOf(const Plan& plan);

} // namespace suppertide::shopping
