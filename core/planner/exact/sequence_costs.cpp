#include "core/planner/exact/sequence_costs.h"

#include <algorithm>
#include <utility>

#include "core/assign/closed_up.h"

namespace suppertide::exact {

namespace {

using engine::Trail;

constexpr std::size_t mostRemembered = 20'000;
/// Levels found, to a step of the engine: about a fifth of its time.
constexpr std::int64_t workAStep = 20;

std::vector<std::int64_t> keyOf(const OvenSequence& sequence)
{
    std::vector<std::int64_t> key;
    for (const OvenStretch& stretch : sequence.box) {
        key.insert(key.end(), {stretch.low, stretch.high, stretch.off ? 1 : 0, stretch.least,
                               stretch.most, static_cast<std::int64_t>(stretch.preferred.size())});
        key.insert(key.end(), stretch.preferred.begin(), stretch.preferred.end());
    }
    return key;
}

} // namespace

SequenceCosts::SequenceCosts(const Oven& oven, const OvenProgramStyle& style,
                             const std::vector<PossibleStay>& stays)
    : oven_(oven), style_(style), stays_(stays)
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

std::optional<std::int64_t> SequenceCosts::costOf(const std::vector<std::size_t>& positions,
                                                  const OvenSequence& sequence, std::int64_t below,
                                                  std::int64_t steps)
{
    Known& known = known_[positions];
    if (known.below < below) { // all that was found goes for less only
        known.below = below;
        known.least.clear();
    }
    std::vector<std::int64_t> key = keyOf(sequence);
    if (const auto found = known.least.find(key); found != known.least.end()) {
        return found->second;
    }
    std::int64_t open = 0; // minutes
    for (const OvenStretch& stretch : sequence.box) {
        open += stretch.most - stretch.least;
    }
    const bool isWorthALook = open == 0 || 2 * open <= known.lastOpen;
    if (isWorthALook || open > known.lastOpen) {
        known.lastOpen = open;
    }
    if (!isWorthALook || work_ > workAStep * steps) {
        return std::nullopt;
    }
    if (known.least.size() >= mostRemembered) {
        known.least.clear();
    }
    const BoxCost cost = leastCostInBox(oven_, style_, sequence.box, known.below);
    work_ += cost.work;
    return known.least.emplace(std::move(key), cost.least).first->second;
}

std::optional<SequenceCosts::Found> SequenceCosts::least(const std::vector<std::size_t>& positions,
                                                         const StartDifferences& differences,
                                                         const Trail& trail, std::int64_t below,
                                                         std::int64_t steps)
{
    if (positions.empty()) {
        return std::nullopt;
    }
    auto sequence = possibleSequence(held(positions, differences, trail), differences, trail);
    if (!sequence || sequence->box.empty()) {
        return std::nullopt;
    }
    const std::int64_t forgets = ovenForgets(oven_);
    for (OvenStretch& stretch : sequence->box) {
        const bool isEmpty = stretch.low <= -SettingLevels::unbounded;
        stretch.most = isEmpty ? std::min(stretch.most, forgets) : stretch.most;
        stretch.least = std::min(stretch.least, stretch.most);
    }
    const auto cost = costOf(positions, *sequence, below, steps);
    if (!cost) {
        return std::nullopt;
    }
    return Found{*cost, whySequence(*sequence, differences, forgets)};
}

} // namespace suppertide::exact
