#include "core/plan/formulation_draft.h"

#include <utility>

namespace suppertide {

namespace {

std::string pointText(const Problem& problem, const TaskPoint& point)
{
    return problem.tasks[point.task].id + (point.edge == Edge::Start ? ".start" : ".end");
}

} // namespace

FormulationDraft::FormulationDraft(std::string name, PlanCalendar calendar, PlanTime horizon)
{
    formulation_.problem.name = std::move(name);
    formulation_.problem.horizon = horizon;
    formulation_.calendar = calendar;
}

/// The id itself, or with the next number after it if it is taken.
std::string FormulationDraft::unique(const char* list, std::string id)
{
    std::set<std::string>& taken = ids_[list];
    std::string candidate = id;
    for (int number = 2; !taken.insert(candidate).second; ++number) {
        candidate = id + "~" + std::to_string(number);
    }
    return candidate;
}

TaskIndex FormulationDraft::addTask(Task task, TaskSource source)
{
    task.id = unique("task", std::move(task.id));
    if (task.window == Interval{}) {
        task.window = wholeHorizon();
    }
    const std::string id = task.id;
    const TaskIndex index = formulation_.problem.tasks.push_back(std::move(task));
    formulation_.tasks.push_back(std::move(source));
    formulation_.taskById.emplace(id, index);
    return index;
}

TaskIndex FormulationDraft::addEvent(std::string id, TaskSource source)
{
    Task event;
    event.id = std::move(id);
    return addTask(std::move(event), std::move(source));
}

LagIndex FormulationDraft::addLag(const TaskPoint& from, const TaskPoint& to, const Gap& gap,
                                  LagSource source, std::int64_t loss)
{
    Lag lag;
    lag.id = pointText(problem(), from) + ">" + pointText(problem(), to);
    if (source.wait) {
        lag.id += ":" + source.wait->text();
    }
    lag.id = unique("lag", std::move(lag.id));
    lag.from = from;
    lag.to = to;
    lag.min = gap.min;
    lag.max = gap.max;
    lag.loss = loss;
    formulation_.lags.push_back(std::move(source));
    return formulation_.problem.lags.push_back(std::move(lag));
}

DemandIndex FormulationDraft::addDemand(Demand demand, DemandSource source)
{
    expects(demand.count.has_value() != demand.pool.has_value(), "a demand of a count or a pool");
    demand.id = unique("demand", std::move(demand.id));
    formulation_.demands.push_back(std::move(source));
    return formulation_.problem.demands.push_back(std::move(demand));
}

OvenDemandIndex FormulationDraft::addOvenDemand(OvenDemand demand, DemandSource source)
{
    demand.id = unique("oven demand", std::move(demand.id));
    formulation_.ovenDemands.push_back(std::move(source));
    return formulation_.problem.ovenDemands.push_back(std::move(demand));
}

ChoiceIndex FormulationDraft::addChoice(std::string id, ChoiceSource source)
{
    Choice choice;
    choice.id = unique("choice", std::move(id));
    formulation_.choices.push_back(std::move(source));
    return formulation_.problem.choices.push_back(std::move(choice));
}

OptionRef FormulationDraft::addOption(ChoiceIndex choice, std::string id, std::string name,
                                      std::int64_t cost)
{
    Choice& what = formulation_.problem.choices[choice];
    Option option;
    option.id = unique(("option of " + what.id).c_str(), std::move(id));
    option.cost = cost;
    formulation_.choices[choice].optionNames.push_back(std::move(name));
    return {choice, what.options.push_back(std::move(option))};
}

void FormulationDraft::putInto(const OptionRef& option, TaskIndex task)
{
    const bool isNew = options_.emplace(task, option).second;
    expects(isNew, "a task stands in one option at most");
    formulation_.problem.choices[option.choice].options[option.option].tasks.push_back(task);
}

void FormulationDraft::addCost(const OptionRef& option, std::int64_t cost)
{
    formulation_.problem.choices[option.choice].options[option.option].cost += cost;
}

std::optional<OptionRef> FormulationDraft::optionOf(TaskIndex task) const
{
    const auto found = options_.find(task);
    if (found == options_.end() || problem().choices[found->second.choice].options.size() == 1) {
        return std::nullopt;
    }
    return found->second;
}

/// Whether `task` is there whenever `other` is.
bool FormulationDraft::isPresentWith(TaskIndex task, TaskIndex other) const
{
    const auto option = optionOf(task);
    return !option || option == optionOf(other);
}

TaskIndex FormulationDraft::optionEvent(const OptionRef& option)
{
    const auto known = optionEvents_.find(option);
    if (known != optionEvents_.end()) {
        return known->second;
    }
    const Choice& choice = problem().choices[option.choice];
    TaskSource source;
    source.role = TaskRole::Mark;
    source.rule = Rule::Preparations;
    const TaskIndex event = addEvent(choice.id + "=" + choice.options[option.option].id, source);
    putInto(option, event);
    optionEvents_.emplace(option, event);
    return event;
}

void FormulationDraft::forbid(const OptionRef& one, const OptionRef& other, const LagSource& source)
{
    const TaskIndex first = optionEvent(one);
    const TaskIndex second = optionEvent(other);
    addLag(startOf(first), startOf(second), {Minutes{1}, Minutes{0}}, source);
}

void FormulationDraft::exclude(const OptionRef& option, const LagSource& source)
{
    TaskSource mark;
    mark.role = TaskRole::Mark;
    mark.rule = source.rule;
    const TaskIndex always = addEvent("not/" + problem().choices[option.choice].id, mark);
    addLag(startOf(always), startOf(optionEvent(option)), {Minutes{1}, Minutes{0}}, source);
}

CountIndex FormulationDraft::addCount(Count count, ResourceSource source)
{
    count.id = unique("resource", std::move(count.id));
    formulation_.counts.push_back(std::move(source));
    return formulation_.problem.counts.push_back(std::move(count));
}

PoolIndex FormulationDraft::addPool(Pool pool, ResourceSource source)
{
    pool.id = unique("resource", std::move(pool.id));
    formulation_.pools.push_back(std::move(source));
    return formulation_.problem.pools.push_back(std::move(pool));
}

void FormulationDraft::addCook(Cook cook, std::string name)
{
    formulation_.problem.cooks.push_back(std::move(cook));
    formulation_.cookNames.push_back(std::move(name));
}

void FormulationDraft::addOven(Oven oven, std::string name)
{
    formulation_.problem.ovens.push_back(std::move(oven));
    formulation_.ovenNames.push_back(std::move(name));
}

void FormulationDraft::addServing(const CourseId& course, TaskIndex event)
{
    formulation_.servings.emplace(course, event);
}

FormulationPtr FormulationDraft::finish()
{
    return std::make_shared<const Formulation>(std::move(formulation_));
}

} // namespace suppertide
