#include "core/planner/quick_start/placement.h"

#include <algorithm>
#include <cstdlib>

namespace suppertide::quick_start {

Placement::Placement(const PartialPlan& plan, const Penalties& penalties)
    : plan_(&plan), cooks_(plan.instance()), ovens_(plan.instance()), trial_(plan, penalties)
{}

StartRange Placement::range(BlockIndex index) const
{
    const Block& block = plan_->instance().blocks[index];
    StartRange result{block.bounds.est, block.bounds.lst};
    for (const Tie& tie : block.ties) {
        if (const auto& other = plan_->start(tie.other)) {
            result.first = std::max(result.first, *other - tie.atMost);
            result.last = std::min(result.last, *other - tie.atLeast);
        }
    }
    return result;
}

bool Placement::fail(Blame::Kind kind, std::size_t index)
{
    trial_.blame = Blame{kind, index};
    return false;
}

bool Placement::untie()
{
    for (const Tie& tie : trial_.block().ties) {
        const auto other = trial_.startOf(tie.other);
        if (!other) {
            continue;
        }
        const Minute gap = *other - trial_.start();
        if ((gap < tie.atLeast || gap > tie.atMost) && !trial_.eject(tie.other)) {
            return fail(Blame::Kind::Tie, tie.other.value());
        }
    }
    return true;
}

bool Placement::takeCooks(Proposal& proposal)
{
    for (const WorkIndex work : trial_.block().work) {
        CookRoster::Choice choice = cooks_.choose(trial_, work);
        if (choice.cooks.empty()) {
            return fail(Blame::Kind::Hands, work.value());
        }
        proposal.cost += choice.cost;
        proposal.cooks.emplace_back(work, std::move(choice.cooks));
    }
    for (const std::size_t seating : trial_.block().seatings) {
        if (const auto inTheWay = cooks_.seat(trial_, seating)) {
            return fail(Blame::Kind::Hands, inTheWay->value());
        }
    }
    return true;
}

std::optional<std::size_t> Placement::servantFor(const Hold& hold, const Need& need)
{
    const Problem& problem = plan_->instance().problem();
    const auto capacity = [&](std::size_t servant) {
        return hold.kind == HoldKind::Count ? problem.counts[CountIndex{servant}].capacity : 1;
    };
    std::optional<std::size_t> best;
    std::int64_t least = 0;
    const std::int64_t before = trial_.penalty();
    for (const std::size_t servant : hold.servants) {
        const std::size_t mark = trial_.mark();
        const bool found = makeRoom(trial_, resourceOf(hold, servant), need, capacity(servant));
        const std::int64_t penalty = trial_.penalty() - before;
        if (found && penalty == 0) {
            return servant;
        }
        if (found && (!best || penalty < least)) {
            best = servant;
            least = penalty;
        }
        trial_.undoTo(mark);
    }
    if (best && !makeRoom(trial_, resourceOf(hold, *best), need, capacity(*best))) {
        return std::nullopt;
    }
    return best;
}

bool Placement::takeHold(Proposal& proposal, HoldIndex index)
{
    const Hold& hold = plan_->instance().held[index];
    Need need;
    need.span = trial_.spanOf(hold);
    if (need.span.empty()) {
        return true;
    }
    const bool both = trial_.startOf(hold.from.block) && trial_.startOf(hold.to.block);
    need.amount = hold.amount;
    need.beginMoves = !both || hold.from.block == trial_.index();
    need.endMoves = !both || hold.to.block == trial_.index();
    const auto servant = servantFor(hold, need);
    if (!servant) {
        return fail(Blame::Kind::Hold, index.value());
    }
    Entry entry;
    entry.span = need.span;
    entry.amount = hold.amount;
    entry.hold = index;
    entry.from = hold.from.block;
    entry.to = hold.to.block;
    trial_.enter(resourceOf(hold, *servant), entry);
    proposal.servants.emplace_back(index, *servant);
    return true;
}

bool Placement::takeHolds(Proposal& proposal, bool withCost)
{
    for (const HoldIndex hold : trial_.block().holds) {
        if (!takeHold(proposal, hold)) {
            return false;
        }
    }
    for (const auto& bundle : trial_.block().bundles) {
        OvenCalendar::Choice choice = ovens_.choose(trial_, bundle, withCost);
        if (!choice.found) {
            return fail(Blame::Kind::Hold, bundle.front().value());
        }
        proposal.cost += choice.cost;
        proposal.servants.insert(proposal.servants.end(), choice.servants.begin(),
                                 choice.servants.end());
    }
    return true;
}

namespace {

/// Attention of all cooks that the block on trial takes meanwhile, in percent times minutes.
std::int64_t handsDuring(const Instance& instance, const Trial& trial, const Span& during)
{
    std::int64_t hands = 0;
    for (const WorkIndex index : trial.block().work) {
        const Work& work = instance.work[index];
        const Minute begin = trial.start() + work.offset;
        const Minute common =
            std::min(during.end, begin + work.duration) - std::max(during.begin, begin);
        hands +=
            work.attention * static_cast<std::int64_t>(work.cooks) * std::max<Minute>(0, common);
    }
    return hands;
}

} // namespace

/// Loss against what is placed, quiet times, closeness to the plan before.
std::int64_t Placement::ownCost() const
{
    const Instance& instance = plan_->instance();
    const Problem& problem = instance.problem();
    const auto startOf = [&](TaskIndex task) -> std::optional<Minute> {
        const auto place = instance.placeOf(task);
        const auto start = place ? trial_.startOf(place->block) : std::nullopt;
        return start ? std::optional{*start + place->offset} : std::nullopt;
    };
    const auto timeOf = [&](const TaskPoint& point) -> std::optional<Minute> {
        const auto start = startOf(point.task);
        const Minute length =
            point.edge == Edge::End ? problem.tasks[point.task].duration.count() : 0;
        return start ? std::optional{*start + length} : std::nullopt;
    };
    std::int64_t cost = 0;
    for (const LagIndex index : trial_.block().lossLags) {
        const Lag& lag = problem.lags[index];
        const auto from = timeOf(lag.from);
        const auto to = timeOf(lag.to);
        if (from && to) {
            cost += lag.loss * (*to - *from - lag.min->count());
        }
    }
    for (const Quiet& quiet : problem.costs.quiet) {
        Span during = spanOf(quiet.when);
        if (quiet.before) {
            const auto before = startOf(*quiet.before);
            if (!before) {
                continue;
            }
            during = {*before - quiet.minutes.count(), *before};
        }
        cost += quiet.rate * handsDuring(instance, trial_, during);
    }
    for (const BeforeStart& before : problem.costs.before) {
        const auto place = instance.placeOf(before.task);
        if (place && place->block == trial_.index()) {
            const Minute moved = std::abs(trial_.start() + place->offset - minuteOf(before.start));
            cost += moved > 0 ? problem.costs.beforeMoved + problem.costs.beforeRate * moved : 0;
        }
    }
    return cost;
}

std::optional<Proposal> Placement::tryAt(BlockIndex block, Minute start, std::int64_t limit,
                                         bool withCost)
{
    ++trials_;
    trial_.begin(block, start, limit);
    Proposal proposal;
    proposal.block = block;
    proposal.start = start;
    if (!untie() || !takeCooks(proposal) || !takeHolds(proposal, withCost)) {
        return std::nullopt;
    }
    proposal.ejected = trial_.ejected();
    proposal.penalty = trial_.penalty();
    proposal.cost = withCost ? proposal.cost + ownCost() : 0;
    return proposal;
}

} // namespace suppertide::quick_start
