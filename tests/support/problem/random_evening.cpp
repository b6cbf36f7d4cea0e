#include "tests/support/problem/random_evening.h"

#include <algorithm>

#include "tests/support/problem/small_problem.h"

namespace suppertide::test {

namespace {

class AnyEvening
{
public:
    AnyEvening(Random& random, std::int64_t tasks)
        : random_(random), tasks_(tasks), made_(random.between(100, 400))
    {}

    Problem make()
    {
        resources();
        tasks();
        for (std::int64_t i = random_.between(0, tasks_); i > 0; --i) {
            lag(i);
        }
        for (std::int64_t i = random_.between(0, tasks_); i > 0; --i) {
            demand(i);
        }
        for (std::int64_t i = random_.between(0, tasks_ / 2); i > 0; --i) {
            ovenDemand(i);
        }
        choices();
        costs();
        return made_.problem;
    }

private:
    [[nodiscard]] std::int64_t horizon() const { return minuteOf(made_.problem.horizon); }
    TaskIndex anyTask()
    {
        return TaskIndex{static_cast<std::size_t>(random_.between(0, tasks_ - 1))};
    }
    TaskPoint anyPoint() { return {anyTask(), random_.oneIn(2) ? Edge::Start : Edge::End}; }

    void resources();
    void tasks();
    void lag(std::int64_t number);
    void demand(std::int64_t number);
    void ovenDemand(std::int64_t number);
    void choices();
    void costs();

    Random& random_;
    std::int64_t tasks_;
    SmallProblem made_;
};

void AnyEvening::resources()
{
    for (std::int64_t i = random_.between(1, 3); i > 0; --i) {
        Cook& cook = made_.problem.cooks[made_.cook("c" + std::to_string(i))];
        if (random_.oneIn(2)) {
            cook.skills = {"sauce"};
        }
        if (random_.oneIn(3)) {
            cook.free = {interval(0, horizon() / 3), interval(horizon() / 2, horizon())};
        }
        if (random_.oneIn(3)) {
            cook.table = {interval(horizon() / 4, horizon() / 4 + 10)};
        }
        if (random_.oneIn(3)) {
            cook.tableAfter = {{TaskIndex{0}, Minutes{random_.between(0, 20)}}};
        }
    }
    made_.count("fridge", random_.between(2, 8));
    made_.pool("hob", {14, 18, random_.between(14, 21)});
    made_.oven("o1", random_.between(1, 3));
    if (random_.oneIn(2)) {
        made_.oven("o2", 2);
    }
}

void AnyEvening::tasks()
{
    for (std::int64_t i = 0; i < tasks_; ++i) {
        const std::string id = "t" + std::to_string(i);
        const TaskIndex index = random_.oneIn(5)
                                    ? made_.task(id, random_.between(0, 1) * random_.between(5, 40))
                                    : made_.work(id, random_.between(1, 25),
                                                 static_cast<int>(random_.between(0, 10)) * 10);
        Task& task = made_.problem.tasks[index];
        if (task.hands && random_.oneIn(5)) {
            task.hands->skill = "sauce";
        }
        if (task.hands && random_.oneIn(8)) {
            task.hands->cooks = 2;
        }
        task.atTable = random_.oneIn(4);
        if (random_.oneIn(4)) {
            const std::int64_t begin = random_.between(0, horizon() / 2);
            task.window = interval(
                begin, std::min(horizon(), begin + task.duration.count() + random_.between(0, 90)));
        }
    }
}

void AnyEvening::lag(std::int64_t number)
{
    // Mostly from an earlier to a later task, so that problems with a schedule are not rare.
    const TaskIndex a = anyTask();
    const TaskIndex b = anyTask();
    const TaskPoint from{std::min(a, b), random_.oneIn(4) ? Edge::Start : Edge::End};
    const TaskPoint to{std::max(a, b), random_.oneIn(4) ? Edge::End : Edge::Start};
    const std::int64_t min = random_.between(-5, 20);
    Lag& lag =
        made_.lag("l" + std::to_string(number), from, to,
                  random_.oneIn(5) ? std::nullopt : std::optional{min},
                  random_.oneIn(2) ? std::nullopt : std::optional{min + random_.between(0, 40)});
    lag.loss = random_.oneIn(2) ? random_.between(1, 4) : 0;
}

void AnyEvening::demand(std::int64_t number)
{
    const std::string id = "d" + std::to_string(number);
    const TaskIndex task = anyTask();
    const bool whole = random_.oneIn(2);
    const TaskPoint from = whole ? TaskPoint{task, Edge::Start} : anyPoint();
    const TaskPoint to = whole ? TaskPoint{task, Edge::End} : anyPoint();
    if (random_.oneIn(2)) {
        made_.counted(id, from, to, CountIndex{0}, random_.between(0, 3));
        return;
    }
    Demand& demand = made_.pooled(id, from, to, PoolIndex{0}, random_.oneIn(2) ? 16 : 0);
    if (random_.oneIn(5)) {
        demand.units = std::vector<UnitIndex>{UnitIndex{1}, UnitIndex{2}};
    }
}

void AnyEvening::ovenDemand(std::int64_t number)
{
    const int low = static_cast<int>(random_.between(2, 20)) * 10;
    OvenDemand& demand = made_.inOven("e" + std::to_string(number), anyTask(), low,
                                      low + static_cast<int>(random_.between(0, 6)) * 10, low);
    if (random_.oneIn(4)) {
        demand.from = anyPoint();
        demand.to = anyPoint();
    }
    demand.shelves = random_.between(0, 2);
    demand.mode = random_.oneIn(3) ? std::optional<std::string>{"fan"} : std::nullopt;
    if (random_.oneIn(6)) {
        demand.mode = modeOff;
        demand.acceptLow = 20;
        demand.prefer.reset();
    }
    demand.group = random_.oneIn(4) ? std::optional<std::string>{"g"} : std::nullopt;
    if (random_.oneIn(4)) {
        demand.ovens = std::vector<OvenIndex>{OvenIndex{0}};
    }
}

void AnyEvening::choices()
{
    // Tasks of options come from the end of the list, so that lags and events name them less.
    std::int64_t last = tasks_ - 1;
    for (std::int64_t i = random_.between(0, 2); i > 0 && last > 2; --i) {
        Choice choice;
        choice.id = "m" + std::to_string(i);
        for (std::int64_t k = 0; k < 2; ++k) {
            Option option;
            option.id = k == 0 ? "a" : "b";
            option.cost = random_.between(0, 20);
            option.tasks = {TaskIndex{static_cast<std::size_t>(last--)}};
            choice.options.push_back(option);
        }
        made_.problem.choices.push_back(choice);
    }
}

void AnyEvening::costs()
{
    Costs& costs = made_.problem.costs;
    costs.ovenChange = random_.between(0, 40);
    costs.ovenOnMinute = random_.between(0, 2);
    costs.ovenSwitchOn = random_.oneIn(2) ? random_.between(0, 12) : 0;
    costs.ovenSwitchOnWithin = random_.oneIn(3) ? random_.between(0, 30) : 0;
    costs.preferC = random_.between(0, 2);
    costs.session = random_.between(0, 30);
    costs.sessionGap = Minutes{random_.between(0, 60)};
    if (random_.oneIn(2)) {
        Quiet quiet;
        quiet.rate = 1;
        quiet.when = interval(horizon() / 2, horizon() / 2 + 40);
        costs.quiet.push_back(quiet);
    }
    if (random_.oneIn(2)) {
        Quiet quiet;
        quiet.rate = 1;
        quiet.before = TaskIndex{0};
        quiet.minutes = Minutes{30};
        costs.quiet.push_back(quiet);
    }
    if (random_.oneIn(3)) {
        costs.before.push_back({TaskIndex{1}, planTime(random_.between(0, horizon()))});
        costs.beforeRate = random_.between(0, 3);
        costs.beforeMoved = random_.between(0, 30);
    }
}

} // namespace

Problem anyEvening(Random& random, std::int64_t tasks)
{
    return AnyEvening(random, tasks).make();
}

} // namespace suppertide::test
