#include "core/planner/exact/sequence_costs.h"

#include <utility>

#include "core/assign/closed_up.h"

namespace suppertide::exact {

namespace {

using engine::Trail;

/// Levels found, to a step of the engine. What they show saves more conflicts than they cost time;
/// this only keeps boxes of many stays from taking all of it.
constexpr std::int64_t workAStep = 3'000;
/// Sets of stays.
constexpr std::size_t mostRemembered = 2'000;

/// Whether it is all known, or half as open as before.
bool isWorthALook(const OvenSequence& sequence, std::int64_t& lastOpen)
{
    std::int64_t open = 0; // minutes
    for (const OvenStretch& stretch : sequence.box.stretches) {
        open += stretch.most - stretch.least;
    }
    const bool isWorth = open == 0 || 2 * open <= lastOpen;
    if (isWorth || open > lastOpen) {
        lastOpen = open;
    }
    return isWorth;
}

} // namespace

SequenceCosts::SequenceCosts(std::shared_ptr<BoxCosts> costs,
                             const std::vector<PossibleStay>& stays)
    : costs_(std::move(costs)), stays_(stays), forgets_(ovenForgets(costs_->oven()))
{}

SequenceCosts::Memory& SequenceCosts::memoryOf(const std::vector<std::size_t>& positions)
{
    const auto known = memories_.find(positions);
    if (known != memories_.end()) {
        return known->second;
    }
    if (memories_.size() >= mostRemembered) {
        memories_.clear();
    }
    std::vector<HeldStay> held;
    held.reserve(positions.size());
    for (const std::size_t i : positions) {
        held.push_back({stays_[i].stay, stays_[i].from, stays_[i].to});
    }
    Memory memory{SequenceReader(std::move(held), forgets_), {}, 0, {}, 0, 0};
    return memories_.emplace(positions, std::move(memory)).first->second;
}

SequenceCosts::Found SequenceCosts::foundOf(const std::vector<std::size_t>& positions,
                                            std::int64_t cost, const FewerStays& said,
                                            const StartDifferences& differences) const
{
    Found found{cost, {}, whySequence(said.sequence, differences, forgets_)};
    for (const std::size_t i : said.kept) {
        found.inside.push_back(positions[i]);
    }
    return found;
}

/// The order alone says most, and what follows from it goes furthest.
void SequenceCosts::lookAtOrder(const std::vector<std::size_t>& positions, Memory& memory,
                                const StartDifferences& differences, const Trail& trail,
                                std::int64_t below, bool mayLook)
{
    if (memory.byOrder && trail.holdsAll(memory.byOrder->because) &&
        (below <= memory.belowByOrder || memory.byOrder->least < memory.belowByOrder)) {
        return;
    }
    memory.byOrder.reset();
    const auto widest = [&](OvenSequence sequence) {
        return widestBox(costs_->oven(), std::move(sequence), differences, trail);
    };
    const std::vector<HeldStay>& stays = memory.reader.stays();
    FewerStays said = allStays(stays, widest(memory.reader.sequence()));
    if (!mayLook && !costs_->known(said.sequence.box, below)) {
        return;
    }
    const std::int64_t cost = costs_->least(said.sequence.box, below, BoxLook::Brief);
    if (cost >= below && mayLook) {
        const auto widestOf = [&](const std::vector<HeldStay>& some) {
            auto sequence = memory.reader.ofSome(some, differences, trail);
            return sequence ? std::optional{widest(*std::move(sequence))} : std::nullopt;
        };
        said = fewestStays(*costs_, stays, widestOf, below, BoxLook::Brief);
    }
    memory.byOrder = foundOf(positions, cost, said, differences);
    memory.byOrder->isNew = cost >= below && mayLook;
    memory.belowByOrder = below;
}

void SequenceCosts::lookAtLengths(const std::vector<std::size_t>& positions, Memory& memory,
                                  const StartDifferences& differences, const Trail& trail,
                                  std::int64_t below, bool mayLook)
{
    const OvenSequence& sequence = memory.reader.sequence();
    if (!costs_->known(sequence.box, below) &&
        (!isWorthALook(sequence, memory.lastOpen) || !mayLook)) {
        return;
    }
    const std::vector<HeldStay>& stays = memory.reader.stays();
    FewerStays said = allStays(stays, sequence);
    const std::int64_t cost = costs_->least(sequence.box, below, BoxLook::Brief);
    if (cost >= below && mayLook) {
        // To leave stays out makes the claim speak of fewer, to keep them lets it be wider;
        // neither is better everywhere, so they take turns.
        if (claims_++ % 2 == 0) {
            const auto possible = [&](const std::vector<HeldStay>& some) {
                return memory.reader.ofSome(some, differences, trail);
            };
            said = fewestStays(*costs_, stays, possible, below, BoxLook::Brief);
        }
        widenBox(*costs_, said.sequence, differences, trail, below);
    }
    if (!memory.found || cost > memory.found->least) {
        memory.found = foundOf(positions, cost, said, differences);
        memory.found->isNew = cost >= below && mayLook;
    }
}

const SequenceCosts::Found* SequenceCosts::least(const std::vector<std::size_t>& positions,
                                                 const StartDifferences& differences,
                                                 const Trail& trail, std::int64_t below,
                                                 std::int64_t steps)
{
    if (positions.empty()) {
        return nullptr;
    }
    Memory& memory = memoryOf(positions);
    const SequenceReader::Change change = memory.reader.read(differences, trail);
    if (change == SequenceReader::Change::Unsure ||
        memory.reader.sequence().box.stretches.empty()) {
        return nullptr;
    }
    const bool isAsBefore = change == SequenceReader::Change::None && memory.found &&
                            memory.below == below && trail.holdsAll(memory.found->because);
    if (isAsBefore) {
        memory.found->isNew = false;
    } else {
        if (memory.byOrder) {
            memory.byOrder->isNew = false;
        }
        const bool mayLook = work_ <= workAStep * steps;
        const std::int64_t workBefore = costs_->work();
        lookAtOrder(positions, memory, differences, trail, below, mayLook);
        memory.found = memory.byOrder;
        memory.below = below;
        if (!memory.found || memory.found->least < below) {
            lookAtLengths(positions, memory, differences, trail, below, mayLook);
        }
        work_ += costs_->work() - workBefore;
    }
    return memory.found ? &*memory.found : nullptr;
}

} // namespace suppertide::exact
