#include "core/planner/quick_start/passes.h"

#include <algorithm>

namespace suppertide::quick_start {

namespace {

/// Blocks moved at random after an ejection, so that the same ones do not go round in a ring.
constexpr std::size_t shaken = 8;
constexpr std::size_t ejectionsBeforeShaking = 8;

} // namespace

Pass::Pass(PartialPlan& plan, Penalties& penalties, Dice& dice, Budget& budget)
    : plan_(&plan), penalties_(&penalties), dice_(&dice), budget_(&budget),
      insertion_(plan, penalties, dice, budget)
{}

/// The one that must be latest comes out first.
void Pass::stack()
{
    const Instance& instance = plan_->instance();
    for (const BlockIndex block : instance.blocks.indices()) {
        if (!plan_->isPlaced(block)) {
            waiting_.push_back(block);
        }
    }
    std::vector<std::pair<Minute, BlockIndex>> order;
    order.reserve(waiting_.size());
    for (const BlockIndex block : waiting_) {
        const StartBounds& bounds = instance.blocks[block].bounds;
        order.emplace_back(bounds.est == bounds.lst ? never : bounds.lst, block);
    }
    std::stable_sort(order.begin(), order.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    for (std::size_t i = 0; i < order.size(); ++i) {
        waiting_[i] = order[i].second;
    }
}

bool Pass::settle(BlockIndex block, bool cheap)
{
    if (auto proposal = cheap ? insertion_.cheapest(block) : insertion_.latest(block)) {
        plan_->place(*proposal);
        return true;
    }
    ++(*penalties_)[block];
    const auto proposal = insertion_.forced(block);
    if (!proposal) {
        return false;
    }
    plan_->place(*proposal);
    waiting_.insert(waiting_.end(), proposal->ejected.begin(), proposal->ejected.end());
    ejections_ += proposal->ejected.size();
    return true;
}

void Pass::shake()
{
    const Instance& instance = plan_->instance();
    for (std::size_t i = 0; i < shaken; ++i) {
        const BlockIndex block{dice_->below(instance.blocks.size())};
        const StartBounds& bounds = instance.blocks[block].bounds;
        if (!plan_->isPlaced(block) || bounds.est == bounds.lst) {
            continue;
        }
        const Proposal before = plan_->proposalOf(block);
        plan_->unplace(block);
        const auto moved = insertion_.somewhere(block);
        plan_->place(moved ? *moved : before);
    }
}

bool Pass::run(std::size_t mostEjections, bool cheap)
{
    stack();
    if (cheap) { // what is placed first has the first choice
        const std::size_t drawn = dice_->below(waiting_.size() + 1);
        for (std::size_t i = waiting_.size(); i > waiting_.size() - drawn; --i) {
            std::swap(waiting_[i - 1], waiting_[dice_->below(i)]);
        }
    }
    ejections_ = 0;
    std::size_t stuck = 0;
    while (!waiting_.empty()) {
        if (budget_->isOver() || ejections_ > mostEjections || stuck > waiting_.size()) {
            return false;
        }
        const BlockIndex block = waiting_.back();
        waiting_.pop_back();
        const std::size_t before = ejections_;
        if (!settle(block, cheap)) {
            waiting_.insert(waiting_.begin(), block);
            ++stuck;
            continue;
        }
        stuck = 0;
        if (ejections_ > before && ejections_ > ejectionsBeforeShaking) {
            shake();
        }
    }
    return true;
}

} // namespace suppertide::quick_start
