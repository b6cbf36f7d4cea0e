// Evening: all that formulate has at hand while its rules write the problem: what is made, the
// draft, the tasks of each batch, and the kitchen's things as counts and pools. Used by the
// formulate_*.cpp files alone.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/plan/formulation_draft.h"
#include "core/plan/making.h"

namespace suppertide {

/// The tasks of one batch, tied to each other without gap.
struct BatchTasks
{
    std::vector<TaskIndex> tasks; // at least one

    [[nodiscard]] TaskPoint start() const { return startOf(tasks.front()); }
    [[nodiscard]] TaskPoint end() const { return endOf(tasks.back()); }
};

/// A kind of thing of the kitchen: units told apart by size, or a number of like ones.
struct KitchenThing
{
    ResourceKind kind = ResourceKind::Vessel;
    std::string name;
    std::optional<PoolIndex> pool;
    std::optional<CountIndex> count;
    std::int64_t units = 0;
};

/// A thing that must be washed after its use before another dish may have it.
struct WashAfter
{
    std::size_t making = 0;
    std::optional<std::size_t> batch; // of a step's own use
    KitchenThing thing;
    std::vector<DemandIndex> demands;
    Minutes washing{0};
    TaskPoint usedFrom;
    TaskPoint usedUntil;
};

/// A wait in one of its places: which portions of a making keep there.
struct KeptWait
{
    std::size_t making = 0;
    StepPoint from;
    StepPoint to;
    PortionShare share;
    LagIndex lag;
    KeepPlace place = KeepPlace::Nowhere;
    std::optional<OvenDemandIndex> oven; // that keeps it warm
};

struct Evening
{
    const PlanInput& input;
    std::vector<Making> makings;
    FormulationDraft draft;

    std::vector<std::vector<BatchTasks>> tasks{}; // by making and batch
    std::map<std::pair<std::size_t, MethodKey>, OptionRef> methodOptions{};
    std::map<CourseId, TaskIndex> servings{};
    std::map<std::pair<ResourceKind, std::string>, KitchenThing> things{};
    std::vector<WashAfter> washes{};
    std::map<std::pair<std::size_t, std::size_t>, OvenDemandIndex> ovenOf{}; // making and batch
    std::map<TaskIndex, std::vector<CookId>> wantedCooks{};                  // who alone may do it
    std::vector<KeptWait> keptWaits{};

    [[nodiscard]] const Occasion& occasion() const { return *input.occasion; }
    [[nodiscard]] const Kitchen& kitchen() const { return *input.kitchen; }
    [[nodiscard]] const Layout& layout() const { return *input.layout; }
    /// For this run the task stays where the layout has it.
    [[nodiscard]] bool isHeld(const std::string& task) const
    {
        return layout().pinned.contains(task) || input.held.contains(task);
    }
    [[nodiscard]] const BatchTasks& batchTasks(std::size_t making, std::size_t batch) const
    {
        return tasks[making][batch];
    }
    /// "roots/*", "roots/with-honey", "roots/hot-oven": where the ids of this step's things begin.
    [[nodiscard]] std::string prefix(const Making& making, const MadeStep& step) const;
    /// With step and batch: "roots/hot-oven/roast#1".
    [[nodiscard]] std::string idOf(const Making& making, const Batch& batch) const;
    /// The option in which the tasks of this step stand, if they do in one.
    [[nodiscard]] std::optional<OptionRef> optionFor(std::size_t making,
                                                     const std::optional<MethodKey>& method) const;
    /// Adds the task to that option, if there is one.
    void place(TaskIndex task, const std::optional<OptionRef>& option);
};

/// The thing of this kind and name; one that the kitchen lacks has no units.
const KitchenThing& thingOf(Evening& evening, ResourceKind kind, const std::string& name);

/// Burner, appliance or vessel held from one point to another, as demands with ids beginning with
/// `id`. A filling is the room that each must have. For an oven use nothing is added.
std::vector<DemandIndex> hold(Evening& evening, const Use& use, const TaskPoint& from,
                              const TaskPoint& to, const std::string& id, DemandSource source);

/// An oven demand of this use; its ovens are those that have the mode.
OvenDemandIndex holdOven(Evening& evening, const OvenUse& use, const TaskPoint& from,
                         const TaskPoint& to, const std::string& id, DemandSource source);

/// The two are in one oven.
void joinOvens(Evening& evening, OvenDemandIndex one, OvenDemandIndex other);

/// Somebody must be awake at home from one point to the other.
void keepWatch(Evening& evening, const TaskPoint& from, const TaskPoint& to, const std::string& id,
               DemandSource source);

[[nodiscard]] DemandSource demandSource(const Making& making, Rule rule, std::string thing,
                                        std::string text = {});
[[nodiscard]] LagSource orderSource(const Making& making, Rule rule);

// The rules, in the order in which they are applied.
void addKitchen(Evening& evening);
void addCooks(Evening& evening);
void addServings(Evening& evening);
void addMethodChoices(Evening& evening);
void addSteps(Evening& evening);
void addOrder(Evening& evening);
void addWaits(Evening& evening);
void addSpans(Evening& evening);
void addOvenGroups(Evening& evening);
void addEndings(Evening& evening);
void addWashing(Evening& evening);
void addByProducts(Evening& evening);
void addHouseJobs(Evening& evening);
void addTrips(Evening& evening);
void addAbsences(Evening& evening);
void addPins(Evening& evening);
void addCosts(Evening& evening);
void addFoods(Evening& evening);

} // namespace suppertide
