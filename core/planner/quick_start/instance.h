// Instance: a problem with its options chosen, laid out for placing: tasks that are tied rigidly
// make one block; work takes cooks; a hold takes a count, a unit or an oven from a point of one
// block to a point of another. Immutable; partial_plan.h says what stands where.
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "core/assign/oven_pairs.h"
#include "core/planner/quick_start/difference_network.h"
#include "core/problem/problem.h"

namespace suppertide::quick_start {

using BlockIndex = StrongIndex<struct BlockIndexTag>;
using WorkIndex = StrongIndex<struct WorkIndexTag>;
using HoldIndex = StrongIndex<struct HoldIndexTag>;

/// Minutes begin ≤ m < end.
struct Span
{
    Minute begin = 0;
    Minute end = 0;

    [[nodiscard]] bool empty() const { return end <= begin; }
    [[nodiscard]] bool overlaps(const Span& other) const
    {
        return begin < other.end && other.begin < end;
    }
    [[nodiscard]] bool contains(const Span& other) const
    {
        return begin <= other.begin && other.end <= end;
    }
    friend bool operator==(const Span&, const Span&) = default;
};

[[nodiscard]] inline Span spanOf(const Interval& interval)
{
    return {minuteOf(interval.start), minuteOf(interval.end)};
}
[[nodiscard]] inline Interval intervalOf(const Span& span)
{
    return interval(span.begin, span.end);
}

/// start(other) − start(this block) lies in atLeast … atMost.
struct Tie
{
    BlockIndex other;
    Minute atLeast = -never;
    Minute atMost = never;
};

struct BlockTask
{
    TaskIndex task;
    Minute offset = 0; // after the block's start
};

struct Block
{
    std::vector<BlockTask> tasks;
    StartBounds bounds;
    std::vector<Tie> ties;
    std::vector<WorkIndex> work;
    std::vector<HoldIndex> holds; // counts and units that touch it
    /// Oven holds that touch it, those of one group together.
    std::vector<std::vector<HoldIndex>> bundles;
    std::vector<std::size_t> seatings; // positions in Instance::seatings
    std::vector<LagIndex> lossLags;    // that cost, and touch it
    std::optional<ChoiceIndex> choice; // one of those that its presence hangs on
};

struct Work
{
    TaskIndex task;
    BlockIndex block;
    Minute offset = 0;
    Minute duration = 0;
    int attention = 0;
    std::size_t cooks = 1;
    bool atTable = false;
    std::vector<CookIndex> able; // cooks with the skill, those with fewest skills first
};

struct BlockPoint
{
    BlockIndex block;
    Minute offset = 0; // after the block's start
};

enum class HoldKind
{
    Count,
    Pool,
    Oven
};

struct Hold
{
    HoldKind kind = HoldKind::Count;
    BlockPoint from;
    BlockPoint to;
    Minute least = 0; // it is at least this long, whenever its ends are
    std::int64_t amount = 1;
    std::optional<DemandIndex> demand;
    std::optional<OvenDemandIndex> ovenDemand;
    std::vector<std::size_t> servants; // the count; the units or ovens that may serve it
    OvenStay stay;                     // of oven demands, whenever it is
    std::optional<std::size_t> group;  // of oven demands: groups and modes are numbered through
    std::optional<std::size_t> mode;
};

/// A cook sits at table for some minutes from the start of an event.
struct Seating
{
    CookIndex cook;
    BlockPoint at;
    Minute minutes = 0;
};

struct TaskPlace
{
    BlockIndex block;
    Minute offset = 0;
};

class Instance
{
public:
    using Options = IndexedVector<ChoiceIndex, std::optional<OptionIndex>>;

    /// `options`: one for each choice. The problem must outlive this.
    Instance(const Problem& problem, Options options);

    /// Whether lags and windows alone can be kept; what follows is meaningful only then.
    [[nodiscard]] bool holds() const { return network_.holds(); }
    [[nodiscard]] const Problem& problem() const { return *problem_; }
    [[nodiscard]] const Options& options() const { return options_; }
    [[nodiscard]] const IndexedVector<TaskIndex, bool>& present() const { return present_; }
    [[nodiscard]] std::optional<TaskPlace> placeOf(TaskIndex task) const { return places_[task]; }
    /// Steps that making this has taken; one of the network's is worth far less than one that
    /// places a block.
    [[nodiscard]] std::int64_t cost() const { return network_.work() / 256 + 1; }

    IndexedVector<BlockIndex, Block> blocks;
    IndexedVector<WorkIndex, Work> work;
    IndexedVector<HoldIndex, Hold> held;
    std::vector<Seating> seatings;
    IndexedVector<CookIndex, std::vector<std::size_t>> seatingsOf;
    /// Units of all pools are numbered through; this is where each pool begins.
    IndexedVector<PoolIndex, std::size_t> firstUnit;
    std::size_t unitCount = 0;

private:
    void makeBlocks();
    void makeWork();
    void makeHolds();
    void makeOvenHolds();
    void makeBundles();
    void makeSeatings();
    void makeChoices();
    [[nodiscard]] bool bothPresent(const TaskPoint& from, const TaskPoint& to) const
    {
        return present_[from.task] && present_[to.task];
    }
    [[nodiscard]] BlockPoint pointOf(const TaskPoint& point) const;
    [[nodiscard]] Minute leastBetween(const TaskPoint& from, const TaskPoint& to) const;
    void addHold(Hold hold, const TaskPoint& from, const TaskPoint& to);

    const Problem* problem_;
    Options options_;
    IndexedVector<TaskIndex, bool> present_;
    DifferenceNetwork network_;
    IndexedVector<TaskIndex, std::optional<TaskPlace>> places_;
    struct Position
    {
        std::size_t group = 0;
        std::size_t at = 0;
    };
    IndexedVector<TaskIndex, Position> positions_; // in the network's tied tasks
};

} // namespace suppertide::quick_start
