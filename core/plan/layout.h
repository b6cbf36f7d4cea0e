// Layout: what the user has decided of a plan (when, which method, who, where), by the readable
// keys of tasks, choices and demands, in UTC, so that it outlives changes of the occasion. What is
// not here is derived. Kept with the occasion.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/base/civil_time.h"

namespace suppertide {

struct OvenSettingPin
{
    std::string oven;
    Instant from;
    Instant to;
    int setC = 0;

    friend bool operator==(const OvenSettingPin&, const OvenSettingPin&) = default;
};

struct Layout
{
    std::map<std::string, Instant> starts;                 // task id → start
    std::map<std::string, std::string> options;            // choice id → option id
    std::map<std::string, std::vector<std::string>> cooks; // task id → cooks, where the user cares
    std::map<std::string, std::string> units; // demand id → unit, where the user cares
    std::map<std::string, std::string> ovens; // oven demand id → oven, where the user cares
    std::set<std::string> pinned;             // task ids, choice ids
    std::vector<OvenSettingPin> ovenSettings;
    std::set<std::string> washed; // demand ids: the thing is washed before this use of it
    /// What a plan that was taken had been made from, as part ("guests", "recipe/roast-roots") →
    /// print of what it was then; empty: laid out by hand. Tells whether the plan is out of date.
    std::map<std::string, std::string> plannedFrom;

    friend bool operator==(const Layout&, const Layout&) = default;
};

} // namespace suppertide
