#include "tests/core/planner/oracle/second_reading.h"

#include "tests/core/planner/oracle/formulas.h"

namespace suppertide::test {

SecondReading::SecondReading(const Problem& problem)
    : formulas_(std::make_unique<Formulas>(problem))
{
    formulas_->addTasks();
    formulas_->addCounts();
    formulas_->addPools();
    formulas_->addHands();
    formulas_->addOvens();
    formulas_->addCosts();
}

SecondReading::~SecondReading() = default;

SecondReading::Least SecondReading::leastCost(std::optional<std::int64_t> believed)
{
    Least least;
    try {
        if (believed) {
            least.cost = formulas_->costOfAtMost(*believed);
        }
        if (!least.cost) {
            least.cost = formulas_->costOfAtMost(Formulas::mostCost);
        }
        while (least.cost && *least.cost > 0) { // no cost is negative
            const auto better = formulas_->costOfAtMost(*least.cost - 1);
            if (!better) {
                break;
            }
            least.cost = better;
        }
        least.decided = true;
    } catch (const Formulas::Undecided&) {
        least = {};
    }
    return least;
}

} // namespace suppertide::test
