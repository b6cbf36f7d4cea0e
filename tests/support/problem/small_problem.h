// SmallProblem: builds a problem by hand, saying each thing in one line.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/problem/problem.h"

namespace suppertide::test {

class SmallProblem
{
public:
    explicit SmallProblem(std::int64_t horizon);

    TaskIndex task(const std::string& id, std::int64_t duration);
    /// An event at that minute.
    TaskIndex event(const std::string& id, std::int64_t at);
    /// Work that takes `attention` of one cook.
    TaskIndex work(const std::string& id, std::int64_t duration, int attention = 100);
    Lag& lag(const std::string& id, TaskPoint from, TaskPoint to, std::optional<std::int64_t> min,
             std::optional<std::int64_t> max);
    CookIndex cook(const std::string& id);
    CountIndex count(const std::string& id, std::int64_t capacity);
    PoolIndex pool(const std::string& id, const std::vector<std::int64_t>& sizes);
    Demand& counted(const std::string& id, TaskPoint from, TaskPoint to, CountIndex count,
                    std::int64_t amount);
    Demand& pooled(const std::string& id, TaskPoint from, TaskPoint to, PoolIndex pool,
                   std::int64_t minSize = 0);
    OvenIndex oven(const std::string& id, std::int64_t shelves);
    OvenDemand& inOven(const std::string& id, TaskIndex task, int low, int high, int prefer);

    Problem problem;
};

[[nodiscard]] inline TaskPoint startOf(TaskIndex task)
{
    return {task, Edge::Start};
}
[[nodiscard]] inline TaskPoint endOf(TaskIndex task)
{
    return {task, Edge::End};
}

} // namespace suppertide::test
