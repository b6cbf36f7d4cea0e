#include "core/planner/exact/widened_claim.h"

#include <algorithm>
#include <cstdlib>
#include <numeric>
#include <span>
#include <utility>

#include "core/assign/closed_up.h"
#include "core/assign/oven_box.h"

namespace suppertide::exact {

namespace {

using engine::Literals;
using engine::Term;
using engine::Trail;

/// Looks at a box, each of which takes about as long as a cheapest program.
constexpr int mostLooks = 16;

class Widening
{
public:
    Widening(BoxCosts& costs, OvenBox box, std::int64_t least, int looks)
        : costs_(costs), box_(std::move(box)), least_(least), looks_(looks)
    {}

    [[nodiscard]] const std::vector<OvenStretch>& stretches() const { return box_.stretches; }
    [[nodiscard]] bool holds()
    {
        if (const auto known = costs_.knownToCost(box_, least_)) {
            return *known;
        }
        --looks_;
        return costs_.least(box_, least_) >= least_;
    }
    /// To where one end of a length of a stretch may go.
    struct Step
    {
        std::size_t stretch = 0;
        bool isMost = false;
        std::int64_t furthest = 0;
    };
    /// All of them at once, if that can be shown; else half of them, and then the others.
    void widen(std::span<const Step> steps)
    {
        if (steps.empty() || looks_ <= 0) {
            return;
        }
        const std::vector<OvenStretch> before = box_.stretches;
        for (const Step& step : steps) {
            end(step) = step.furthest;
        }
        if (box_.stretches == before || holds()) {
            return;
        }
        box_.stretches = before;
        if (steps.size() == 1) {
            widenInPart(steps.front());
            return;
        }
        widen(steps.first(steps.size() / 2));
        widen(steps.subspan(steps.size() / 2));
    }

private:
    [[nodiscard]] std::int64_t& end(const Step& step)
    {
        OvenStretch& stretch = box_.stretches[step.stretch];
        return step.isMost ? stretch.most : stretch.least;
    }
    /// Not all the way: by steps that double, as far as they can be shown.
    void widenInPart(const Step& step)
    {
        std::int64_t good = end(step);
        const std::int64_t way = step.isMost ? 1 : -1;
        const std::int64_t open = std::abs(step.furthest - good);
        const std::int64_t from = good;
        for (std::int64_t far = 1; far < open && looks_ > 0; far *= 2) {
            end(step) = from + way * far;
            if (!holds()) {
                break;
            }
            good = end(step);
        }
        end(step) = good;
    }

    BoxCosts& costs_;
    OvenBox box_;
    std::int64_t least_;
    int looks_;
};

/// The empty ones first, as they matter least.
std::vector<Widening::Step> stepsOf(const Oven& oven, const OvenSequence& sequence,
                                    const StartDifferences& differences, const Trail& trail)
{
    const std::int64_t forgets = ovenForgets(oven);
    std::vector<std::size_t> byLength;
    for (std::size_t i = 0; i < sequence.ends.size(); ++i) {
        byLength.push_back(i);
    }
    const auto isEmpty = [](const OvenStretch& stretch) {
        return stretch.low <= -SettingLevels::unbounded;
    };
    std::ranges::stable_sort(byLength, {}, [&](std::size_t i) {
        const OvenStretch& stretch = sequence.box.stretches[i];
        return std::pair(!isEmpty(stretch), -stretch.least);
    });
    std::vector<Widening::Step> steps;
    for (const std::size_t i : byLength) {
        const auto& [from, to] = sequence.ends[i];
        if (from.variable == to.variable) {
            continue;
        }
        const OvenStretch& stretch = sequence.box.stretches[i];
        const std::int64_t most =
            std::min<std::int64_t>(differences.mostAlways(trail, from, to), forgets);
        const std::int64_t fewest = std::max<std::int64_t>(
            stretch.preferred.empty() ? 0 : 1, differences.leastAlways(trail, from, to));
        steps.push_back({i, true, std::max(stretch.most, most)});
        steps.push_back({i, false, std::min(stretch.least, fewest)});
    }
    return steps;
}

std::vector<std::size_t> everyPosition(const std::vector<HeldStay>& held)
{
    std::vector<std::size_t> result(held.size());
    std::iota(result.begin(), result.end(), std::size_t{0});
    return result;
}

} // namespace

OvenSequence widestBox(const Oven& oven, OvenSequence sequence, const StartDifferences& differences,
                       const Trail& trail)
{
    for (const Widening::Step& step : stepsOf(oven, sequence, differences, trail)) {
        OvenStretch& stretch = sequence.box.stretches[step.stretch];
        (step.isMost ? stretch.most : stretch.least) = step.furthest;
    }
    return sequence;
}

FewerStays fewestStays(BoxCosts& costs, const std::vector<HeldStay>& held,
                       const SequenceOf& sequenceOf, const StartDifferences& differences,
                       const Trail& trail, std::int64_t least)
{
    // Those that prefer nothing first, then the shorter ones, as they matter least.
    std::vector<std::size_t> byWeight = everyPosition(held);
    std::ranges::stable_sort(byWeight, {}, [&](std::size_t i) {
        return std::pair(held[i].stay.prefer.has_value(), held[i].stay.during.length());
    });
    FewerStays result{everyPosition(held),
                      widestBox(costs.oven(), *sequenceOf(held), differences, trail)};
    for (const std::size_t left : byWeight) {
        std::vector<std::size_t> kept = result.kept;
        std::erase(kept, left);
        std::vector<HeldStay> fewer; // in the order given, which tells ties apart
        for (const std::size_t i : kept) {
            fewer.push_back(held[i]);
        }
        auto sequence = fewer.empty() ? std::nullopt : sequenceOf(fewer);
        if (!sequence || sequence->box.stretches.empty()) {
            continue;
        }
        *sequence = widestBox(costs.oven(), *std::move(sequence), differences, trail);
        if (costs.least(sequence->box, least) >= least) {
            result = {std::move(kept), *std::move(sequence)};
        }
    }
    return result;
}

void widenBox(BoxCosts& costs, OvenSequence& sequence, const StartDifferences& differences,
              const Trail& trail, std::int64_t least, int looks)
{
    Widening widening(costs, sequence.box, least, looks);
    widening.widen(stepsOf(costs.oven(), sequence, differences, trail));
    sequence.box.stretches = widening.stretches();
}

WidenedClaim widenedClaim(BoxCosts& costs, const std::vector<HeldStay>& held,
                          const StartDifferences& differences, const Trail& trail,
                          std::int64_t least)
{
    const std::int64_t workBefore = costs.work();
    FewerStays said{everyPosition(held), sequenceOf(held)};
    if (said.sequence.box.stretches.empty() || costs.least(said.sequence.box, least) < least) {
        return {std::nullopt, {}, costs.work() - workBefore};
    }
    const OvenSequence widest = widestBox(costs.oven(), said.sequence, differences, trail);
    if (costs.least(widest.box, least) >= least) {
        const auto asHeld = [](const std::vector<HeldStay>& stays) {
            return std::optional{sequenceOf(stays)};
        };
        said = fewestStays(costs, held, asHeld, differences, trail, least);
    } else {
        widenBox(costs, said.sequence, differences, trail, least, mostLooks);
    }
    return {whySequence(said.sequence, differences, ovenForgets(costs.oven())),
            std::move(said.kept), costs.work() - workBefore};
}

} // namespace suppertide::exact
