#include "core/night/rest_writer.h"

#include <algorithm>

#include "core/night/oven_now.h"

namespace suppertide {

namespace {

/// Even late at night there is so long to finish.
constexpr Minutes leastRest{4 * 60};
/// Where hours are not kept to, they are missed by no more than this.
constexpr Minutes outsideHours{60};
/// A course past its time is served within this.
constexpr Minutes servedWithin{60};

} // namespace

std::vector<Interval> withJoined(const std::vector<Interval>& all, Interval more)
{
    std::vector<Interval> joined;
    for (const Interval& each : all) {
        if (each.end < more.start || more.end < each.start) {
            joined.push_back(each);
        } else {
            more = {std::min(more.start, each.start), std::max(more.end, each.end)};
        }
    }
    joined.push_back(more);
    std::ranges::sort(joined);
    return joined;
}

RestWriter::RestWriter(RestOfEvening& rest, const Progress& progress, const RestOptions& options)
    : rest_(rest), whole_(*rest.whole), from_(whole_.problem), progress_(progress),
      options_(options), now_(rest.facts.now.time_since_epoch()), times_(from_, rest.planned),
      degrees_(ovensNow(whole_, rest.planned, rest.facts, progress))
{
    rest_.inRest.assign(from_.tasks.size(), std::nullopt);
}

void RestWriter::write()
{
    made_.calendar = {whole_.calendar.instant(rest_.facts.now), whole_.calendar.zone};
    made_.problem.name = from_.name;
    made_.problem.horizon =
        planTime(0) + std::max(from_.horizon - rest_.facts.now, leastRest) + options_.servingLater;
    made_.problem.counts = from_.counts;
    made_.problem.pools = from_.pools;
    made_.counts = whole_.counts;
    made_.pools = whole_.pools;
    made_.ovenNames = whole_.ovenNames;
    made_.cookNames = whole_.cookNames;
    addCooks();
    addOvens();
    decideChoices();
    addNow();
    addTasks();
    addChoices();
    addLags();
    addDemands();
    addOvenDemands();
    addCosts();
    rest_.formulation = std::make_shared<const Formulation>(std::move(made_));
}

Interval RestWriter::shifted(const Interval& when) const
{
    return {std::max(planTime(0), shifted(when.start)), shifted(when.end)};
}

std::vector<Interval> RestWriter::shifted(const std::vector<Interval>& all) const
{
    std::vector<Interval> left;
    for (const Interval& each : all) {
        const Interval part = shifted(each);
        if (!part.empty()) {
            left.push_back(part);
        }
    }
    return left;
}

const StepReport* RestWriter::reportOf(TaskIndex task) const
{
    const auto said = progress_.steps.find(from_.tasks[task].id);
    return said == progress_.steps.end() ? nullptr : &said->second;
}

RestPoint RestWriter::see(const TaskPoint& point) const
{
    const StepFact& fact = rest_.facts.steps[point.task];
    const auto& kept = rest_.inRest[point.task];
    if (fact.state == StepState::Done ||
        (fact.state == StepState::UnderWay && point.edge == Edge::Start)) {
        const PlanTime then = point.edge == Edge::Start ? fact.when.start : fact.when.end;
        return {false, std::min(then - rest_.facts.now, Minutes{0}), {}};
    }
    return kept ? RestPoint{false, std::nullopt, {*kept, point.edge}} : RestPoint{true, {}, {}};
}

/// Of a point of the rest, by its task's window alone.
PlanTime RestWriter::earliest(const TaskPoint& point) const
{
    const Task& task = made_.problem.tasks[point.task];
    return task.window.start + (point.edge == Edge::End ? task.duration : Minutes{0});
}

/// What is begun is decided, and so is everything unless it may be chosen anew.
void RestWriter::decideChoices()
{
    for (const ChoiceIndex index : from_.choices.indices()) {
        const Choice& choice = from_.choices[index];
        bool isBegun = false;
        for (const Option& option : choice.options) {
            isBegun = isBegun || std::ranges::any_of(option.tasks, [&](TaskIndex task) {
                          return rest_.facts.steps[task].state != StepState::ToCome;
                      });
        }
        if (options_.mayChoose && !isBegun) {
            open_.insert(index);
            continue;
        }
        for (const OptionIndex option : choice.options.indices()) {
            if (rest_.planned.options[index] != option) {
                notChosen_.insert(choice.options[option].tasks.begin(),
                                  choice.options[option].tasks.end());
            }
        }
    }
}

void RestWriter::addNow()
{
    Task now;
    now.id = "now";
    now.window = interval(0, 0);
    TaskSource source;
    source.role = TaskRole::Target; // a time that the evening gives
    source.rule = Rule::Pins;
    source.text = "now";
    made_.taskById.emplace(now.id, TaskIndex{0});
    nowEvent_ = made_.problem.tasks.push_back(std::move(now));
    made_.tasks.push_back(std::move(source));
}

TaskIndex RestWriter::add(TaskIndex from, Task task)
{
    made_.taskById.emplace(task.id, TaskIndex{made_.problem.tasks.size()});
    const TaskIndex added = made_.problem.tasks.push_back(std::move(task));
    made_.tasks.push_back(whole_.tasks[from]);
    rest_.inRest[from] = added;
    return added;
}

void RestWriter::addTasks()
{
    for (const TaskIndex task : from_.tasks.indices()) {
        const StepState state = rest_.facts.steps[task].state;
        if (state == StepState::UnderWay) {
            addUnderWay(task);
        } else if (state == StepState::ToCome && !notChosen_.contains(task)) {
            addToCome(task);
        }
    }
    for (const auto& [course, event] : whole_.servings) {
        if (rest_.inRest[event]) {
            made_.servings.emplace(course, *rest_.inRest[event]);
        }
    }
}

void RestWriter::addToCome(TaskIndex index)
{
    Task task = from_.tasks[index];
    const bool isServing = whole_.tasks[index].role == TaskRole::Serving;
    const PlanTime horizon = made_.problem.horizon;
    const bool isToTheEnd = task.window.end == from_.horizon;
    const bool isGivenUp = options_.givenUp.contains("window:" + task.id);
    task.window = {std::max(planTime(0), shifted(rest_.facts.steps[index].earliest)),
                   shifted(task.window.end)};
    task.window.start = std::max(task.window.start, shifted(from_.tasks[index].window.start));
    task.window.end += isServing ? options_.servingLater : isGivenUp ? outsideHours : Minutes{0};
    if (isToTheEnd) {
        task.window.end = horizon;
    } else if (task.window.end < task.window.start + task.duration) {
        rest_.passed.push_back(
            {isServing ? PassedKind::Serving : PassedKind::Window, index, std::nullopt});
        task.window.end = isServing ? task.window.start + servedWithin : horizon;
    }
    task.window.end = std::min(task.window.end, horizon);
    add(index, std::move(task));
}

/// Fixed at 0 with the time that it still takes.
void RestWriter::addUnderWay(TaskIndex index)
{
    Task task = from_.tasks[index];
    task.duration = std::min(rest_.facts.steps[index].when.end - rest_.facts.now,
                             made_.problem.horizon - planTime(0));
    task.window = {planTime(0), planTime(0) + task.duration};
    task.atTable = true;
    if (task.hands && task.needsCooks()) {
        giveToItsCooks(index, task);
    }
    add(index, std::move(task));
}

/// Those who do it go on with it: a skill of their own, and time for it. What is under way at once
/// is; a cook who does more than one can gives each what is left.
void RestWriter::giveToItsCooks(TaskIndex index, Task& task)
{
    std::vector<CookIndex> cooks;
    if (const StepReport* report = reportOf(index)) {
        for (const CookIndex cook : from_.cooks.indices()) {
            if (std::ranges::find(report->cooks, from_.cooks[cook].id) != report->cooks.end()) {
                cooks.push_back(cook);
            }
        }
    }
    if (cooks.size() != static_cast<std::size_t>(task.hands->cooks)) {
        cooks = rest_.planned.cooks[index];
    }
    int free = 100;
    for (const CookIndex cook : cooks) {
        free = std::min(free, 100 - taken_[cook]);
    }
    const int attention = std::min(free, task.hands->attention.percent());
    if (cooks.empty() || attention <= 0) {
        task.hands.reset();
        return;
    }
    const std::string skill = "goes on with " + task.id;
    task.hands = Hands{Attention::percent(attention), static_cast<int>(cooks.size()), skill};
    for (const CookIndex each : cooks) {
        Cook& cook = made_.problem.cooks[each];
        taken_[each] += attention;
        cook.skills.push_back(skill);
        cook.free = withJoined(cook.free, task.window);
    }
}

void RestWriter::addChoices()
{
    for (const ChoiceIndex index : open_) {
        Choice choice;
        choice.id = from_.choices[index].id;
        for (const Option& option : from_.choices[index].options) {
            Option left{option.id, {}, option.cost};
            for (const TaskIndex task : option.tasks) {
                if (rest_.inRest[task]) {
                    left.tasks.push_back(*rest_.inRest[task]);
                }
            }
            choice.options.push_back(std::move(left));
        }
        made_.problem.choices.push_back(std::move(choice));
        made_.choices.push_back(whole_.choices[index]);
    }
}

void RestWriter::addCooks()
{
    for (const Cook& cook : from_.cooks) {
        Cook left = cook;
        left.free = shifted(cook.free);
        if (!left.free.empty()) {
            left.free.back().end =
                std::min(left.free.back().end + options_.cooksLonger, made_.problem.horizon);
        }
        left.table = shifted(cook.table);
        left.tableAfter.clear();
        made_.problem.cooks.push_back(std::move(left));
    }
}

void RestWriter::addOvens()
{
    for (const OvenIndex index : from_.ovens.indices()) {
        Oven oven = from_.ovens[index];
        oven.startC = degrees_[index];
        made_.problem.ovens.push_back(std::move(oven));
    }
}

} // namespace suppertide
