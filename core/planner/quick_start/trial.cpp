#include "core/planner/quick_start/trial.h"

namespace suppertide::quick_start {

void Trial::begin(BlockIndex block, Minute start, std::int64_t limit)
{
    undoTo(0);
    entered_.clear();
    block_ = block;
    start_ = start;
    limit_ = limit;
    penalty_ = 0;
    blockage = {};
    blame.reset();
}

Span Trial::spanOf(const Entry& entry) const
{
    if (!away_[entry.from] && !away_[entry.to]) {
        return entry.span;
    }
    return entry.hold ? spanOf(instance().held[*entry.hold]) : Span{};
}

Span Trial::spanWithout(const Entry& entry, bool from, bool to) const
{
    if (!entry.hold) {
        return {};
    }
    const Hold& hold = instance().held[*entry.hold];
    return plan_->spanOf(hold, from ? std::nullopt : startOf(hold.from.block),
                         to ? std::nullopt : startOf(hold.to.block));
}

bool Trial::eject(BlockIndex block)
{
    if (!isEjectable(block) || penalty_ + (*penalties_)[block] > limit_) {
        return false;
    }
    away_[block] = true;
    ejected_.push_back(block);
    penalty_ += (*penalties_)[block];
    return true;
}

void Trial::undoTo(std::size_t mark)
{
    while (ejected_.size() > mark) {
        away_[ejected_.back()] = false;
        penalty_ -= (*penalties_)[ejected_.back()];
        ejected_.pop_back();
    }
}

} // namespace suppertide::quick_start
