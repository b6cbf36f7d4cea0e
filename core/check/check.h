// Check: what a schedule breaks, and what it costs, from the definitions alone. It shares no code
// with the planner and never calls it. Knows no food: core/plan says the same in a cook's words.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/problem/problem.h"
#include "core/problem/schedule.h"

namespace suppertide {

/// What a broken requirement is about. The text forms are "choice", "start", "window", "lag",
/// "count", "demand", "unit", "hands", "cook", "program", "oven", "shelves".
enum class BrokenKind
{
    Choice,  // no option chosen
    Start,   // start missing, or given to a task that is not present
    Window,  // outside the task's window
    Lag,     // gap below min or above max
    Count,   // more in use than there is
    Demand,  // no unit, too small a unit, one that it may not have
    Unit,    // one unit serves two at once
    Hands,   // wrong number of cooks, no skill, not free, at table
    Cook,    // attention above 100 %
    Program, // a setting that the oven does not have
    Oven,    // no oven, wrong oven, wrong group, mode, not off, temperature out of the band
    Shelves, // more shelves in use than there are
};

[[nodiscard]] std::string_view nameOf(BrokenKind kind);

/// How exactly it is broken; tells the clash kinds of a kitchen apart.
enum class BrokenHow
{
    Missing,
    NotPresent,
    TooEarly,
    TooLate,
    BelowMin,
    AboveMax,
    OverCapacity,
    TooSmall,
    NotAllowed,
    DoubleUse,
    WrongNumber,
    NoSkill,
    NotFree,
    AtTable,
    Overloaded,
    OutOfRange,
    OtherOven,
    OtherMode,
    NotOff,
    TooCold,
    TooHot,
};

struct Broken
{
    BrokenKind kind = BrokenKind::Start;
    BrokenHow how = BrokenHow::Missing;
    std::string id;               // as in the format: "l1", "hob/front-left", "c1"
    std::vector<TaskIndex> tasks; // whom it concerns, in order of start
    std::optional<Interval> when; // the minutes in which it is broken
    std::int64_t asked = 0;       // gap, amount in use, attention, °C × 1000 reached …
    std::int64_t allowed = 0;     // … and the limit that it breaks
    std::optional<CookIndex> cook;
    std::optional<OvenIndex> oven;
    std::optional<OvenDemandIndex> ovenDemand;
    std::optional<OvenDemandIndex> otherOvenDemand; // the one that it collides with, if one

    /// "kind:id", the name of the requirement in the format.
    [[nodiscard]] std::string name() const;
    friend bool operator==(const Broken&, const Broken&) = default;
};

struct CostParts
{
    std::int64_t loss = 0;
    std::int64_t quiet = 0;
    std::int64_t ovenChange = 0;
    std::int64_t ovenOn = 0;
    std::int64_t ovenSwitchOn = 0;
    std::int64_t prefer = 0;
    std::int64_t session = 0;
    std::int64_t option = 0;
    std::int64_t before = 0;

    [[nodiscard]] std::int64_t total() const;
    friend bool operator==(const CostParts&, const CostParts&) = default;
};

/// Every broken requirement, in the order of the format page. Empty: the schedule holds.
[[nodiscard]] std::vector<Broken> check(const Problem& problem, const Schedule& schedule);

/// The cost by its parts; meaningful if `check` finds nothing broken.
[[nodiscard]] CostParts costOf(const Problem& problem, const Schedule& schedule);

} // namespace suppertide
