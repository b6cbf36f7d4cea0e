#include "core/planner/exact/widened_claim.h"

#include <algorithm>
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
    Widening(const Oven& oven, const OvenProgramStyle& style, std::vector<OvenStretch> box,
             std::int64_t least)
        : oven_(oven), style_(style), box_(std::move(box)), least_(least)
    {}

    [[nodiscard]] std::int64_t work() const { return work_; }

    [[nodiscard]] const std::vector<OvenStretch>& box() const { return box_; }
    [[nodiscard]] bool holds()
    {
        ++looks_;
        const BoxCost cost = leastCostInBox(oven_, style_, box_, least_);
        work_ += cost.work;
        return cost.least >= least_;
    }
    /// As long as may be, or as much longer as still can be shown.
    void lengthen(std::size_t i, std::int64_t most) { widen(box_[i].most, most); }
    void shorten(std::size_t i, std::int64_t least) { widen(box_[i].least, least); }

private:
    /// All the way, else by steps that halve.
    void widen(std::int64_t& end, std::int64_t furthest)
    {
        std::int64_t good = end;
        std::int64_t next = furthest;
        while (good != furthest && next != good && looks_ < mostLooks) {
            end = next;
            if (holds()) {
                good = next;
                break;
            }
            next = good + (next - good) / 2;
        }
        end = good;
    }

    const Oven& oven_;
    OvenProgramStyle style_;
    std::vector<OvenStretch> box_;
    std::int64_t least_;
    int looks_ = 0;
    std::int64_t work_ = 0;
};

} // namespace

WidenedClaim widenedClaim(const Oven& oven, const OvenProgramStyle& style,
                          const std::vector<HeldStay>& held, const StartDifferences& differences,
                          const Trail& trail, std::int64_t least)
{
    OvenSequence sequence = sequenceOf(held);
    const std::vector<OvenSequence::Ends>& ends = sequence.ends;
    Widening widening(oven, style, sequence.box, least);
    if (sequence.box.empty() || !widening.holds()) {
        return {std::nullopt, widening.work()};
    }
    const std::int64_t forgets = ovenForgets(oven);
    std::vector<std::size_t> byLength; // the empty ones first, as they matter least
    for (std::size_t i = 0; i < ends.size(); ++i) {
        byLength.push_back(i);
    }
    std::ranges::stable_sort(byLength, {}, [&](std::size_t i) {
        const OvenStretch& stretch = widening.box()[i];
        return std::pair(stretch.low > -SettingLevels::unbounded, -stretch.least);
    });
    for (const std::size_t i : byLength) {
        const auto& [from, to] = ends[i];
        if (from.variable == to.variable) {
            continue;
        }
        const std::int64_t most = differences.most(trail, from, to);
        const bool isEmpty = widening.box()[i].low <= -SettingLevels::unbounded;
        const std::int64_t fewest =
            std::max<std::int64_t>(isEmpty ? 0 : 1, differences.least(trail, from, to));
        widening.lengthen(i, std::max(widening.box()[i].most, std::min(most, forgets)));
        widening.shorten(i, std::min(widening.box()[i].least, fewest));
    }
    sequence.box = widening.box();
    for (std::size_t i = 0; i < ends.size(); ++i) { // what is as long as it can ever be
        if (sequence.box[i].most >= differences.most(trail, ends[i].first, ends[i].second)) {
            sequence.box[i].most = std::max(sequence.box[i].most, forgets);
        }
    }
    return {whySequence(sequence, differences, forgets), widening.work()};
}

} // namespace suppertide::exact
