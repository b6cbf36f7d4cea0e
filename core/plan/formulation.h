// Formulation: an occasion as a scheduling problem, and beside it where every task, lag and demand
// comes from, so that a clash or a slack can be said in a cook's words. Made by `formulate` by the
// rules that DEVELOPERS.md lists; read by everything that speaks of a plan.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/occasion/occasion.h"
#include "core/plan/layout.h"
#include "core/plan/tracked_food.h"
#include "core/plan/weights.h"
#include "core/problem/problem.h"
#include "core/safety/cautions.h"
#include "core/science/estimate.h"

namespace suppertide {

/// The rules by which an evening becomes tasks.
enum class Rule
{
    Attention = 1,
    InAndOut,
    Batches,
    Washing,
    Spans,
    Waits,
    Serving,
    Ovens,
    Preparations,
    Durations,
    BeforeTheDay,
    House,
    Cooks,
    Pins,
    Names,
};

enum class TaskRole
{
    Step, // the deed, or the time in the oven of one that uses it
    OvenIn,
    OvenOut,
    Turn,
    Washing,
    Serving, // the course's event
    Target,  // an event fixed at the time the course was to be served
    HouseJob,
    Trip,
    KeepFrom,
    KeepTo,      // events at the ends of a wait whose place is open
    TakeFrom,    // event: a by-product is taken
    Watch,       // time in which nobody is awake at home
    OvenSetting, // time in which the user has pinned an oven's temperature
    Mark,        // event that only ties others together
};

/// One ingredient line of a step, scaled to its batch.
struct ScaledLine
{
    LineId line;
    std::string ingredient;
    IngredientPart part = IngredientPart::Whole;
    Amount amount;
    std::string note;

    friend bool operator==(const ScaledLine&, const ScaledLine&) = default;
};

/// A length that was computed from a food (step_estimate.h).
struct ComputedDuration
{
    std::string food;
    DurationRange range;   // what the plan takes
    DurationRange written; // by the recipe's author, for these portions
    std::string failure;   // why nothing could be computed: then `range` is the written one
    bool differsMuch = false;
    std::vector<science::Figure> because;

    friend bool operator==(const ComputedDuration&, const ComputedDuration&) = default;
};

struct TaskSource
{
    TaskRole role = TaskRole::Step;
    Rule rule = Rule::Attention;
    std::optional<CourseId> course;
    std::optional<DishId> dish; // of a shared preparation: the first that uses it
    std::optional<RecipeId> recipe;
    std::vector<VariantId> variants; // those whose portions this task makes
    std::optional<StepId> step;
    std::optional<HouseJobId> job;
    int batch = 0; // from 1; 0: the only one
    int batches = 1;
    Portions portions;
    std::string dishName;    // "Roast roots"
    std::string variantName; // "hot oven"; empty where all variants share the task
    std::string verb;        // "Slice"
    std::string text;        // "Slice the potatoes"
    std::string detail;
    DurationRange duration;
    std::optional<ComputedDuration> computed; // of the whole step
    std::vector<ScaledLine> lines;
    std::vector<Caution> cautions;                  // of the recipe
    std::vector<safety::CautionKind> alsoCalledFor; // by what is done (step_cautions.h)
    std::vector<Substance> contains;                // of the dish's variants, for cautions on paper
    bool isHot = false;
    std::optional<std::string> skill; // that the recipe asks for
    std::vector<std::string> onlyBy;  // names of the cooks to whom it is given; empty: anybody

    friend bool operator==(const TaskSource&, const TaskSource&) = default;
};

struct LagSource
{
    Rule rule = Rule::Waits;
    std::optional<DishId> dish;
    std::optional<WaitId> wait;
    std::string text; // "chills"; empty for a mere order of steps
    KeepPlace place = KeepPlace::Nowhere;
    Minutes least{0}; // as the recipe says
    std::optional<Minutes> most;
    int lossPerHour = 0;   // of quality, in points, above the least
    std::string limitedBy; // a rule of core/safety that allows less than the recipe; else empty
    std::optional<ComputedDuration> computed; // of the least

    friend bool operator==(const LagSource&, const LagSource&) = default;
};

/// What a demand or an oven demand is for.
struct DemandSource
{
    Rule rule = Rule::Spans;
    std::optional<DishId> dish;
    std::string dishName;
    std::string thing; // "wide pan", "blender", "fridge", "burner", "oven"
    std::string text;  // of a span: "pan held from sear to sauce"
    bool isWash = false;
    bool isKeep = false;                // food stands there during a wait
    std::optional<TaskIndex> washedFor; // held from a washing on: the step that it is washed for

    friend bool operator==(const DemandSource&, const DemandSource&) = default;
};

enum class ResourceKind
{
    Oven,
    Burner,
    Appliance,
    Vessel,
    Fridge,
    Freezer,
    Watch,
    Cook
};

/// A count or pool of the problem in the kitchen's terms.
struct ResourceSource
{
    ResourceKind kind = ResourceKind::Burner;
    std::string name;                   // "burners", "blender", "wide pan", "fridge"
    std::vector<std::string> unitNames; // of a pool, parallel to its units
    std::int64_t perUnit = 1; // problem amount that is one of what is shown (10 = 1 litre)

    friend bool operator==(const ResourceSource&, const ResourceSource&) = default;
};

enum class ChoiceKind
{
    Method,
    KeepPlace,
    ByProduct,
    Trip,   // on which day, and with somebody at home or not
    Amount, // of a preparation that only some methods need
};

/// What there is to choose, and the names of the options.
struct ChoiceSource
{
    ChoiceKind kind = ChoiceKind::Method;
    std::optional<DishId> dish;
    std::string dishName;
    std::string name;                     // "how the roots are cooked"
    std::vector<std::string> optionNames; // parallel to the choice's options

    friend bool operator==(const ChoiceSource&, const ChoiceSource&) = default;
};

struct Formulation
{
    Problem problem;
    PlanCalendar calendar;
    IndexedVector<TaskIndex, TaskSource> tasks;
    IndexedVector<LagIndex, LagSource> lags;
    IndexedVector<DemandIndex, DemandSource> demands;
    IndexedVector<OvenDemandIndex, DemandSource> ovenDemands;
    IndexedVector<CountIndex, ResourceSource> counts;
    IndexedVector<PoolIndex, ResourceSource> pools;
    IndexedVector<ChoiceIndex, ChoiceSource> choices;
    IndexedVector<OvenIndex, std::string> ovenNames;
    IndexedVector<CookIndex, std::string> cookNames;
    IndexedVector<FoodIndex, TrackedFood> foods;
    std::map<std::string, TaskIndex> taskById;
    std::map<CourseId, TaskIndex> servings;

    friend bool operator==(const Formulation&, const Formulation&) = default;
};

using FormulationPtr = std::shared_ptr<const Formulation>;

/// All that a plan is made from. Pointers are shared snapshots; nothing changes under a reader.
struct PlanInput
{
    std::shared_ptr<const Occasion> occasion;
    std::shared_ptr<const Kitchen> kitchen;
    std::map<RecipeId, std::shared_ptr<const Recipe>> recipes;
    std::shared_ptr<const Layout> layout;         // pins are read from it; never null
    Closeness closeness = Closeness::AsPreferred; // to the starts of the layout
    std::set<std::string> held{}; // tasks that stay where the layout has them, this time only
    IngredientBook ingredients{}; // what ingredients contain, the user's own first
};

/// BadInput with one sentence a fault if occasion, kitchen or a recipe has faults.
/// Deterministic: same input, same problem, byte for byte.
[[nodiscard]] Result<FormulationPtr> formulate(const PlanInput& input);

} // namespace suppertide
