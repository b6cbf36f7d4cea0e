// SecondReading: a problem as formulas, written from the page of the format and sharing nothing
// with the planner, for z3 to say whether there is a schedule and how cheap the best one is. Ovens
// have a setting, or none, and a temperature at each minute, in the finest unit of their rates, so
// nothing is rounded. Only for tiny problems: all numbers are words of some twenty bits.
// Source of the solver: L. de Moura, N. Bjørner, Z3: an efficient SMT solver (2008).
#pragma once

#include <cstdint>
#include <memory>
#include <optional>

#include "core/problem/problem.h"

namespace suppertide::test {

class SecondReading
{
public:
    /// The problem must outlive this.
    explicit SecondReading(const Problem& problem);
    ~SecondReading();
    SecondReading(const SecondReading&) = delete;
    SecondReading& operator=(const SecondReading&) = delete;
    SecondReading(SecondReading&&) = delete;
    SecondReading& operator=(SecondReading&&) = delete;

    /// The cost of the best schedule; absent: there is none. Not decided: it took too long, by a
    /// count of steps, so that it is the same each time.
    struct Least
    {
        bool decided = false;
        std::optional<std::int64_t> cost;
    };
    /// A cost that is believed to be the least saves time if it is.
    [[nodiscard]] Least leastCost(std::optional<std::int64_t> believed);

private:
    struct Formulas;
    std::unique_ptr<Formulas> formulas_;
};

} // namespace suppertide::test
