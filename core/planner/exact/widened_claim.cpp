#include "core/planner/exact/widened_claim.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "core/assign/closed_up.h"
#include "core/assign/oven_box.h"

namespace suppertide::exact {

namespace {

using engine::Literals;
using engine::Term;
using engine::Trail;

/// How long each stretch can be, whatever is decided; what is empty, no longer than the oven
/// forgets.
std::vector<StretchLengths> lengthsAlways(const Oven& oven, const OvenSequence& sequence,
                                          const StartDifferences& differences, const Trail& trail)
{
    const std::int64_t forgets = ovenForgets(oven);
    std::vector<StretchLengths> result;
    for (std::size_t i = 0; i < sequence.ends.size(); ++i) {
        const OvenStretch& stretch = sequence.box.stretches[i];
        StretchLengths lengths{stretch.least, stretch.most};
        const auto& [from, to] = sequence.ends[i];
        if (from.variable != to.variable) {
            const std::int64_t most =
                std::min<std::int64_t>(differences.mostAlways(trail, from, to), forgets);
            const std::int64_t fewest = std::max<std::int64_t>(
                stretch.preferred.empty() ? 0 : 1, differences.leastAlways(trail, from, to));
            lengths = {std::min(lengths.least, fewest), std::max(lengths.most, most)};
        }
        result.push_back(lengths);
    }
    return result;
}

} // namespace

OvenSequence widestBox(const Oven& oven, OvenSequence sequence, const StartDifferences& differences,
                       const Trail& trail)
{
    const std::vector<StretchLengths> open = lengthsAlways(oven, sequence, differences, trail);
    for (std::size_t i = 0; i < open.size(); ++i) {
        sequence.box.stretches[i].least = open[i].least;
        sequence.box.stretches[i].most = open[i].most;
    }
    return sequence;
}

FewerStays allStays(const std::vector<HeldStay>& held, OvenSequence sequence)
{
    FewerStays result{std::vector<std::size_t>(held.size()), std::move(sequence)};
    std::iota(result.kept.begin(), result.kept.end(), std::size_t{0});
    return result;
}

FewerStays fewestStays(BoxCosts& costs, const std::vector<HeldStay>& held,
                       const SequenceOf& sequenceOf, std::int64_t least, BoxLook look)
{
    FewerStays result = allStays(held, *sequenceOf(held));
    // Those that prefer nothing first, then the shorter ones, as they matter least.
    std::vector<std::size_t> byWeight = result.kept;
    std::ranges::stable_sort(byWeight, {}, [&](std::size_t i) {
        return std::pair(held[i].stay.prefer.has_value(), held[i].stay.during.length());
    });
    for (const std::size_t left : byWeight) {
        std::vector<std::size_t> kept = result.kept;
        std::erase(kept, left);
        std::vector<HeldStay> fewer; // in the order given, which tells ties apart
        fewer.reserve(kept.size());
        for (const std::size_t i : kept) {
            fewer.push_back(held[i]);
        }
        auto sequence = fewer.empty() ? std::nullopt : sequenceOf(fewer);
        if (sequence && !sequence->box.stretches.empty() &&
            costs.least(sequence->box, least, look) >= least) {
            result = {std::move(kept), *std::move(sequence)};
        }
    }
    return result;
}

void widenBox(BoxCosts& costs, OvenSequence& sequence, const StartDifferences& differences,
              const Trail& trail, std::int64_t least)
{
    sequence.box = costs.widened(sequence.box,
                                 lengthsAlways(costs.oven(), sequence, differences, trail), least);
}

WidenedClaim widenedClaim(BoxCosts& costs, const std::vector<HeldStay>& held,
                          const StartDifferences& differences, const Trail& trail,
                          std::int64_t least)
{
    const std::int64_t workBefore = costs.work();
    FewerStays said = allStays(held, sequenceOf(held));
    // That they cost so much has been found, so it is likely that a close look shows it too.
    if (said.sequence.box.stretches.empty() ||
        costs.least(said.sequence.box, least, BoxLook::Close) < least) {
        return {std::nullopt, {}, costs.work() - workBefore};
    }
    const OvenSequence widest = widestBox(costs.oven(), said.sequence, differences, trail);
    if (costs.least(widest.box, least, BoxLook::Close) >= least) {
        const auto widestOf = [&](const std::vector<HeldStay>& stays) {
            return std::optional{widestBox(costs.oven(), sequenceOf(stays), differences, trail)};
        };
        said = fewestStays(costs, held, widestOf, least, BoxLook::Close);
    } else {
        widenBox(costs, said.sequence, differences, trail, least);
    }
    return {whySequence(said.sequence, differences, ovenForgets(costs.oven())),
            std::move(said.kept), costs.work() - workBefore};
}

} // namespace suppertide::exact
