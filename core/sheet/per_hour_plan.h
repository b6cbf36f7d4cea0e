// The per-hour plan as structure and as text: what the cook reads on the evening. Painted on paper
// by ui/print from the same structure.
#pragma once

#include <string>
#include <vector>

#include "core/plan/plan.h"
#include "core/wording/wording.h"

namespace suppertide {

struct SheetStep
{
    TaskIndex task;
    PlanTime start;
    PlanTime end;
    std::string deed;                 // "Slice the potatoes"
    std::string detail;               // "2 mm thick · slicer · 45 min"
    std::string after;                // what then begins: "then settles, 8 to 25 min"
    std::vector<std::string> amounts; // "1.2 kg potatoes"
    std::vector<std::string> cooks;
    std::optional<DishId> dish;
    Attention attention;
};

enum class SheetNoteKind
{
    Caution,
    Guests
};

/// Boxed: hot oil, guests who must not get what others get.
struct SheetNote
{
    SheetNoteKind kind = SheetNoteKind::Caution;
    PlanTime at;
    std::string text;
    std::vector<std::string> cooks; // in whose column; empty: all
};

/// A turn of an oven's knob.
struct SheetOvenTurn
{
    OvenIndex oven;
    PlanTime at;
    std::optional<int> setC; // absent: off
    std::string text;        // "Oven to 150 °C; hot at 15:54 for the shoulder"
};

/// Food that comes out of (or goes into) the fridge or freezer.
struct SheetFetch
{
    PlanTime at;
    std::string text; // "Custard base out of the fridge"
    std::vector<std::string> cooks;
};

struct SheetServing
{
    int number = 1; // of the course
    CourseId course;
    PlanTime at;
    std::string text;                  // "Serve soup"
    std::vector<std::string> helpings; // "2 mushroom tartlets, gluten-free case (Bea)"
};

struct SheetTable
{
    CookIndex cook;
    Interval when;
};

/// One clock hour in which something happens.
struct SheetHour
{
    PlanTime start;
    CivilTime civil;              // the hour, in the occasion's zone
    std::vector<SheetStep> steps; // by start; each once, with all its cooks
    std::vector<SheetNote> notes;
    std::vector<SheetOvenTurn> ovenTurns;
    std::vector<SheetFetch> fetches;
    std::vector<SheetServing> servings;
};

struct SheetDay
{
    CivilDate date;
    std::string heading; // "Saturday 19 June"
    std::vector<SheetHour> hours;
};

struct PerHourPlan
{
    std::string title;    // "Midsummer supper at Skerry Light"
    std::string subtitle; // "Saturday 19 June, 15:30 to 21:20, 8 at table"
    PlanPtr plan;
    std::vector<std::string> cookNames; // columns, parallel to the problem's cooks
    std::vector<std::string> ovenNames;
    std::vector<SheetDay> days;
    std::vector<SheetTable> table;
    std::vector<std::string> clashes;  // sentences; printed first if there are any
    std::vector<std::string> cautions; // that hold throughout; local codes prevail
    std::vector<DishId> dishes;        // in the order of the menu, for marks that tell them apart
    ReadingStyle style;
};

/// `input` is what the plan was made from: its recipes say who may eat what.
[[nodiscard]] PerHourPlan perHourPlan(const PlanPtr& plan, const PlanInput& input,
                                      const ReadingStyle& style = {});

/// Plain text, 80 columns, readable by itself and aloud.
[[nodiscard]] std::string toText(const PerHourPlan& sheet);

} // namespace suppertide
