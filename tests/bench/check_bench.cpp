// How long a whole check takes, and one move of the mouse with LiveCheck: a task alone, and a dish
// with all that is derived from its starts (cooks, units, ovens, programs).
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include "core/check/check.h"
#include "core/check/live_check.h"

namespace suppertide {

namespace {

constexpr std::int64_t stepsOfDish = 8;
constexpr std::int64_t horizon = 3 * 24 * 60;

/// A made-up evening: dishes of eight steps in a row, one of them in an oven, one on a burner, with
/// a pan and a fridge box held, three cooks, two ovens, and a course served after every few dishes.
class Evening
{
public:
    explicit Evening(std::int64_t tasks)
    {
        problem_.horizon = planTime(horizon);
        addRoom();
        for (std::int64_t dish = 0; dish * stepsOfDish < tasks; ++dish) {
            addDish(dish);
        }
        problem_.costs = {.quiet = {{1, interval(horizon - 60, horizon)}},
                          .ovenChange = 20,
                          .ovenOnMinute = 1,
                          .preferC = 1,
                          .session = 30,
                          .sessionGap = 60_min};
        schedule_ = laidOut();
    }

    [[nodiscard]] const Problem& problem() const { return problem_; }
    [[nodiscard]] const Schedule& schedule() const { return schedule_; }

    /// The schedule with one dish moved and its cooks, burner and oven given anew.
    [[nodiscard]] Schedule withDishMoved(std::int64_t dish, std::int64_t minutes) const
    {
        Schedule next = schedule_;
        for (std::int64_t step = 0; step < stepsOfDish; ++step) {
            const auto task = taskOf(dish, step);
            if (next.starts.contains(task)) {
                next.starts[task] = *next.starts[task] + Minutes{minutes};
                for (CookIndex& cook : next.cooks[task]) {
                    cook = CookIndex{(cook.value() + 1) % problem_.cooks.size()};
                }
            }
        }
        const DemandIndex burner{static_cast<std::size_t>(dish) * 2};
        const OvenDemandIndex stay{static_cast<std::size_t>(dish)};
        next.units[burner] = UnitIndex{(next.units[burner]->value() + 1) % 4};
        next.ovens[stay] = OvenIndex{1 - next.ovens[stay]->value()};
        for (OvenProgram& program : next.programs) {
            program.back().at += Minutes{minutes};
        }
        return next;
    }

    static TaskIndex taskOf(std::int64_t dish, std::int64_t step)
    {
        return TaskIndex{static_cast<std::size_t>(dish * stepsOfDish + step)};
    }

private:
    void addRoom()
    {
        problem_.counts.push_back({"fridge", 1000});
        Pool hob{"hob", {}};
        for (const char* unit : {"front left", "front right", "back left", "back right"}) {
            hob.units.push_back({unit, 21});
        }
        problem_.pools.push_back(std::move(hob));
        for (int i = 0; i < 3; ++i) {
            problem_.cooks.push_back({fmt::format("cook {}", i), {}, {interval(0, horizon)}});
        }
        for (int i = 0; i < 2; ++i) {
            problem_.ovens.push_back(
                {fmt::format("oven {}", i), 4, 50, 250, 20, 20, 15'000, 4'000});
        }
    }

    void addDish(std::int64_t dish)
    {
        const auto id = [dish](const char* what, std::int64_t n) {
            return fmt::format("{} {} of dish {}", what, n, dish);
        };
        for (std::int64_t step = 0; step < stepsOfDish; ++step) {
            const int attention = step % 2 == 0 ? 80 : 0;
            problem_.tasks.push_back({id("step", step), Minutes{attention > 0 ? 10 : 30},
                                      interval(0, horizon),
                                      Hands{Attention::percent(attention), 1, {}}});
            if (step > 0) {
                problem_.lags.push_back({id("lag", step),
                                         {taskOf(dish, step - 1), Edge::End},
                                         {taskOf(dish, step), Edge::Start},
                                         0_min,
                                         Minutes{120},
                                         1});
            }
        }
        problem_.demands.push_back({.id = id("burner", 1),
                                    .from = {taskOf(dish, 2), Edge::Start},
                                    .to = {taskOf(dish, 3), Edge::End},
                                    .pool = PoolIndex{0},
                                    .minSize = 18});
        problem_.demands.push_back({.id = id("box", 2),
                                    .from = {taskOf(dish, 0), Edge::End},
                                    .to = {taskOf(dish, 7), Edge::End},
                                    .count = CountIndex{0},
                                    .amount = 3});
        problem_.ovenDemands.push_back(
            {.id = id("stay", 1),
             .from = {taskOf(dish, 4), Edge::Start},
             .to = {taskOf(dish, 6), Edge::End},
             .acceptLow = 150,
             .acceptHigh = 190,
             .prefer = 180,
             .mode = dish % 3 == 0 ? std::optional<std::string>("fan") : std::nullopt});
        if (dish % 4 == 3) {
            for (Cook& cook : problem_.cooks) {
                cook.tableAfter.push_back({taskOf(dish, 7), 20_min});
            }
        }
    }

    [[nodiscard]] Schedule laidOut() const
    {
        Schedule schedule = emptyScheduleFor(problem_);
        schedule.status = ScheduleStatus::Feasible;
        std::int64_t dish = 0;
        for (const TaskIndex task : problem_.tasks.indices()) {
            const auto step = static_cast<std::int64_t>(task.value()) % stepsOfDish;
            dish = static_cast<std::int64_t>(task.value()) / stepsOfDish;
            schedule.starts[task] = planTime(60 + dish * 90 + step * 30);
            if (problem_.tasks[task].needsCooks()) {
                schedule.cooks[task] = {CookIndex{static_cast<std::size_t>(dish) % 3}};
            }
        }
        for (const DemandIndex demand : problem_.demands.indices()) {
            if (problem_.demands[demand].pool) {
                schedule.units[demand] = UnitIndex{demand.value() / 2 % 4};
            }
        }
        for (const OvenDemandIndex demand : problem_.ovenDemands.indices()) {
            schedule.ovens[demand] = OvenIndex{demand.value() % 2};
        }
        for (OvenProgram& program : schedule.programs) {
            program = {{planTime(60), 180}, {planTime(horizon - 60), std::nullopt}};
        }
        return schedule;
    }

    Problem problem_;
    Schedule schedule_;
};

void checkAll(benchmark::State& state)
{
    const Evening evening(state.range(0));
    for (auto round : state) {
        benchmark::DoNotOptimize(check(evening.problem(), evening.schedule()));
    }
    state.counters["tasks"] = static_cast<double>(evening.problem().tasks.size());
}
BENCHMARK(checkAll)->Arg(40)->Arg(100)->Arg(250)->Unit(benchmark::kMicrosecond);

void cost(benchmark::State& state)
{
    const Evening evening(state.range(0));
    for (auto round : state) {
        benchmark::DoNotOptimize(costOf(evening.problem(), evening.schedule()));
    }
}
BENCHMARK(cost)->Arg(100)->Unit(benchmark::kMicrosecond);

void moveOneTask(benchmark::State& state)
{
    const Evening evening(state.range(0));
    LiveCheck live(evening.problem(), evening.schedule());
    const TaskIndex task = Evening::taskOf(2, 4);
    const PlanTime start = *evening.schedule().starts[task];
    std::int64_t away = 0;
    for (auto round : state) {
        away = (away + 5) % 60;
        const StartMove move{task, start + Minutes{away}};
        benchmark::DoNotOptimize(live.update({&move, 1}));
    }
    state.counters["broken"] = static_cast<double>(live.broken().size());
}
BENCHMARK(moveOneTask)->Arg(100)->Arg(250)->Unit(benchmark::kMicrosecond);

/// Eight tasks move, and cooks, a unit, an oven and both programs change with them.
void moveOneDish(benchmark::State& state)
{
    const Evening evening(state.range(0));
    LiveCheck live(evening.problem(), evening.schedule());
    std::int64_t away = 0;
    for (auto round : state) {
        away = (away + 5) % 60;
        benchmark::DoNotOptimize(live.update(evening.withDishMoved(2, away)));
    }
    state.counters["broken"] = static_cast<double>(live.broken().size());
    state.counters["judged"] = static_cast<double>(live.judgedLast());
}
BENCHMARK(moveOneDish)->Arg(100)->Arg(250)->Unit(benchmark::kMicrosecond);

} // namespace

} // namespace suppertide

BENCHMARK_MAIN();
