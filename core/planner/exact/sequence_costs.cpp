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
        auto result = possibleSequence(some, differences, trail);
        if (result) {
            for (OvenStretch& stretch : result->box.stretches) {
                const bool isEmpty = stretch.low <= -SettingLevels::unbounded;
                stretch.most = isEmpty ? std::min(stretch.most, forgets) : stretch.most;
                stretch.least = std::min(stretch.least, stretch.most);
            }
        }
        return result;
    };
    auto sequence = possible(stays);
    if (!sequence || sequence->box.stretches.empty()) {
        return std::nullopt;
    }
    const bool mayLook = work_ <= workAStep * steps;
    const std::int64_t workBefore = costs_->work();
    std::optional<Found> found;
    // The order alone says most, and what follows from it goes furthest.
    const OvenSequence widest = widestBox(costs_->oven(), *sequence, differences, trail);
    if (mayLook || costs_->known(widest.box, below)) {
        found = Found{costs_->least(widest.box, below), positions,
                      whySequence(widest, differences, forgets)};
        if (found->least >= below && mayLook) {
            const FewerStays fewer =
                fewestStays(*costs_, stays, possible, differences, trail, below);
            found->inside.clear();
            for (const std::size_t i : fewer.kept) {
                found->inside.push_back(positions[i]);
            }
            found->because = whySequence(fewer.sequence, differences, forgets);
        }
    }
    const bool isOpen = !found || found->least < below;
    if (isOpen &&
        (costs_->known(sequence->box, below) || (isWorthALook(positions, *sequence) && mayLook))) {
        const std::int64_t cost = costs_->least(sequence->box, below);
        if (cost >= below && mayLook) {
            widenBox(*costs_, *sequence, differences, trail, below);
        }
        if (!found || cost > found->least) {
            found = Found{cost, positions, whySequence(*sequence, differences, forgets)};
        }
    }
    work_ += costs_->work() - workBefore;
    return found;
}

} // namespace suppertide::exact
