#include "core/planner/quick_start/partial_plan.h"

#include <algorithm>

#include "core/base/contracts.h"

namespace suppertide::quick_start {

Resource resourceOf(const Hold& hold, std::size_t servant)
{
    switch (hold.kind) {
    case HoldKind::Count:
        return {ResourceKind::Count, servant};
    case HoldKind::Pool:
        return {ResourceKind::Unit, servant};
    case HoldKind::Oven:
        return {ResourceKind::Oven, servant};
    }
    return {};
}

PartialPlan::PartialPlan(const Instance& instance)
    : instance_(&instance), starts_(instance.blocks.size()), cooks_(instance.work.size()),
      servants_(instance.held.size())
{
    const auto make = [&](ResourceKind kind, std::size_t size) {
        lists_[static_cast<std::size_t>(kind)].resize(size);
    };
    make(ResourceKind::Count, instance.problem().counts.size());
    make(ResourceKind::Unit, instance.unitCount);
    make(ResourceKind::Oven, instance.problem().ovens.size());
    make(ResourceKind::Cook, instance.problem().cooks.size());
}

Span PartialPlan::spanOf(const Hold& hold, const std::optional<Minute>& from,
                         const std::optional<Minute>& to) const
{
    if (from && to) {
        return {*from + hold.from.offset, *to + hold.to.offset};
    }
    if (from) {
        const Minute begin = *from + hold.from.offset;
        const Minute earliest = instance_->blocks[hold.to.block].bounds.est + hold.to.offset;
        return {begin, std::max(begin + hold.least, earliest)};
    }
    if (to) {
        const Minute end = *to + hold.to.offset;
        const Minute latest = instance_->blocks[hold.from.block].bounds.lst + hold.from.offset;
        return {std::min(end - hold.least, latest), end};
    }
    return {};
}

void PartialPlan::remove(const Resource& resource, const Entry& entry)
{
    std::vector<Entry>& entries = list(resource);
    const auto found = std::find_if(entries.begin(), entries.end(), [&](const Entry& other) {
        return other.hold == entry.hold && (entry.hold || other.work == entry.work);
    });
    ensures(found != entries.end(), "what is placed has its entries");
    *found = entries.back();
    entries.pop_back();
}

void PartialPlan::enterHold(HoldIndex index)
{
    const Hold& hold = instance_->held[index];
    if (!servants_[index]) {
        return;
    }
    Entry entry;
    entry.span = spanOf(hold, starts_[hold.from.block], starts_[hold.to.block]);
    if (entry.span.empty()) {
        servants_[index].reset();
        return;
    }
    entry.amount = hold.amount;
    entry.hold = index;
    entry.from = hold.from.block;
    entry.to = hold.to.block;
    list(resourceOf(hold, *servants_[index])).push_back(entry);
}

void PartialPlan::leaveHold(HoldIndex index)
{
    if (servants_[index]) {
        Entry entry;
        entry.hold = index;
        remove(resourceOf(instance_->held[index], *servants_[index]), entry);
    }
}

void PartialPlan::forEachHold(BlockIndex block, void (PartialPlan::*act)(HoldIndex))
{
    for (const HoldIndex hold : instance_->blocks[block].holds) {
        (this->*act)(hold);
    }
    for (const auto& bundle : instance_->blocks[block].bundles) {
        for (const HoldIndex hold : bundle) {
            (this->*act)(hold);
        }
    }
}

void PartialPlan::place(const Proposal& proposal)
{
    for (const BlockIndex block : proposal.ejected) {
        unplace(block);
    }
    const BlockIndex block = proposal.block;
    expects(!isPlaced(block), "a block is placed once");
    forEachHold(block, &PartialPlan::leaveHold);
    starts_[block] = proposal.start;
    ++placed_;
    for (const auto& [hold, servant] : proposal.servants) {
        servants_[hold] = servant;
    }
    forEachHold(block, &PartialPlan::enterHold);
    for (const auto& [work, cooks] : proposal.cooks) {
        cooks_[work] = cooks;
        const Work& item = instance_->work[work];
        Entry entry;
        entry.span.begin = proposal.start + item.offset;
        entry.span.end = entry.span.begin + item.duration;
        entry.amount = item.attention;
        entry.work = work;
        entry.from = block;
        entry.to = block;
        for (const CookIndex cook : cooks) {
            list({ResourceKind::Cook, cook.value()}).push_back(entry);
        }
    }
}

void PartialPlan::unplace(BlockIndex block)
{
    expects(isPlaced(block), "only what is placed can be unplaced");
    forEachHold(block, &PartialPlan::leaveHold);
    starts_[block].reset();
    --placed_;
    forEachHold(block, &PartialPlan::enterHold);
    for (const WorkIndex work : instance_->blocks[block].work) {
        Entry entry;
        entry.work = work;
        for (const CookIndex cook : cooks_[work]) {
            remove({ResourceKind::Cook, cook.value()}, entry);
        }
        cooks_[work].clear();
    }
}

Proposal PartialPlan::proposalOf(BlockIndex block) const
{
    expects(isPlaced(block), "only what is placed has a place");
    Proposal result;
    result.block = block;
    result.start = *starts_[block];
    for (const WorkIndex work : instance_->blocks[block].work) {
        result.cooks.emplace_back(work, cooks_[work]);
    }
    const auto add = [&](HoldIndex hold) {
        if (servants_[hold]) {
            result.servants.emplace_back(hold, *servants_[hold]);
        }
    };
    for (const HoldIndex hold : instance_->blocks[block].holds) {
        add(hold);
    }
    for (const auto& bundle : instance_->blocks[block].bundles) {
        for (const HoldIndex hold : bundle) {
            add(hold);
        }
    }
    return result;
}

} // namespace suppertide::quick_start
