#include "tests/support/problem/tiny_problem.h"

#include <algorithm>
#include <array>
#include <string>

#include "tests/support/problem/small_problem.h"

namespace suppertide::test {

namespace {

/// Thousandths of a degree a minute.
constexpr std::array<std::int64_t, 8> rates{500, 1000, 2000, 2500, 4000, 5000, 8000, 10'000};

class AnyTinyProblem
{
public:
    explicit AnyTinyProblem(Random& random)
        : random_(random), hasOvens_(!random.oneIn(3)),
          made_(hasOvens_ ? random.between(7, 12) : random.between(8, 16)), problem_(made_.problem)
    {}

    Problem make();

private:
    [[nodiscard]] std::int64_t horizon() const { return minuteOf(problem_.horizon); }
    [[nodiscard]] std::int64_t between(std::int64_t low, std::int64_t high)
    {
        return random_.between(low, high);
    }
    TaskIndex anyTask()
    {
        return TaskIndex{static_cast<std::size_t>(
            between(0, static_cast<std::int64_t>(problem_.tasks.size()) - 1))};
    }
    TaskPoint anyPoint() { return {anyTask(), random_.oneIn(2) ? Edge::Start : Edge::End}; }
    /// Mostly a task's whole length, else between any two points.
    std::pair<TaskPoint, TaskPoint> anyStretch();

    void addTask(std::size_t number);
    void addLag(std::size_t number);
    void addCook(std::size_t number);
    void addOven(std::size_t number);
    void addOvenDemand(std::size_t number);
    void addCounted(std::size_t number);
    void addPooled(std::size_t number);
    void addChoice();
    void addCosts();
    void addBefore();

    Random& random_;
    bool hasOvens_;
    SmallProblem made_;
    Problem& problem_;
    bool skills_ = false;
};

std::string named(const char* prefix, std::size_t number)
{
    return prefix + std::to_string(number);
}

std::pair<TaskPoint, TaskPoint> AnyTinyProblem::anyStretch()
{
    if (random_.oneIn(3)) {
        return {anyPoint(), anyPoint()};
    }
    const TaskIndex task = anyTask();
    return {startOf(task), endOf(task)};
}

void AnyTinyProblem::addTask(std::size_t number)
{
    const TaskIndex index = made_.task(named("t", number), random_.oneIn(5) ? 0 : between(1, 5));
    Task& task = problem_.tasks[index];
    if (!problem_.cooks.empty() && random_.oneIn(2)) {
        Hands hands;
        hands.attention = Attention::percent(static_cast<int>(between(0, 5) * 20));
        hands.cooks = random_.oneIn(5) ? 2 : 1;
        if (skills_ && random_.oneIn(3)) {
            hands.skill = "sauce";
        }
        task.hands = hands;
    }
    task.atTable = random_.oneIn(4);
    if (random_.oneIn(3)) {
        const std::int64_t from = between(0, horizon() / 2);
        task.window =
            interval(from, std::min(horizon(), from + task.duration.count() + between(0, 8)));
    }
}

void AnyTinyProblem::addLag(std::size_t number)
{
    Lag lag;
    lag.id = named("l", number);
    lag.from = anyPoint();
    lag.to = anyPoint();
    if (!random_.oneIn(4)) {
        lag.min = Minutes{between(-3, 4)};
    }
    if (random_.oneIn(2)) {
        lag.max = lag.min.value_or(Minutes{0}) + Minutes{between(-1, 6)};
    }
    lag.loss = random_.oneIn(2) ? between(1, 3) : 0;
    problem_.lags.push_back(lag);
}

void AnyTinyProblem::addCook(std::size_t number)
{
    Cook& cook = problem_.cooks[made_.cook(named("c", number))];
    if (random_.oneIn(2)) {
        cook.skills = {"sauce"};
    }
    if (random_.oneIn(4)) {
        const std::int64_t away = between(1, horizon() - 1);
        cook.free = {interval(0, away),
                     interval(std::min(horizon() - 1, away + between(0, 2)), horizon())};
    }
    if (random_.oneIn(4)) {
        const std::int64_t from = between(0, horizon() - 2);
        cook.table = {interval(from, from + between(1, 2))};
    }
}

void AnyTinyProblem::addOven(std::size_t number)
{
    Oven& oven = problem_.ovens[made_.oven(named("o", number), between(1, 2))];
    oven.ambientC = 20;
    oven.startC = random_.oneIn(4) ? static_cast<int>(between(15, 50)) : 20;
    oven.minC = static_cast<int>(random_.oneIn(4) ? between(10, 20) : between(25, 30));
    oven.maxC = static_cast<int>(between(45, 60));
    const auto any = [&] {
        return rates[static_cast<std::size_t>(
            between(0, static_cast<std::int64_t>(rates.size()) - 1))];
    };
    oven.heatMilliCPerMin = random_.oneIn(3) ? any() : 10'000;
    oven.coolMilliCPerMin = any();
}

void AnyTinyProblem::addOvenDemand(std::size_t number)
{
    const auto [from, to] = anyStretch();
    OvenDemand demand;
    demand.id = named("e", number);
    demand.from = from;
    demand.to = to;
    demand.shelves = between(0, 2);
    demand.acceptLow = static_cast<int>(between(15, 45));
    demand.acceptHigh = demand.acceptLow + static_cast<int>(between(0, 12));
    if (random_.oneIn(2)) {
        demand.prefer = static_cast<int>(between(demand.acceptLow - 3, demand.acceptHigh + 3));
    }
    if (random_.oneIn(4)) {
        demand.ovens = std::vector<OvenIndex>{OvenIndex{static_cast<std::size_t>(
            between(0, static_cast<std::int64_t>(problem_.ovens.size()) - 1))}};
    }
    if (random_.oneIn(4)) {
        demand.group = "g";
    }
    if (random_.oneIn(3)) {
        demand.mode = random_.oneIn(2) ? "fan" : "grill";
    }
    if (random_.oneIn(6)) {
        demand.mode = modeOff;
        demand.acceptLow = static_cast<int>(between(10, 30));
        demand.acceptHigh = std::max(demand.acceptLow, demand.acceptHigh);
    }
    problem_.ovenDemands.push_back(demand);
}

void AnyTinyProblem::addCounted(std::size_t number)
{
    const auto [from, to] = anyStretch();
    made_.counted(named("d", number), from, to, CountIndex{0}, between(0, 3));
}

void AnyTinyProblem::addPooled(std::size_t number)
{
    const auto [from, to] = anyStretch();
    Demand& demand =
        made_.pooled(named("p", number), from, to, PoolIndex{0}, random_.oneIn(3) ? 15 : 0);
    if (random_.oneIn(4)) {
        demand.units = std::vector<UnitIndex>{UnitIndex{1}};
    }
}

void AnyTinyProblem::addChoice()
{
    const std::size_t tasks = problem_.tasks.size();
    Choice choice;
    choice.id = "m";
    choice.options.push_back({"a", {TaskIndex{tasks - 1}}, between(0, 9)});
    choice.options.push_back({"b", {}, between(0, 9)});
    if (tasks > 2) {
        choice.options[OptionIndex{1}].tasks.push_back(TaskIndex{tasks - 2});
    }
    if (random_.oneIn(3)) {
        choice.options.push_back({"c", {}, between(3, 30)});
    }
    problem_.choices.push_back(choice);
}

void AnyTinyProblem::addBefore()
{
    Costs& costs = problem_.costs;
    for (const TaskIndex task : problem_.tasks.indices()) {
        if (random_.oneIn(2)) {
            costs.before.push_back({task, planTime(between(0, horizon()))});
        }
    }
    costs.beforeRate = between(0, 2);
    costs.beforeMoved = between(0, 20);
}

void AnyTinyProblem::addCosts()
{
    Costs& costs = problem_.costs;
    costs.ovenChange = random_.oneIn(2) ? between(1, 20) : 0;
    costs.ovenOnMinute = random_.oneIn(2) ? between(1, 3) : 0;
    costs.preferC = random_.oneIn(2) ? between(1, 2) : 0;
    costs.session = random_.oneIn(2) ? between(1, 20) : 0;
    costs.sessionGap = Minutes{between(0, 4)};
    if (random_.oneIn(3)) {
        const std::int64_t from = between(0, horizon() - 1);
        costs.quiet.push_back({1, interval(from, between(from, horizon())), std::nullopt, {}});
    }
    if (random_.oneIn(4)) {
        costs.quiet.push_back({1, {}, anyTask(), Minutes{between(0, 5)}});
    }
    if (random_.oneIn(3)) {
        addBefore();
    }
}

Problem AnyTinyProblem::make()
{
    const auto repeat = [&](std::int64_t least, std::int64_t most, auto&& add) {
        const std::int64_t times = between(least, most);
        for (std::int64_t i = 0; i < times; ++i) {
            add(static_cast<std::size_t>(i + 1));
        }
    };
    skills_ = random_.oneIn(3);
    repeat(0, 2, [&](std::size_t number) { addCook(number); });
    repeat(2, 5, [&](std::size_t number) { addTask(number); });
    repeat(0, 3, [&](std::size_t number) { addLag(number); });
    if (random_.oneIn(2)) {
        made_.count("fridge", between(2, 4));
        repeat(1, 3, [&](std::size_t number) { addCounted(number); });
    }
    if (random_.oneIn(2)) {
        made_.pool("hob", {10, 20});
        repeat(1, 3, [&](std::size_t number) { addPooled(number); });
    }
    if (hasOvens_) {
        repeat(1, 2, [&](std::size_t number) { addOven(number); });
        repeat(1, 3, [&](std::size_t number) { addOvenDemand(number); });
    }
    if (random_.oneIn(3)) {
        addChoice();
    }
    if (!problem_.cooks.empty() && random_.oneIn(4)) {
        problem_.cooks[CookIndex{0}].tableAfter = {{anyTask(), Minutes{between(0, 4)}}};
    }
    addCosts();
    return problem_;
}

} // namespace

Problem anyTinyProblem(Random& random)
{
    return AnyTinyProblem(random).make();
}

} // namespace suppertide::test
