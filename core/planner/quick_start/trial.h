// Trial: one block tried at one start. What stands in the way may be ejected, up to a penalty; what
// the block takes so far is entered beside the plan. Nothing of the plan changes. The checks of
// resource_profile.h, cook_roster.h and oven_calendar.h share it; placement.h drives them.
#pragma once

#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "core/planner/quick_start/partial_plan.h"

namespace suppertide::quick_start {

using Penalties = IndexedVector<BlockIndex, std::int64_t>;

/// Minutes by which the block must move for a failed check to come out differently; `never`: it
/// would not.
struct Blockage
{
    Minute down = never;
    Minute up = never;

    void allow(const Blockage& other)
    {
        down = std::min(down, other.down);
        up = std::min(up, other.up);
    }
};

/// The requirement that failed.
struct Blame
{
    enum class Kind
    {
        Tie,
        Hands,
        Hold
    };
    Kind kind = Kind::Tie;
    std::size_t index = 0; // of the work or hold

    friend bool operator==(const Blame&, const Blame&) = default;
};

class Trial
{
public:
    Trial(const PartialPlan& plan, const Penalties& penalties)
        : plan_(&plan), penalties_(&penalties), away_(plan.instance().blocks.size(), false)
    {}

    void begin(BlockIndex block, Minute start, std::int64_t limit);

    [[nodiscard]] const PartialPlan& plan() const { return *plan_; }
    [[nodiscard]] const Instance& instance() const { return plan_->instance(); }
    [[nodiscard]] const Block& block() const { return instance().blocks[block_]; }
    [[nodiscard]] BlockIndex index() const { return block_; }
    [[nodiscard]] Minute start() const { return start_; }
    [[nodiscard]] bool mayEject() const { return limit_ > 0; }

    /// When a block starts in this trial; absent: it is not there.
    [[nodiscard]] std::optional<Minute> startOf(BlockIndex block) const
    {
        if (block == block_) {
            return start_;
        }
        return away_[block] ? std::nullopt : plan_->start(block);
    }
    [[nodiscard]] Span spanOf(const Hold& hold) const
    {
        return plan_->spanOf(hold, startOf(hold.from.block), startOf(hold.to.block));
    }
    /// What is left of an entry.
    [[nodiscard]] Span spanOf(const Entry& entry) const;
    /// What would be left of it if these were gone too.
    [[nodiscard]] Span spanWithout(const Entry& entry, bool from, bool to) const;

    /// Ejects a block; false if that costs too much or cannot be.
    bool eject(BlockIndex block);
    /// Ejects what makes the entry end or shrink such that `isFine(span)`; the cheapest way.
    template <typename Fine>
    bool relieve(const Entry& entry, const Fine& isFine);
    /// The penalty of the cheapest way; absent if there is none.
    template <typename Fine>
    [[nodiscard]] std::optional<std::int64_t> reliefPenalty(const Entry& entry,
                                                            const Fine& isFine) const;

    [[nodiscard]] std::size_t mark() const { return ejected_.size(); }
    void undoTo(std::size_t mark);
    [[nodiscard]] const std::vector<BlockIndex>& ejected() const { return ejected_; }
    [[nodiscard]] std::int64_t penalty() const { return penalty_; }

    struct Entered
    {
        Resource resource;
        Entry entry;
    };
    void enter(const Resource& resource, const Entry& entry)
    {
        entered_.push_back({resource, entry});
    }
    void leaveLast(std::size_t count) { entered_.resize(entered_.size() - count); }

    /// Each entry of a resource of which something is left, with that; the block's own as well, but
    /// not what the plan has entered for holds that the block prolongs.
    template <typename Visit>
    void forEach(const Resource& resource, const Visit& visit) const
    {
        forEachDuring(resource, {-never, never}, visit);
    }
    /// Only those that overlap `during`. (What is left of an entry lies within what it was, so most
    /// are passed over at a glance.)
    template <typename Visit>
    void forEachDuring(const Resource& resource, const Span& during, const Visit& visit) const;

    Blockage blockage;
    std::optional<Blame> blame;

private:
    struct Way
    {
        bool from = false;
        bool to = false;
        std::int64_t penalty = 0;
    };
    template <typename Fine>
    [[nodiscard]] std::optional<Way> cheapestWay(const Entry& entry, const Fine& isFine) const;
    [[nodiscard]] bool isEjectable(BlockIndex block) const
    {
        return block != block_ && !away_[block] && plan_->isPlaced(block);
    }

    const PartialPlan* plan_;
    const Penalties* penalties_;
    BlockIndex block_;
    Minute start_ = 0;
    std::int64_t limit_ = 0;
    std::int64_t penalty_ = 0;
    IndexedVector<BlockIndex, char> away_;
    std::vector<BlockIndex> ejected_;
    std::vector<Entered> entered_;
};

template <typename Visit>
void Trial::forEachDuring(const Resource& resource, const Span& during, const Visit& visit) const
{
    for (const Entry& entry : plan_->entries(resource)) {
        if (!entry.span.overlaps(during) || entry.from == block_ || entry.to == block_) {
            continue;
        }
        const Span span = spanOf(entry);
        if (!span.empty() && span.overlaps(during)) {
            visit(entry, span);
        }
    }
    for (const Entered& own : entered_) {
        if (own.resource == resource) {
            const Span span = spanOf(own.entry);
            if (!span.empty() && span.overlaps(during)) {
                visit(own.entry, span);
            }
        }
    }
}

template <typename Fine>
std::optional<Trial::Way> Trial::cheapestWay(const Entry& entry, const Fine& isFine) const
{
    std::optional<Way> best;
    const auto offer = [&](bool from, bool to) {
        const std::int64_t penalty =
            (from ? (*penalties_)[entry.from] : 0) + (to ? (*penalties_)[entry.to] : 0);
        if ((!best || penalty < best->penalty) && isFine(spanWithout(entry, from, to))) {
            best = Way{from, to, penalty};
        }
    };
    const bool from = isEjectable(entry.from);
    const bool to = entry.to != entry.from && isEjectable(entry.to);
    if (from) {
        offer(true, entry.to == entry.from);
    }
    if (to) {
        offer(false, true);
    }
    if (from && to) {
        offer(true, true);
    }
    if (best && best->from && entry.to == entry.from) {
        best->to = false; // the same block; counted once
        best->penalty = (*penalties_)[entry.from];
    }
    return best;
}

template <typename Fine>
std::optional<std::int64_t> Trial::reliefPenalty(const Entry& entry, const Fine& isFine) const
{
    const auto way = cheapestWay(entry, isFine);
    return way ? std::optional{way->penalty} : std::nullopt;
}

template <typename Fine>
bool Trial::relieve(const Entry& entry, const Fine& isFine)
{
    const auto way = cheapestWay(entry, isFine);
    return way && (!way->from || eject(entry.from)) && (!way->to || eject(entry.to));
}

} // namespace suppertide::quick_start
