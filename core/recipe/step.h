// The parts of a recipe that take time: steps, waits between them, and spans in which a thing stays
// held. Values only; core/plan makes tasks of them.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/id.h"
#include "core/base/plan_time.h"
#include "core/quantity/amount.h"
#include "core/quantity/quantity.h"

namespace suppertide {

using RecipeId = Id<struct RecipeTag>;
using VariantId = Id<struct VariantTag>;
using StepId = Id<struct StepTag>;
using LineId = Id<struct LineTag>;
using WaitId = Id<struct WaitTag>;
using SpanId = Id<struct SpanTag>;
using MethodChoiceId = Id<struct MethodChoiceTag>;
using MethodId = Id<struct MethodTag>;

/// How a duration, a room or a mass follows the number of portions; amounts of ingredients have
/// rules of their own (line_scaling.h). Figures stand for the recipe's own number of portions.
enum class Scaling
{
    Fixed,      // the same for any number
    PerPortion, // in proportion
    PerBatch,   // the same for each batch; several batches are several tasks
};

/// Least, likely and most length of a step; any may coincide.
struct DurationRange
{
    Minutes least{0};
    Minutes likely{0};
    Minutes most{0};

    friend bool operator==(const DurationRange&, const DurationRange&) = default;
};

enum class OvenMode
{
    Any,
    Fan,
    Conventional,
    Grill,
    Off
};

/// Room in an oven at a temperature within low…high, best at `prefer`.
struct OvenUse
{
    int shelves = 1;
    Celsius low;
    Celsius high;
    std::optional<Celsius> prefer;
    OvenMode mode = OvenMode::Any;

    friend bool operator==(const OvenUse&, const OvenUse&) = default;
};

/// One burner that takes a pan of this diameter.
struct BurnerUse
{
    Length pan;

    friend bool operator==(const BurnerUse&, const BurnerUse&) = default;
};

/// What goes into a thing: so many litres at the recipe's portions, up to so much of what it holds
/// (foam and boiling need room). How many portions make a batch follows from the kitchen.
struct Filling
{
    Litres volume;
    int percent = 100; // 1…100

    friend bool operator==(const Filling&, const Filling&) = default;
};

/// One appliance of a kind ("blender"); `washing` follows before another dish may have it.
struct ApplianceUse
{
    std::string kind;
    Minutes washing{0};
    std::optional<Filling> filling{};

    friend bool operator==(const ApplianceUse&, const ApplianceUse&) = default;
};

/// `count` vessels of a kind ("wide pan", "tart tin") that hold at least `volume` each; with a
/// filling, shared out among them, also what a batch of it needs.
struct VesselUse
{
    std::string kind;
    Litres volume;
    int count = 1;
    Minutes washing{0};
    std::optional<Filling> filling{}; // of a step's own use; a span has none

    friend bool operator==(const VesselUse&, const VesselUse&) = default;
};

using Use = std::variant<OvenUse, BurnerUse, ApplianceUse, VesselUse>;

/// Dangers of the kitchen that a plan warns of at their hour.
enum class Caution
{
    HotOil,
    Caramel,
    OpenFlame,
    Steam,
    SharpBlade,
    RawMeat,
    RawEgg,
    Alcohol,
    Poisonous
};

/// The step in its oven at another temperature, where it then takes another time.
struct OtherHeat
{
    Celsius low;
    Celsius high;
    std::optional<Celsius> prefer;
    DurationRange duration;
    int cost = 0; // how much less it is liked, in points of the plan's cost

    friend bool operator==(const OtherHeat&, const OtherHeat&) = default;
};

/// What a step leaves that another dish can use (bones, egg whites); `amount` at the recipe's
/// portions.
struct ByProduct
{
    std::string name;
    Amount amount;

    friend bool operator==(const ByProduct&, const ByProduct&) = default;
};

struct Step
{
    StepId id;
    std::string verb;          // "Slice": shown alone where there is little room
    std::string text;          // "Slice the potatoes": the deed in full
    std::string detail;        // "2 mm, on the slicer": what the cook needs to know
    std::vector<StepId> after; // steps that end before it starts; empty: none
    DurationRange duration;
    Scaling scaling = Scaling::Fixed;
    std::optional<Portions> portionsPerBatch; // at once at most, whatever the kitchen has
    Attention attention = handsOn;
    int cooks = 1;
    std::optional<std::string> skill;
    std::optional<bool>
        atTable; // fit for while its cook sits at table; absent: by formulate rule 7
    bool mayRunUnwatched = false; // heat that needs nobody awake at home (a slow cooker)
    std::vector<Use> uses;        // held from its start to its end
    Minutes ovenIn{1};            // hands-on minutes to put in, where it uses an oven
    Minutes ovenOut{1};
    std::optional<Minutes> turnAfter; // turned, hands-on for a minute, so long after going in
    std::vector<LineId> lines;        // what it takes of the ingredients
    std::vector<ByProduct> leaves;
    std::vector<Caution> cautions;
    /// "60 min at 160 °C or 45 min at 180 °C": the step as it stands, or one of these, which the
    /// planner chooses among (temperature_methods.h).
    std::vector<OtherHeat> otherHeats{};

    friend bool operator==(const Step&, const Step&) = default;
};

/// The start or end of a step; without a step: the moment the dish is served, or for a preparation
/// the moment it is used.
enum class StepEdge
{
    Start,
    End
};

struct StepPoint
{
    std::optional<StepId> step;
    StepEdge edge = StepEdge::Start;

    /// Serving is one moment: there the edge means nothing.
    friend bool operator==(const StepPoint& a, const StepPoint& b)
    {
        return a.step == b.step && (!a.step || a.edge == b.edge);
    }
};

enum class KeepPlace
{
    Nowhere,
    Counter,
    Fridge,
    Freezer,
    Warm
};

/// How food is kept warm.
enum class WarmBy
{
    Oven,
    Burner,
    Flask
};

/// One place where food may stand during a wait.
struct KeepOption
{
    KeepPlace place = KeepPlace::Counter;
    std::optional<Minutes> most;           // besides the wait's own
    Litres litres;                         // of fridge or freezer, at the recipe's portions
    Scaling scaling = Scaling::PerPortion; // of the litres
    int lossPerHour = 0;                   // of quality, in points of the plan's cost
    WarmBy warmBy = WarmBy::Oven;

    friend bool operator==(const KeepOption&, const KeepOption&) = default;
};

/// A time between two points with a least and a most; `keep` empty: the food stands nowhere
/// special. With `chillsTo` the least is computed: until the middle of the food that is followed is
/// so cold where it is kept, and `setsFor` longer; the written one stands where it cannot be.
struct Wait
{
    WaitId id;
    std::string text; // "chills", "rests": read after the dish's name
    StepPoint from{std::nullopt, StepEdge::End};
    StepPoint to;
    Minutes least{0};
    std::optional<Minutes> most;
    std::vector<KeepOption> keep;
    std::optional<Celsius> chillsTo;
    Minutes setsFor{0};

    friend bool operator==(const Wait&, const Wait&) = default;
};

/// A thing held from one point to another ("the pan from searing to the sauce").
struct Span
{
    SpanId id;
    std::string text;
    StepPoint from;
    StepPoint to{std::nullopt, StepEdge::End};
    Use use;

    friend bool operator==(const Span&, const Span&) = default;
};

} // namespace suppertide
