#include "tests/support/problem/small_problem.h"

namespace suppertide::test {

SmallProblem::SmallProblem(std::int64_t horizon)
{
    problem.name = "small";
    problem.horizon = planTime(horizon);
}

TaskIndex SmallProblem::task(const std::string& id, std::int64_t duration)
{
    Task task;
    task.id = id;
    task.duration = Minutes{duration};
    task.window = {planTime(0), problem.horizon};
    return problem.tasks.push_back(task);
}

TaskIndex SmallProblem::event(const std::string& id, std::int64_t at)
{
    const TaskIndex index = task(id, 0);
    problem.tasks[index].window = interval(at, at);
    return index;
}

TaskIndex SmallProblem::work(const std::string& id, std::int64_t duration, int attention)
{
    const TaskIndex index = task(id, duration);
    problem.tasks[index].hands = Hands{Attention::percent(attention), 1, std::nullopt};
    return index;
}

Lag& SmallProblem::lag(const std::string& id, TaskPoint from, TaskPoint to,
                       std::optional<std::int64_t> min, std::optional<std::int64_t> max)
{
    Lag lag;
    lag.id = id;
    lag.from = from;
    lag.to = to;
    lag.min = min ? std::optional{Minutes{*min}} : std::nullopt;
    lag.max = max ? std::optional{Minutes{*max}} : std::nullopt;
    return problem.lags[problem.lags.push_back(lag)];
}

CookIndex SmallProblem::cook(const std::string& id)
{
    Cook cook;
    cook.id = id;
    cook.free = {{planTime(0), problem.horizon}};
    return problem.cooks.push_back(cook);
}

CountIndex SmallProblem::count(const std::string& id, std::int64_t capacity)
{
    return problem.counts.push_back({id, capacity});
}

PoolIndex SmallProblem::pool(const std::string& id, const std::vector<std::int64_t>& sizes)
{
    Pool pool;
    pool.id = id;
    for (const std::int64_t size : sizes) {
        pool.units.push_back({"u" + std::to_string(pool.units.size()), size});
    }
    return problem.pools.push_back(pool);
}

Demand& SmallProblem::counted(const std::string& id, TaskPoint from, TaskPoint to, CountIndex count,
                              std::int64_t amount)
{
    Demand demand;
    demand.id = id;
    demand.from = from;
    demand.to = to;
    demand.count = count;
    demand.amount = amount;
    return problem.demands[problem.demands.push_back(demand)];
}

Demand& SmallProblem::pooled(const std::string& id, TaskPoint from, TaskPoint to, PoolIndex pool,
                             std::int64_t minSize)
{
    Demand demand;
    demand.id = id;
    demand.from = from;
    demand.to = to;
    demand.pool = pool;
    demand.minSize = minSize;
    return problem.demands[problem.demands.push_back(demand)];
}

OvenIndex SmallProblem::oven(const std::string& id, std::int64_t shelves)
{
    Oven oven;
    oven.id = id;
    oven.shelves = shelves;
    oven.minC = 50;
    oven.maxC = 250;
    oven.startC = 20;
    oven.ambientC = 20;
    oven.heatMilliCPerMin = 15'000;
    oven.coolMilliCPerMin = 4'000;
    return problem.ovens.push_back(oven);
}

OvenDemand& SmallProblem::inOven(const std::string& id, TaskIndex task, int low, int high,
                                 int prefer)
{
    OvenDemand demand;
    demand.id = id;
    demand.from = {task, Edge::Start};
    demand.to = {task, Edge::End};
    demand.acceptLow = low;
    demand.acceptHigh = high;
    demand.prefer = prefer;
    return problem.ovenDemands[problem.ovenDemands.push_back(demand)];
}

} // namespace suppertide::test
