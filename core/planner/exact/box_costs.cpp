#include "core/planner/exact/box_costs.h"

#include <algorithm>
#include <cstddef>
#include <utility>

#include "core/assign/box_widening.h"

namespace suppertide::exact {

namespace {

constexpr std::size_t mostRemembered = 40'000;

/// All that the cost of a box follows from.
std::vector<std::int64_t> wordsOf(const OvenBox& box)
{
    std::vector<std::int64_t> words;
    words.reserve(1 + box.stretches.size() * 7 + box.spans.size() * 3);
    words.push_back(static_cast<std::int64_t>(box.stretches.size()));
    for (const OvenStretch& stretch : box.stretches) {
        words.insert(words.end(), {stretch.least, stretch.most, stretch.low, stretch.high,
                                   (stretch.off ? 1 : 0) + (stretch.goesOn ? 2 : 0),
                                   static_cast<std::int64_t>(stretch.preferred.size())});
        words.insert(words.end(), stretch.preferred.begin(), stretch.preferred.end());
    }
    for (const OvenSpan& span : box.spans) {
        words.insert(words.end(), {static_cast<std::int64_t>(span.first),
                                   static_cast<std::int64_t>(span.last), span.minutes});
    }
    return words;
}

} // namespace

/// Source: FNV-1a, by words (G. Fowler, L. C. Noll, K.-P. Vo).
std::size_t BoxCosts::HashOfWords::operator()(const std::vector<std::int64_t>& words) const
{
    std::uint64_t hash = 14'695'981'039'346'656'037U;
    for (const std::int64_t word : words) {
        hash = (hash ^ static_cast<std::uint64_t>(word)) * 1'099'511'628'211U;
        hash ^= hash >> 32U;
    }
    return hash;
}

std::optional<std::int64_t> BoxCosts::known(const OvenBox& box, std::int64_t below) const
{
    return knownOf(wordsOf(box), below, BoxLook::Brief);
}

std::optional<std::int64_t> BoxCosts::knownOf(const std::vector<std::int64_t>& words,
                                              std::int64_t below, BoxLook look) const
{
    const auto found = known_.find(words);
    if (found == known_.end()) {
        return std::nullopt;
    }
    const Known& cost = found->second;
    const bool isClose = look == BoxLook::Brief || cost.look == BoxLook::Close;
    const bool isEnough = isClose && (below <= cost.below || cost.least < cost.below);
    return isEnough ? std::optional{std::min(below, cost.least)} : std::nullopt;
}

std::int64_t BoxCosts::least(const OvenBox& box, std::int64_t below, BoxLook look)
{
    std::vector<std::int64_t> words = wordsOf(box);
    if (const auto found = knownOf(words, below, look)) {
        return *found;
    }
    if (known_.size() >= mostRemembered) {
        known_.clear();
    }
    const BoxCost cost = leastCostInBox(oven_, style_, box, below, look);
    work_ += cost.work;
    known_[std::move(words)] = {below, cost.least, look};
    return cost.least;
}

/// One gap after the other, as far as it can be on both sides, or on one: such looks take long, and
/// what is in is mostly as long as it always is.
OvenBox BoxCosts::withWiderGaps(OvenBox box, const std::vector<StretchLengths>& open,
                                std::int64_t enough)
{
    for (std::size_t i = 0; i < box.stretches.size(); ++i) {
        OvenStretch& stretch = box.stretches[i];
        const StretchLengths own{stretch.least, stretch.most};
        for (const StretchLengths& wider : {open[i], StretchLengths{own.least, open[i].most},
                                            StretchLengths{open[i].least, own.most}}) {
            if (stretch.holds() || wider == own) {
                continue;
            }
            stretch.least = wider.least;
            stretch.most = wider.most;
            if (least(box, enough, BoxLook::Close) >= enough) {
                break;
            }
            stretch.least = own.least;
            stretch.most = own.most;
        }
    }
    return box;
}

OvenBox BoxCosts::widened(const OvenBox& box, const std::vector<StretchLengths>& open,
                          std::int64_t least)
{
    if (style_.countsSwitching()) {
        return withWiderGaps(box, open, least);
    }
    WidenedBox found = widenedBox(oven_, style_, box, open, least);
    work_ += found.work;
    return std::move(found.box);
}

} // namespace suppertide::exact
