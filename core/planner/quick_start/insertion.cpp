#include "core/planner/quick_start/insertion.h"

#include <algorithm>

namespace suppertide::quick_start {

namespace {

/// Trials without ejecting before a block counts as not fitting.
constexpr std::size_t mostTrials = 150;
constexpr std::size_t mostCheapTrials = 36;
/// Starts at which ejecting is tried.
constexpr std::size_t mostForced = 14;
/// How far beyond what is tied to it a block may be forced.
constexpr Minute beyondTies = 90;
constexpr std::int64_t anyPenalty = std::int64_t{1} << 50;

void shuffle(std::vector<Minute>& starts, Dice& dice)
{
    for (std::size_t i = starts.size(); i > 1; --i) {
        std::swap(starts[i - 1], starts[dice.below(i)]);
    }
}

} // namespace

std::optional<Proposal> Insertion::tryAt(BlockIndex block, Minute start, std::int64_t limit,
                                         bool withCost)
{
    budget_->spend(1);
    return placement_.tryAt(block, start, limit, withCost);
}

std::optional<Proposal> Insertion::latest(BlockIndex block)
{
    stopped_.clear();
    const StartRange range = placement_.range(block);
    Minute start = range.last;
    for (std::size_t trial = 0; start >= range.first && trial < mostTrials; ++trial) {
        if (auto proposal = tryAt(block, start, 0, false)) {
            return proposal;
        }
        stopped_.push_back(start);
        if (budget_->isOver() || placement_.blockage().down >= never) {
            break;
        }
        start -= placement_.blockage().down;
    }
    return std::nullopt;
}

/// Beginning or ending together with what is in an oven that the block could share.
void Insertion::addAligned(BlockIndex block, std::vector<Minute>& starts) const
{
    const Instance& instance = plan_->instance();
    for (const auto& bundle : instance.blocks[block].bundles) {
        const Hold& hold = instance.held[bundle.front()];
        const Minute begin = hold.from.block == block ? hold.from.offset : hold.to.offset;
        const Minute end = hold.to.block == block ? hold.to.offset : hold.from.offset;
        for (const std::size_t oven : hold.servants) {
            for (const Entry& entry : plan_->entries({ResourceKind::Oven, oven})) {
                const OvenStay& stay = instance.held[*entry.hold].stay;
                if (stay.acceptLow <= hold.stay.acceptHigh &&
                    hold.stay.acceptLow <= stay.acceptHigh) {
                    starts.insert(starts.end(), {entry.span.begin - begin, entry.span.end - end,
                                                 entry.span.begin - end, entry.span.end - begin});
                }
            }
        }
    }
}

/// Right before or after what a cook does anyway.
void Insertion::addAlignedWork(BlockIndex block, std::vector<Minute>& starts) const
{
    const Instance& instance = plan_->instance();
    for (const WorkIndex index : instance.blocks[block].work) {
        const Work& work = instance.work[index];
        for (const CookIndex cook : work.able) {
            for (const Entry& entry : plan_->entries({ResourceKind::Cook, cook.value()})) {
                starts.push_back(entry.span.begin - work.offset - work.duration);
                starts.push_back(entry.span.end - work.offset);
            }
        }
    }
}

std::vector<Minute> Insertion::worthTrying(BlockIndex block, const StartRange& range)
{
    const Instance& instance = plan_->instance();
    const Problem& problem = instance.problem();
    std::vector<Minute> aligned;
    addAligned(block, aligned);
    addAlignedWork(block, aligned);
    std::erase_if(aligned, [&](Minute start) { return start < range.first || start > range.last; });
    shuffle(aligned, *dice_);
    aligned.resize(std::min(aligned.size(), mostCheapTrials / 2));

    std::vector<Minute> starts{range.last, range.first};
    for (const BeforeStart& before : problem.costs.before) {
        const auto place = instance.placeOf(before.task);
        if (place && place->block == block) {
            starts.push_back(minuteOf(before.start) - place->offset);
        }
    }
    for (const Quiet& quiet : problem.costs.quiet) {
        Span during = spanOf(quiet.when);
        const auto place = quiet.before ? instance.placeOf(*quiet.before) : std::nullopt;
        if (place && plan_->start(place->block)) {
            const Minute before = *plan_->start(place->block) + place->offset;
            during = {before - quiet.minutes.count(), before};
        }
        for (const WorkIndex index : instance.blocks[block].work) {
            const Work& work = instance.work[index];
            starts.push_back(during.begin - work.offset - work.duration);
            starts.push_back(during.end - work.offset);
        }
    }
    starts.insert(starts.end(), aligned.begin(), aligned.end());
    for (int i = 0; i < 3 && !range.empty(); ++i) {
        starts.push_back(dice_->between(range.first, range.last));
    }
    std::erase_if(starts, [&](Minute start) { return start < range.first || start > range.last; });
    std::sort(starts.begin(), starts.end(), std::greater<>());
    starts.erase(std::unique(starts.begin(), starts.end()), starts.end());
    return starts;
}

std::optional<Proposal> Insertion::cheapest(BlockIndex block)
{
    stopped_.clear();
    const StartRange range = placement_.range(block);
    if (range.empty()) {
        return std::nullopt;
    }
    std::optional<Proposal> best;
    std::size_t trials = 0;
    Minute passed = range.last + 1; // starts from here on have been looked at
    for (Minute start : worthTrying(block, range)) {
        // One that is stopped moves on towards the next that fits.
        while (start < passed && start >= range.first && trials++ < mostCheapTrials) {
            passed = start;
            auto proposal = tryAt(block, start, 0, true);
            if (proposal) {
                if (!best || proposal->cost < best->cost) {
                    best = std::move(proposal);
                }
                break;
            }
            stopped_.push_back(start);
            if (placement_.blockage().down >= never) {
                break;
            }
            start -= placement_.blockage().down;
        }
        if (budget_->isOver()) {
            break;
        }
    }
    return best ? best : latest(block);
}

std::optional<Proposal> Insertion::somewhere(BlockIndex block)
{
    const StartRange range = placement_.range(block);
    for (int i = 0; i < 3 && !range.empty(); ++i) {
        if (auto proposal = tryAt(block, dice_->between(range.first, range.last), 0, false)) {
            return proposal;
        }
    }
    return std::nullopt;
}

std::optional<Proposal> Insertion::forced(BlockIndex block)
{
    const Block& model = plan_->instance().blocks[block];
    const StartRange range = placement_.range(block);
    std::vector<Minute> starts = stopped_;
    shuffle(starts, *dice_);
    starts.resize(std::min(starts.size(), mostForced / 2));
    const Minute first = std::max(model.bounds.est, std::min(range.first, range.last) - beyondTies);
    const Minute last = std::min(model.bounds.lst, std::max(range.first, range.last) + beyondTies);
    starts.push_back(model.bounds.lst);
    while (starts.size() < mostForced) {
        const std::size_t where = dice_->below(3);
        if (where == 0 && !range.empty()) {
            starts.push_back(dice_->between(range.first, range.last));
        } else if (where == 1) {
            starts.push_back(dice_->between(model.bounds.est, model.bounds.lst));
        } else {
            starts.push_back(dice_->between(std::min(first, last), std::max(first, last)));
        }
    }
    shuffle(starts, *dice_);
    std::optional<Proposal> best;
    for (const Minute start : starts) {
        if (start < model.bounds.est || start > model.bounds.lst) {
            continue;
        }
        const std::int64_t limit = best ? best->penalty - 1 : anyPenalty;
        if (auto proposal = tryAt(block, start, limit, false)) {
            best = std::move(proposal);
        }
        if (budget_->isOver()) {
            break;
        }
    }
    return best;
}

Insertion::Explained Insertion::explained(BlockIndex block)
{
    Explained result;
    std::vector<Blame>& reasons = result.reasons;
    const StartRange range = placement_.range(block);
    Minute start = range.last;
    for (std::size_t trial = 0; start >= range.first && trial < mostTrials; ++trial) {
        result.proposal = placement_.tryAt(block, start, 0, false);
        if (result.proposal) {
            break;
        }
        const auto& blame = placement_.blame();
        if (blame && std::find(reasons.begin(), reasons.end(), *blame) == reasons.end()) {
            reasons.push_back(*blame);
        }
        if (placement_.blockage().down >= never) {
            break;
        }
        start -= placement_.blockage().down;
    }
    return result;
}

} // namespace suppertide::quick_start
