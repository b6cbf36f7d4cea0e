#include "tests/support/problem/random_problem.h"

#include <algorithm>
#include <string>

namespace suppertide::test {

namespace {

constexpr std::int64_t horizon = 60;

std::string numbered(const char* prefix, std::size_t number)
{
    return prefix + std::to_string(number);
}

TaskIndex anyTask(const Problem& problem, Random& random)
{
    return TaskIndex{static_cast<std::size_t>(
        random.between(0, static_cast<std::int64_t>(problem.tasks.size()) - 1))};
}

TaskPoint anyPoint(const Problem& problem, Random& random)
{
    return {anyTask(problem, random), random.oneIn(2) ? Edge::Start : Edge::End};
}

Interval anyInterval(Random& random)
{
    const std::int64_t a = random.between(0, horizon);
    const std::int64_t b = random.between(0, horizon);
    return interval(std::min(a, b), std::max(a, b));
}

void addTasks(Problem& problem, Random& random)
{
    const auto count = static_cast<std::size_t>(random.between(2, 8));
    for (std::size_t i = 0; i < count; ++i) {
        Task task;
        task.id = numbered("t", i);
        task.duration = Minutes{random.oneIn(5) ? 0 : random.between(1, 15)};
        task.window = random.oneIn(3) ? anyInterval(random) : interval(0, horizon);
        if (!random.oneIn(3)) {
            task.hands =
                Hands{Attention::percent(static_cast<int>(random.between(0, 10)) * 10),
                      random.oneIn(4) ? 2 : 1,
                      random.oneIn(4) ? std::optional<std::string>("carve") : std::nullopt};
        }
        task.atTable = random.oneIn(3);
        problem.tasks.push_back(task);
    }
}

void addLags(Problem& problem, Random& random)
{
    const std::int64_t count = random.between(0, 4);
    for (std::int64_t i = 0; i < count; ++i) {
        Lag lag;
        lag.id = numbered("l", static_cast<std::size_t>(i));
        lag.from = anyPoint(problem, random);
        lag.to = anyPoint(problem, random);
        if (!random.oneIn(3)) {
            lag.min = Minutes{random.between(-10, 15)};
        }
        if (!random.oneIn(3)) {
            lag.max = Minutes{random.between(-5, 30)};
        }
        lag.loss = random.between(0, 3);
        problem.lags.push_back(lag);
    }
}

void addResources(Problem& problem, Random& random)
{
    problem.counts.push_back({"fridge", random.between(1, 5)});
    Pool hob;
    hob.id = "hob";
    hob.units.push_back({"left", random.between(14, 18)});
    hob.units.push_back({"right", random.between(18, 22)});
    problem.pools.push_back(hob);
    const std::int64_t count = random.between(0, 5);
    for (std::int64_t i = 0; i < count; ++i) {
        Demand demand;
        demand.id = numbered("d", static_cast<std::size_t>(i));
        demand.from = anyPoint(problem, random);
        demand.to = anyPoint(problem, random);
        if (random.oneIn(2)) {
            demand.count = CountIndex{0};
            demand.amount = random.between(0, 4);
        } else {
            demand.pool = PoolIndex{0};
            demand.minSize = random.between(0, 22);
            if (random.oneIn(3)) {
                demand.units = std::vector{UnitIndex{random.oneIn(2) ? 0U : 1U}};
            }
        }
        problem.demands.push_back(demand);
    }
}

void addCooks(Problem& problem, Random& random)
{
    const std::int64_t count = random.between(1, 2);
    for (std::int64_t i = 0; i < count; ++i) {
        Cook cook;
        cook.id = numbered("c", static_cast<std::size_t>(i));
        if (random.oneIn(2)) {
            cook.skills.emplace_back("carve");
        }
        const std::int64_t leaves = random.between(20, horizon);
        cook.free = {interval(0, leaves)};
        if (leaves + 3 < horizon) {
            cook.free.push_back(interval(random.oneIn(2) ? leaves : leaves + 2, horizon));
        }
        if (random.oneIn(2)) {
            cook.table = {interval(10, 14)};
        }
        if (random.oneIn(2)) {
            cook.tableAfter = {{anyTask(problem, random), Minutes{random.between(0, 10)}}};
        }
        problem.cooks.push_back(cook);
    }
}

void addOvens(Problem& problem, Random& random)
{
    const std::int64_t ovens = random.between(1, 2);
    for (std::int64_t i = 0; i < ovens; ++i) {
        problem.ovens.push_back({numbered("o", static_cast<std::size_t>(i)), random.between(1, 2),
                                 50, 250, static_cast<int>(random.between(15, 40)), 20,
                                 random.between(1, 30) * 1000 + random.between(0, 999),
                                 random.between(1, 10) * 1000 + random.between(0, 999)});
    }
    const std::int64_t demands = random.between(0, 4);
    static const std::vector<std::string> modes{"fan", "grill", modeOff};
    for (std::int64_t i = 0; i < demands; ++i) {
        OvenDemand demand;
        demand.id = numbered("e", static_cast<std::size_t>(i));
        demand.from = anyPoint(problem, random);
        demand.to = anyPoint(problem, random);
        demand.shelves = random.between(0, 2);
        demand.acceptLow = static_cast<int>(random.between(10, 200));
        demand.acceptHigh = demand.acceptLow + static_cast<int>(random.between(0, 60));
        if (random.oneIn(2)) {
            demand.prefer = demand.acceptLow;
        }
        if (random.oneIn(4)) {
            demand.ovens = std::vector{OvenIndex{0}};
        }
        if (random.oneIn(3)) {
            demand.group = "tray";
        }
        if (random.oneIn(2)) {
            demand.mode = modes[static_cast<std::size_t>(random.between(0, 2))];
        }
        problem.ovenDemands.push_back(demand);
    }
}

void addChoices(Problem& problem, Random& random)
{
    if (problem.tasks.size() < 4 || random.oneIn(2)) {
        return;
    }
    Choice choice;
    choice.id = "m";
    choice.options.push_back({"a", {TaskIndex{0}}, random.between(0, 9)});
    choice.options.push_back({"b", {TaskIndex{1}, TaskIndex{2}}, random.between(0, 9)});
    problem.choices.push_back(choice);
}

void addCosts(Problem& problem, Random& random)
{
    Costs& costs = problem.costs;
    costs.quiet.push_back({random.between(0, 3), anyInterval(random), {}, {}});
    costs.quiet.push_back(
        {random.between(0, 3), {}, anyTask(problem, random), Minutes{random.between(0, 20)}});
    costs.ovenChange = random.between(0, 20);
    costs.ovenOnMinute = random.between(0, 2);
    costs.ovenSwitchOn = random.oneIn(2) ? random.between(0, 12) : 0;
    costs.ovenSwitchOnWithin = random.oneIn(3) ? random.between(0, 30) : 0;
    costs.preferC = random.between(0, 2);
    costs.session = random.between(0, 30);
    costs.sessionGap = Minutes{random.between(0, 10)};
    if (random.oneIn(2)) {
        costs.before.push_back({anyTask(problem, random), planTime(random.between(0, horizon))});
        costs.beforeRate = random.between(0, 3);
        costs.beforeMoved = random.between(0, 50);
    }
}

OvenProgram anyProgram(Random& random)
{
    OvenProgram program;
    std::int64_t minute = random.between(0, 10);
    const std::int64_t entries = random.between(0, 4);
    for (std::int64_t i = 0; i < entries && minute <= horizon; ++i) {
        program.push_back(
            {planTime(minute), random.oneIn(3)
                                   ? std::nullopt
                                   : std::optional(static_cast<int>(random.between(4, 27)) * 10)});
        minute += random.between(1, 15);
    }
    return program;
}

void decideTask(const Problem& problem, Schedule& schedule, TaskIndex task, Random& random)
{
    schedule.starts[task] =
        random.oneIn(8) ? std::nullopt : std::optional(planTime(random.between(0, horizon)));
    schedule.cooks[task].clear();
    for (const CookIndex cook : problem.cooks.indices()) {
        if (random.oneIn(2)) {
            schedule.cooks[task].push_back(cook);
        }
    }
}

void decideDemand(const Problem& problem, Schedule& schedule, DemandIndex demand, Random& random)
{
    schedule.units[demand].reset();
    if (problem.demands[demand].pool && !random.oneIn(5)) {
        schedule.units[demand] = UnitIndex{random.oneIn(2) ? 0U : 1U};
    }
}

void decideOvenDemand(const Problem& problem, Schedule& schedule, OvenDemandIndex demand,
                      Random& random)
{
    schedule.ovens[demand].reset();
    if (!random.oneIn(6)) {
        schedule.ovens[demand] = OvenIndex{static_cast<std::size_t>(
            random.between(0, static_cast<std::int64_t>(problem.ovens.size()) - 1))};
    }
}

void decideChoice(const Problem& problem, Schedule& schedule, ChoiceIndex choice, Random& random)
{
    schedule.options[choice].reset();
    if (!random.oneIn(6)) {
        schedule.options[choice] = OptionIndex{static_cast<std::size_t>(random.between(
            0, static_cast<std::int64_t>(problem.choices[choice].options.size()) - 1))};
    }
}

} // namespace

Problem anyProblem(Random& random)
{
    Problem problem;
    problem.horizon = planTime(horizon);
    addTasks(problem, random);
    addLags(problem, random);
    addResources(problem, random);
    addCooks(problem, random);
    addOvens(problem, random);
    addChoices(problem, random);
    addCosts(problem, random);
    return problem;
}

Schedule anySchedule(const Problem& problem, Random& random)
{
    Schedule schedule = emptyScheduleFor(problem);
    schedule.status = ScheduleStatus::Feasible;
    for (const TaskIndex task : problem.tasks.indices()) {
        decideTask(problem, schedule, task, random);
    }
    for (const ChoiceIndex choice : problem.choices.indices()) {
        decideChoice(problem, schedule, choice, random);
    }
    for (const DemandIndex demand : problem.demands.indices()) {
        decideDemand(problem, schedule, demand, random);
    }
    for (const OvenDemandIndex demand : problem.ovenDemands.indices()) {
        decideOvenDemand(problem, schedule, demand, random);
    }
    for (const OvenIndex oven : problem.ovens.indices()) {
        schedule.programs[oven] = anyProgram(random);
    }
    return schedule;
}

Schedule edited(const Problem& problem, Schedule schedule, Random& random)
{
    const std::int64_t edits = random.between(1, 3);
    for (std::int64_t i = 0; i < edits; ++i) {
        switch (random.between(0, 4)) {
        case 0:
            decideTask(problem, schedule, anyTask(problem, random), random);
            break;
        case 1:
            if (!problem.choices.empty()) {
                decideChoice(problem, schedule, ChoiceIndex{0}, random);
            }
            break;
        case 2:
            if (!problem.demands.empty()) {
                decideDemand(problem, schedule, DemandIndex{problem.demands.size() - 1}, random);
            }
            break;
        case 3:
            if (!problem.ovenDemands.empty()) {
                decideOvenDemand(problem, schedule, OvenDemandIndex{0}, random);
            }
            break;
        default:
            schedule.programs[OvenIndex{0}] = anyProgram(random);
        }
    }
    return schedule;
}

} // namespace suppertide::test
