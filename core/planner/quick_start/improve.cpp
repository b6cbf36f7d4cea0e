// The second half of QuickStart: large neighbourhood search. Some blocks are taken out and placed
// anew where they cost least; a worse plan is kept now and then, less and less readily.
// Source: P. Shaw, Using constraint programming and local search methods to solve vehicle routing
// problems, CP 1998; S. Kirkpatrick, C. Gelatt, M. Vecchi, Optimization by simulated annealing,
// Science 220 (1983).
#include <algorithm>
#include <cmath>
#include <utility>

#include "core/planner/quick_start/quick_start.h"

namespace suppertide::quick_start {

namespace {

constexpr std::size_t cycle = 600; // tries until the search goes back to the best plan
constexpr std::size_t neighbourEjections = 12;
constexpr std::size_t mostTaken = 10;

using Blocks = std::vector<BlockIndex>;

void addOnce(Blocks& blocks, BlockIndex block)
{
    if (blocks.size() < mostTaken &&
        std::find(blocks.begin(), blocks.end(), block) == blocks.end()) {
        blocks.push_back(block);
    }
}

BlockIndex anyBlock(const Instance& instance, Dice& dice)
{
    return BlockIndex{dice.below(instance.blocks.size())};
}

/// One block and some of those that lags tie to it.
Blocks tiedBlocks(const PartialPlan& plan, Dice& dice)
{
    const Instance& instance = plan.instance();
    Blocks result;
    const BlockIndex first = anyBlock(instance, dice);
    addOnce(result, first);
    for (const Tie& tie : instance.blocks[first].ties) {
        if (dice.percent(70)) {
            addOnce(result, tie.other);
        }
    }
    return result;
}

/// Blocks that start at about the same time.
Blocks blocksNear(const PartialPlan& plan, Dice& dice)
{
    const Instance& instance = plan.instance();
    const Minute centre = *plan.start(anyBlock(instance, dice));
    const Minute reach = dice.between(10, 120);
    Blocks near;
    for (const BlockIndex block : instance.blocks.indices()) {
        if (std::abs(*plan.start(block) - centre) <= reach) {
            near.push_back(block);
        }
    }
    Blocks result;
    while (!near.empty() && result.size() < mostTaken) {
        const std::size_t drawn = dice.below(near.size());
        addOnce(result, near[drawn]);
        near[drawn] = near.back();
        near.pop_back();
    }
    return result;
}

/// What is in the ovens at about the same time.
Blocks blocksInOvens(const PartialPlan& plan, Dice& dice)
{
    const Instance& instance = plan.instance();
    std::vector<const Entry*> entries;
    for (const OvenIndex oven : instance.problem().ovens.indices()) {
        for (const Entry& entry : plan.entries({ResourceKind::Oven, oven.value()})) {
            entries.push_back(&entry);
        }
    }
    Blocks result;
    if (entries.empty()) {
        return result;
    }
    const Minute centre = entries[dice.below(entries.size())]->span.begin;
    const Minute reach = dice.between(30, 240);
    for (const Entry* entry : entries) {
        if (std::abs(entry->span.begin - centre) <= reach && dice.percent(60)) {
            addOnce(result, entry->from);
            addOnce(result, entry->to);
        }
    }
    return result;
}

Blocks anyBlocks(const PartialPlan& plan, Dice& dice)
{
    Blocks result;
    for (std::size_t i = 1 + dice.below(4); i > 0; --i) {
        addOnce(result, anyBlock(plan.instance(), dice));
    }
    return result;
}

Blocks taken(const PartialPlan& plan, Dice& dice)
{
    switch (dice.below(4)) {
    case 0:
        return tiedBlocks(plan, dice);
    case 1:
        return blocksNear(plan, dice);
    case 2:
        return blocksInOvens(plan, dice);
    default:
        return anyBlocks(plan, dice);
    }
}

} // namespace

std::optional<QuickStart::Draft> QuickStart::withOtherOption(const Draft& current)
{
    // Where two dishes want one oven, neither may be done otherwise alone.
    constexpr std::uint64_t twoPercent = 40;
    auto draft = begun(otherOptions(current, dice_.percent(twoPercent) ? 2 : 1));
    if (draft) {
        draft->plan = carriedOver(current.plan, *draft->instance);
    }
    return draft;
}

std::optional<QuickStart::Draft> QuickStart::neighbour(const Draft& current)
{
    constexpr std::uint64_t otherOptionPercent = 10;
    std::optional<Draft> draft;
    if (!problem_->choices.empty() && dice_.percent(otherOptionPercent)) {
        draft = withOtherOption(current);
    } else {
        draft = current;
        for (const BlockIndex block : taken(current.plan, dice_)) {
            draft->plan.unplace(block);
        }
    }
    if (!draft || !settle(*draft, neighbourEjections, true)) {
        return std::nullopt;
    }
    return draft;
}

void QuickStart::improve(Draft current)
{
    if (current.instance->blocks.empty()) {
        return;
    }
    weights_.assign(weights_.size(), 0);
    Draft best = current;
    for (std::size_t round = 0; goesOn(); ++round) {
        if (round % cycle == 0) {
            current = best;
        }
        auto next = neighbour(current);
        if (!next) {
            continue;
        }
        const double left = 1.0 - static_cast<double>(round % cycle) / cycle;
        const double heat = 0.01 * static_cast<double>(best.cost) * left * left;
        const double drawn = (static_cast<double>(dice_.below(1'000'000)) + 1.0) / 1'000'000.0;
        const double slack = -heat * std::log(drawn);
        if (static_cast<double>(next->cost) > static_cast<double>(current.cost) + slack) {
            continue;
        }
        current = std::move(*next);
        if (current.cost < best.cost) {
            best = current;
            offer(best);
        }
    }
}

} // namespace suppertide::quick_start
