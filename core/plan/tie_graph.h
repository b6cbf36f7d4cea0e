// TieGraph: what the lags of a problem say about starts, as difference constraints between the
// tasks that are present: start(later) ≥ start(earlier) + gap. The arithmetic of laying out by
// hand; it knows no resources.
#pragma once

#include <optional>
#include <vector>

#include "core/problem/problem.h"

namespace suppertide {

struct Tie
{
    TaskIndex other;
    Minutes gap{0};

    friend bool operator==(const Tie&, const Tie&) = default;
};

using Starts = IndexedVector<TaskIndex, std::optional<PlanTime>>;

class TieGraph
{
public:
    /// The problem must outlive this.
    TieGraph(const Problem& problem, const IndexedVector<TaskIndex, bool>& present);

    [[nodiscard]] bool isPresent(TaskIndex task) const { return present_[task]; }
    /// Tasks that start at least `gap` after this one, and those after which it starts so.
    [[nodiscard]] const std::vector<Tie>& after(TaskIndex task) const { return after_[task]; }
    [[nodiscard]] const std::vector<Tie>& before(TaskIndex task) const { return before_[task]; }
    /// Earliest and latest start by the task's own window.
    [[nodiscard]] Interval window(TaskIndex task) const;

    /// Each present task as late (as early) as ties and windows allow, those in `fixed` where they
    /// are, whatever that breaks. Where ties contradict each other they are kept as far as can be.
    [[nodiscard]] Starts latestStarts(const Starts& fixed) const;
    [[nodiscard]] Starts earliestStarts(const Starts& fixed) const;

    /// `starts` with `moved` (set already) and with what is tied to them moved along, no further
    /// than needed. `pinned` ones stay, and so does what has reached the end of its window. Of what
    /// is tied, a task moves as those did that push it: later, or earlier.
    void follow(Starts& starts, const std::vector<TaskIndex>& moved, bool later,
                const IndexedVector<TaskIndex, bool>& pinned) const;

    /// The tasks that cannot move without each other: tied with no play.
    [[nodiscard]] std::vector<TaskIndex> rigidGroup(TaskIndex task) const;

private:
    void add(TaskIndex earlier, TaskIndex later, Minutes gap);

    const Problem& problem_;
    IndexedVector<TaskIndex, bool> present_;
    IndexedVector<TaskIndex, std::vector<Tie>> after_;
    IndexedVector<TaskIndex, std::vector<Tie>> before_;
};

} // namespace suppertide
