// FormulationDraft: a formulation while it is being written: adds tasks, lags and demands together
// with their sources, keeps ids unique and knows which option a task stands in. Knows no rule;
// those are the formulate_*.cpp files.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/plan/formulation.h"

namespace suppertide {

struct OptionRef
{
    ChoiceIndex choice;
    OptionIndex option;

    friend auto operator<=>(const OptionRef&, const OptionRef&) = default;
};

/// Bounds of a lag; an absent one is no bound.
struct Gap
{
    std::optional<Minutes> min;
    std::optional<Minutes> max;

    static Gap none() { return {Minutes{0}, Minutes{0}}; }
    static Gap atLeast(Minutes least) { return {least, std::nullopt}; }
};

constexpr TaskPoint startOf(TaskIndex task)
{
    return {task, Edge::Start};
}
constexpr TaskPoint endOf(TaskIndex task)
{
    return {task, Edge::End};
}

class FormulationDraft
{
public:
    FormulationDraft(std::string name, PlanCalendar calendar, PlanTime horizon);

    [[nodiscard]] const Problem& problem() const { return formulation_.problem; }
    [[nodiscard]] const Formulation& formulation() const { return formulation_; }
    [[nodiscard]] PlanTime horizon() const { return formulation_.problem.horizon; }
    [[nodiscard]] const PlanCalendar& calendar() const { return formulation_.calendar; }
    [[nodiscard]] Interval wholeHorizon() const { return {planTime(0), horizon()}; }

    /// An empty window becomes the whole horizon.
    TaskIndex addTask(Task task, TaskSource source);
    /// A task without length, always present unless it is put into an option.
    TaskIndex addEvent(std::string id, TaskSource source);
    LagIndex addLag(const TaskPoint& from, const TaskPoint& to, const Gap& gap, LagSource source,
                    std::int64_t loss = 0);
    DemandIndex addDemand(Demand demand, DemandSource source);
    OvenDemandIndex addOvenDemand(OvenDemand demand, DemandSource source);
    ChoiceIndex addChoice(std::string id, ChoiceSource source);
    OptionRef addOption(ChoiceIndex choice, std::string id, std::string name,
                        std::int64_t cost = 0);
    void putInto(const OptionRef& option, TaskIndex task);
    void addCost(const OptionRef& option, std::int64_t cost);
    /// The option may not be taken.
    void exclude(const OptionRef& option, const LagSource& source);
    /// The option of the task; absent if it is always present (an only option counts as always).
    [[nodiscard]] std::optional<OptionRef> optionOf(TaskIndex task) const;
    [[nodiscard]] bool isPresentWith(TaskIndex task, TaskIndex other) const;
    /// The two options may not be taken together.
    void forbid(const OptionRef& one, const OptionRef& other, const LagSource& source);

    CountIndex addCount(Count count, ResourceSource source);
    PoolIndex addPool(Pool pool, ResourceSource source);
    void addCook(Cook cook, std::string name);
    void addOven(Oven oven, std::string name);
    void addFood(TrackedFood food) { formulation_.foods.push_back(std::move(food)); }
    [[nodiscard]] IndexedVector<FoodIndex, TrackedFood>& foods() { return formulation_.foods; }
    [[nodiscard]] const IndexedVector<TaskIndex, TaskSource>& sources() const
    {
        return formulation_.tasks;
    }
    void addServing(const CourseId& course, TaskIndex event);

    /// For rules that refine what others have added.
    [[nodiscard]] Task& task(TaskIndex index) { return formulation_.problem.tasks[index]; }
    [[nodiscard]] TaskSource& source(TaskIndex index) { return formulation_.tasks[index]; }
    [[nodiscard]] Lag& lag(LagIndex index) { return formulation_.problem.lags[index]; }
    [[nodiscard]] Demand& demand(DemandIndex index) { return formulation_.problem.demands[index]; }
    [[nodiscard]] DemandSource& demandSource(DemandIndex index)
    {
        return formulation_.demands[index];
    }
    [[nodiscard]] OvenDemand& ovenDemand(OvenDemandIndex index)
    {
        return formulation_.problem.ovenDemands[index];
    }
    [[nodiscard]] Cook& cook(CookIndex index) { return formulation_.problem.cooks[index]; }
    [[nodiscard]] Count& count(CountIndex index) { return formulation_.problem.counts[index]; }
    [[nodiscard]] Costs& costs() { return formulation_.problem.costs; }

    [[nodiscard]] FormulationPtr finish();

private:
    std::string unique(const char* list, std::string id);
    [[nodiscard]] TaskIndex optionEvent(const OptionRef& option);

    Formulation formulation_;
    std::map<TaskIndex, OptionRef> options_;
    std::map<OptionRef, TaskIndex> optionEvents_;
    std::map<std::string, std::set<std::string>> ids_; // by list
};

} // namespace suppertide
