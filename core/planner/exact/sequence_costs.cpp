#include "core/planner/exact/sequence_costs.h"

#include <algorithm>
#include <utility>

#include "core/assign/closed_up.h"
#include "core/planner/exact/widened_claim.h"

namespace suppertide::exact {

namespace {

using engine::Trail;

/// Levels found, to a step of the engine. What they show saves more conflicts than they cost time;
/// this only keeps boxes of many stays from taking all of it.
constexpr std::int64_t workAStep = 3'000;

/// With nothing empty for longer than the oven remembers.
std::optional<OvenSequence> forgetful(std::optional<OvenSequence> sequence, std::int64_t forgets)
{
    if (sequence) {
        for (OvenStretch& stretch : sequence->box.stretches) {
            const bool isEmpty = stretch.low <= -SettingLevels::unbounded;
            stretch.most = isEmpty ? std::min(stretch.most, forgets) : stretch.most;
            stretch.least = std::min(stretch.least, stretch.most);
        }
    }
    return sequence;
}

std::vector<std::size_t> ofKept(const std::vector<std::size_t>& positions, const FewerStays& fewer)
{
    std::vector<std::size_t> result;
    for (const std::size_t i : fewer.kept) {
        result.push_back(positions[i]);
    }
    return result;
}

} // namespace

SequenceCosts::SequenceCosts(std::shared_ptr<BoxCosts> costs,
                             const std::vector<PossibleStay>& stays)
    : costs_(std::move(costs)), stays_(stays)
{}

/// With times about which it can be told in which order they are.
std::vector<HeldStay> SequenceCosts::held(const std::vector<std::size_t>& positions,
                                          const StartDifferences& differences,
                                          const Trail& trail) const
{
    std::vector<HeldStay> result;
    const engine::Term& zero = stays_[positions.front()].from;
    for (const std::size_t i : positions) {
        const PossibleStay& stay = stays_[i];
        const auto middle = [&](const engine::Term& term) {
            return (std::int64_t{differences.least(trail, zero, term)} +
                    differences.most(trail, zero, term)) /
                   2;
        };
        const std::int64_t from = middle(stay.from);
        result.push_back({stay.stay, stay.from, stay.to});
        result.back().stay.during = interval(from, std::max(from + 1, middle(stay.to)));
    }
    return result;
}

/// Whether it is all known, or half as open as before.
bool SequenceCosts::isWorthALook(const std::vector<std::size_t>& positions,
                                 const OvenSequence& sequence)
{
    std::int64_t open = 0; // minutes
    for (const OvenStretch& stretch : sequence.box.stretches) {
        open += stretch.most - stretch.least;
    }
    std::int64_t& lastOpen = lastOpen_[positions];
    const bool isWorth = open == 0 || 2 * open <= lastOpen;
    if (isWorth || open > lastOpen) {
        lastOpen = open;
    }
    return isWorth;
}

std::optional<SequenceCosts::Found> SequenceCosts::least(const std::vector<std::size_t>& positions,
                                                         const StartDifferences& differences,
                                                         const Trail& trail, std::int64_t below,
                                                         std::int64_t steps)
{
    if (positions.empty()) {
        return std::nullopt;
    }
    const std::vector<HeldStay> stays = held(positions, differences, trail);
    const std::int64_t forgets = ovenForgets(costs_->oven());
    const auto possible = [&](const std::vector<HeldStay>& some) {
        return forgetful(possibleSequence(some, differences, trail), forgets);
    };
    std::optional<OvenSequence> sequence = possible(stays);
    if (!sequence || sequence->box.stretches.empty()) {
        return std::nullopt;
    }
    const bool mayLook = work_ <= workAStep * steps;
    const std::int64_t workBefore = costs_->work();
    const auto found = [&](std::int64_t cost, const FewerStays& fewer) {
        return Found{cost, ofKept(positions, fewer),
                     whySequence(fewer.sequence, differences, forgets)};
    };
    const auto widestOf = [&](const std::vector<HeldStay>& some) {
        auto result = possible(some);
        return result ? std::optional{widestBox(costs_->oven(), *result, differences, trail)}
                      : result;
    };
    std::optional<Found> result;
    // The order alone says most, and what follows from it goes furthest.
    FewerStays said = allStays(stays, *widestOf(stays));
    if (mayLook || costs_->known(said.sequence.box, below)) {
        const std::int64_t cost = costs_->least(said.sequence.box, below);
        if (cost >= below && mayLook) {
            said = fewestStays(*costs_, stays, widestOf, below);
        }
        result = found(cost, said);
    }
    said = allStays(stays, *std::move(sequence));
    const OvenBox& box = said.sequence.box;
    if ((!result || result->least < below) &&
        (costs_->known(box, below) || (isWorthALook(positions, said.sequence) && mayLook))) {
        const std::int64_t cost = costs_->least(box, below);
        if (cost >= below && mayLook) {
            // To leave stays out makes the claim speak of fewer, to keep them lets it be wider;
            // neither is better everywhere, so they take turns.
            if (claims_++ % 2 == 0) {
                said = fewestStays(*costs_, stays, possible, below);
            }
            widenBox(*costs_, said.sequence, differences, trail, below);
        }
        if (!result || cost > result->least) {
            result = found(cost, said);
        }
    }
    work_ += costs_->work() - workBefore;
    return result;
}

} // namespace suppertide::exact
