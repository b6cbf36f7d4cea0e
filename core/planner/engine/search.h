// Search: decides literals until all variables that matter have values, under assumptions. Learns
// from conflicts, starts anew now and then, and looks at its limits at every step. What it learns
// stays true whatever is assumed.
// Source: N. Eén, N. Sörensson, An extensible SAT-solver (2003), for assumptions; M. Luby,
// A. Sinclair, D. Zuckerman, Optimal speedup of Las Vegas algorithms (1993), for the restarts.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "core/planner/engine/engine.h"

namespace suppertide::engine {

/// Says what to decide next by what the problem is about; absent: all that matters is decided.
using Brancher = std::function<std::optional<Literal>(const Trail&)>;
/// Counts work done since the last call and says whether there may be more.
using MayGoOn = std::function<bool(std::int64_t steps)>;

class Search
{
public:
    enum class End
    {
        Found,      // values() has the solution
        Infeasible, // under the assumptions; core() says which of them
        Given       // up: the limits were reached
    };
    struct Effort
    {
        std::int64_t conflicts = 0;
        bool byActivity = true;     // else only by the brancher
        bool resolvesFirst = false; // before all: what `resolveFirst` names
    };

    Search(Engine& engine, Brancher brancher, MayGoOn mayGoOn)
        : engine_(&engine), brancher_(std::move(brancher)), mayGoOn_(std::move(mayGoOn))
    {}

    [[nodiscard]] End run(const Literals& assumptions, Effort effort);
    /// The least value of each variable in the solution found last.
    [[nodiscard]] const std::vector<Bound>& values() const { return values_; }
    /// Some of the assumptions that cannot hold together.
    [[nodiscard]] const Literals& core() const { return core_; }
    /// What to decide first where that is asked for; absent: nothing.
    void resolveFirst(Brancher first) { first_ = std::move(first); }
    /// Values to keep close to.
    void aimAt(std::vector<Bound> values) { aims_ = std::move(values); }

private:
    [[nodiscard]] std::optional<Literal> pick(Effort effort);
    /// Decides assumptions that are not yet. False: one fails.
    [[nodiscard]] bool assume(const Literals& assumptions);
    void keepSolution();
    void forgetIfMany();

    Engine* engine_;
    Brancher brancher_;
    Brancher first_;
    MayGoOn mayGoOn_;
    std::vector<Bound> values_;
    std::vector<Bound> aims_;
    Literals core_;
    std::size_t mostLearnt_ = 4000;
    std::int64_t restarts_ = 0;
};

} // namespace suppertide::engine
