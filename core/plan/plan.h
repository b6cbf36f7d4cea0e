// Plan: a schedule with its food: what each task is, what clashes, the oven curves and the figures
// that the user sees. Immutable and shared. `judgePlan` makes one from any schedule, laid out by
// hand or planned; it trusts neither.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/check/check.h"
#include "core/plan/formulation.h"
#include "core/problem/schedule.h"
#include "core/safety/finding.h"

namespace suppertide {

enum class ClashKind
{
    OvenTemperature, // two dishes want the one oven at temperatures that do not meet
    OvenSpace,
    OvenRamp, // no time to heat or cool the oven
    Burner,
    Appliance,
    Vessel,
    ColdSpace,
    Hands,       // more than a cook can do at once
    CookNotFree, // not there, at table, or no cook who can
    WaitTooShort,
    WaitTooLong,
    LateForServing,
    OutsideWindow,   // a house job, trip or pin outside its hours
    NothingChosen,   // a method or place is not chosen
    Allergen,        // at a guest's place
    GuestLeftOut,    // nothing in a course that suits
    ContentsUnknown, // nobody has said what an ingredient contains, and it matters to a guest
    Utensils,        // not enough of a utensil, whenever it is done
    Unwatched,       // heat while nobody is awake at home
    FoodSafety,      // a published rule of food safety is broken
    UnwashedTool,    // from raw food to ready food, or to portions that must be free of something
};

enum class Severity
{
    Impossible,
    Unsafe,
    Undesirable
};

/// Of FoodSafety the worst; a rule that is a caution makes it Undesirable. So does, of
/// UnwashedTool, what nobody avoids for health.
[[nodiscard]] Severity severityOf(ClashKind kind);

/// Something in a plan that cannot be, or must not be. The figures are in the kind's own unit: °C
/// for OvenTemperature (both temperatures asked for) and OvenRamp, shelves, units, tenths of a
/// litre, percent of a cook, minutes for waits and lateness.
struct Clash
{
    ClashKind kind = ClashKind::Hands;
    Severity severity = Severity::Impossible;
    std::vector<TaskIndex> tasks; // concerned, in order of start
    std::optional<Interval> when;
    std::int64_t asked = 0;
    std::int64_t allowed = 0;
    std::optional<OvenIndex> oven;
    std::optional<CookIndex> cook;
    std::optional<LagIndex> lag;
    std::optional<CountIndex> count;
    std::optional<PoolIndex> pool;
    std::optional<DemandIndex> demand;             // UnwashedTool: the later use
    std::optional<OvenDemandIndex> ovenDemands[2]; // the two that collide
    std::optional<CourseId> course;
    std::optional<DishId> dish;
    std::optional<GuestId> guest;
    std::vector<Substance> substances;
    std::vector<std::string> ingredients;
    std::vector<std::string> labels; // those among them whose label would tell
    bool isMode = false; // OvenTemperature: not the degrees, but fan, grill or off do not agree
    std::optional<FoodIndex> food;          // FoodSafety: which one …
    std::optional<safety::Finding> finding; // … and the rule, with its figures; of UnwashedTool too
    std::vector<std::string> broken; // "kind:id" of the problem's requirements that it stands for

    friend bool operator==(const Clash&, const Clash&) = default;
};

/// What the user sees of a plan's goodness.
struct PlanFigures
{
    Minutes handsOnLastHour{0}; // attention-weighted, before the first serving
    Minutes handsOnAtTable{0};  // while guests are at table
    Minutes handsOnTotal{0};
    Minutes ovenOn{0};
    int ovenChanges = 0;
    int sessions = 0;
    std::int64_t lossOfQuality = 0;
    CostParts cost;

    friend bool operator==(const PlanFigures&, const PlanFigures&) = default;
};

struct Plan
{
    FormulationPtr formulation;
    Schedule schedule;
    std::vector<Clash> clashes; // worst first, then by time
    PlanFigures figures;
    std::uint64_t revision = 0; // of the state that it was made from

    [[nodiscard]] bool holds() const { return clashes.empty(); }
    [[nodiscard]] std::optional<Interval> interval(TaskIndex task) const;
};

using PlanPtr = std::shared_ptr<const Plan>;

/// Clashes of schedule (core/check), and of food: who eats what, the rules of food safety of the
/// occasion's book along each followed food's history, and what tools carry from food to food.
[[nodiscard]] PlanPtr judgePlan(FormulationPtr formulation, const PlanInput& input,
                                Schedule schedule, std::uint64_t revision = 0);

/// The schedule's decisions as a layout to keep: starts and options of all present tasks, and what
/// is washed before a use; cooks, units and ovens only where `pins` has them.
[[nodiscard]] Layout layoutOf(const Formulation& formulation, const Schedule& schedule,
                              const Layout& pins);

} // namespace suppertide
