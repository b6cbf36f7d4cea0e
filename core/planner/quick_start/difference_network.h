// DifferenceNetwork: what lags and windows say about starts alone. Each lag bound is an edge
// start(to) ≥ start(from) + least; the longest paths between all pairs of tasks that are tied say
// exactly which starts of some tasks leave starts for the rest.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/problem/problem.h"

namespace suppertide::quick_start {

using Minute = std::int64_t;

/// Far beyond any horizon, yet safe to add a few of.
inline constexpr Minute never = Minute{1} << 40;

struct StartBounds
{
    Minute est = 0; // earliest start
    Minute lst = 0; // latest start
};

/// Tasks that are tied to each other by lags, other than through tasks that cannot move.
struct TiedTasks
{
    std::vector<TaskIndex> tasks;
    std::vector<Minute> least; // by pairs: start(b) ≥ start(a) + least[a * size + b]; or −never

    [[nodiscard]] Minute between(std::size_t a, std::size_t b) const
    {
        return least[a * tasks.size() + b];
    }
};

class DifferenceNetwork
{
public:
    /// Of the present tasks, and the lags among them.
    DifferenceNetwork(const Problem& problem, const IndexedVector<TaskIndex, bool>& present);

    /// Whether some starts keep all lags and windows; what follows is meaningful only then.
    [[nodiscard]] bool holds() const { return holds_; }
    [[nodiscard]] const StartBounds& bounds(TaskIndex task) const { return bounds_[task]; }
    [[nodiscard]] const std::vector<TiedTasks>& tied() const { return tied_; }
    /// Edges followed, as a measure of the work done.
    [[nodiscard]] std::int64_t work() const { return work_; }

private:
    struct Edge
    {
        TaskIndex to;
        Minute least;
    };
    void addEdges(const Problem& problem);
    bool tighten(const Problem& problem);
    bool raiseEarliest();
    bool lowerLatest();
    void tie(const Problem& problem);
    void close(TiedTasks& group);

    IndexedVector<TaskIndex, bool> present_;
    IndexedVector<TaskIndex, std::vector<Edge>> after_;  // start(to) ≥ start(this) + least
    IndexedVector<TaskIndex, std::vector<Edge>> before_; // start(this) ≥ start(to) + least
    IndexedVector<TaskIndex, StartBounds> bounds_;
    std::vector<TiedTasks> tied_;
    bool holds_ = false;
    std::int64_t work_ = 0;
};

} // namespace suppertide::quick_start
