// Neighbourhoods: which tasks may move while all others stay where the best schedule has them.
// Source: P. Shaw, Using constraint programming and local search methods to solve vehicle routing
// problems, CP 1998.
//
//     near in time    · · [-- --- --] · · ·
//     tied by lags    · ■——■ · ■——■ · · ·  ■ drawn at random
//     what is heated  all that may be in any oven, what could be done instead of it, and some of
//                     what lags tie to that: to change who is in which oven often takes another
//                     method of two dishes at once
#pragma once

#include <cstddef>
#include <vector>

#include "core/base/strong_index.h"
#include "core/planner/exact/model.h"
#include "core/planner/quick_start/dice.h"
#include "core/problem/schedule.h"

namespace suppertide::exact {

class Neighbourhoods
{
public:
    using Freed = IndexedVector<TaskIndex, bool>;
    struct Drawn
    {
        Freed freed;
        bool isOfSize = false; // no more than was asked for, so that the size can be learnt
    };

    /// Both must outlive this.
    Neighbourhoods(const Model& model, quick_start::Dice& dice);

    /// About `size` tasks, or all that is heated. `values` of the best schedule's variables.
    [[nodiscard]] Drawn draw(const Schedule& best, const std::vector<Bound>& values,
                             std::size_t size);

private:
    [[nodiscard]] Freed none() const;
    [[nodiscard]] Freed near(const std::vector<Bound>& values, std::size_t size);
    [[nodiscard]] Freed tied(const Schedule& best, std::size_t size);
    [[nodiscard]] Freed heated();
    void addOven(const Schedule& best, Freed& freed);
    void addTied(Freed& freed);

    const Model* model_;
    const Problem* problem_;
    quick_start::Dice* dice_;
    Freed ofOvens_; // all that may be in an oven, and what could be done instead
};

} // namespace suppertide::exact
