// PartialPlan: which blocks of an instance are placed, when, and with which cooks, units and ovens;
// and from that, what each resource is taken by. A hold of which only one end is placed is entered
// for as long as it must at least be, so that placing the other end only makes it longer.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/planner/quick_start/instance.h"

namespace suppertide::quick_start {

enum class ResourceKind
{
    Count,
    Unit,
    Oven,
    Cook
};

struct Resource
{
    ResourceKind kind = ResourceKind::Count;
    std::size_t index = 0;

    friend bool operator==(const Resource&, const Resource&) = default;
};

/// What takes a resource: a hold, or a piece of work of a cook's.
struct Entry
{
    Span span;
    std::int64_t amount = 0;
    std::optional<HoldIndex> hold; // absent: work
    WorkIndex work;
    BlockIndex from; // the blocks that it hangs on; the same for work
    BlockIndex to;
};

[[nodiscard]] Resource resourceOf(const Hold& hold, std::size_t servant);

struct Proposal
{
    BlockIndex block;
    Minute start = 0;
    std::vector<std::pair<WorkIndex, std::vector<CookIndex>>> cooks;
    std::vector<std::pair<HoldIndex, std::size_t>> servants; // of the holds that hold something
    std::vector<BlockIndex> ejected;                         // have to go first
    std::int64_t penalty = 0;                                // of those
    std::int64_t cost = 0;                                   // about what placing it here costs
};

class PartialPlan
{
public:
    /// The instance must outlive this.
    explicit PartialPlan(const Instance& instance);

    [[nodiscard]] const Instance& instance() const { return *instance_; }
    [[nodiscard]] bool isPlaced(BlockIndex block) const { return starts_[block].has_value(); }
    [[nodiscard]] const std::optional<Minute>& start(BlockIndex block) const
    {
        return starts_[block];
    }
    [[nodiscard]] std::size_t placedCount() const { return placed_; }
    [[nodiscard]] const std::vector<Entry>& entries(const Resource& resource) const
    {
        return lists_[static_cast<std::size_t>(resource.kind)][resource.index];
    }
    [[nodiscard]] std::optional<std::size_t> servant(HoldIndex hold) const
    {
        return servants_[hold];
    }
    [[nodiscard]] const std::vector<CookIndex>& cooks(WorkIndex work) const { return cooks_[work]; }

    /// From when to when a hold is held if its blocks start then; an absent one is not placed.
    [[nodiscard]] Span spanOf(const Hold& hold, const std::optional<Minute>& from,
                              const std::optional<Minute>& to) const;

    /// What the proposal ejects is unplaced before.
    void place(const Proposal& proposal);
    void unplace(BlockIndex block);
    /// How a placed block is placed, to place it so again.
    [[nodiscard]] Proposal proposalOf(BlockIndex block) const;

private:
    std::vector<Entry>& list(const Resource& resource)
    {
        return lists_[static_cast<std::size_t>(resource.kind)][resource.index];
    }
    void remove(const Resource& resource, const Entry& entry);
    void enterHold(HoldIndex index);
    void leaveHold(HoldIndex index);
    void forEachHold(BlockIndex block, void (PartialPlan::*act)(HoldIndex));

    const Instance* instance_;
    IndexedVector<BlockIndex, std::optional<Minute>> starts_;
    IndexedVector<WorkIndex, std::vector<CookIndex>> cooks_;
    IndexedVector<HoldIndex, std::optional<std::size_t>> servants_;
    std::array<std::vector<std::vector<Entry>>, 4> lists_; // by kind and index of the resource
    std::size_t placed_ = 0;
};

} // namespace suppertide::quick_start
