#include "core/assign/reached_walk.h"

#include <algorithm>
#include <utility>

#include "core/assign/closed_up.h"

namespace suppertide {

namespace {

constexpr std::int64_t mostSteps = 8'000; // minutes

} // namespace

ReachedWalk::ReachedWalk(const Oven& oven, const ReachedLevels& reached, const SpanPlaces& places,
                         const OvenBox& box, const std::vector<StretchLengths>& open,
                         std::int64_t below)
    : oven_(&oven), reached_(&reached), places_(&places), below_(below),
      paths_(box.stretches.size() + 1)
{
    // The highest temperature that each moment may have for the sake of what follows.
    std::vector<std::int64_t> highs(box.stretches.size() + 1, SettingLevels::unbounded);
    for (std::size_t i = box.stretches.size(); i-- > 0;) {
        highs[i] =
            std::min(box.stretches[i].high, highs[i + 1] + oven.coolMilliCPerMin * open[i].most);
    }
    paths_.front().emplace(SpanPlaces::Lasted{}, whenCold());
    for (std::size_t i = 0; i < box.stretches.size() && isDone_; ++i) {
        isDone_ = through(i, box.stretches[i], highs[i + 1]);
    }
}

/// As the first stretch begins: the oven has been empty for as long as need be.
ReachedWalk::Row ReachedWalk::whenCold()
{
    const AskedOfMinute empty{
        -SettingLevels::unbounded, SettingLevels::unbounded, SettingLevels::unbounded, false, {}};
    Row row = reached_->atStart();
    for (std::int64_t left = ovenForgets(*oven_); left > 0 && isDone_; --left) {
        Row next = reached_->after(empty, row, below_);
        isDone_ = ++steps_ <= mostSteps && !next.levels.empty();
        if (next == row) {
            break;
        }
        row = std::move(next);
    }
    return row;
}

void ReachedWalk::add(Paths& paths, const SpanPlaces::Lasted& lasted, const Row& row) const
{
    const auto [best, isNew] = paths.try_emplace(lasted, row);
    if (!isNew) {
        reached_->takeBetter(best->second, row);
    }
}

bool ReachedWalk::through(std::size_t i, const OvenStretch& stretch, std::int64_t highAtEnd)
{
    const bool eachCounts = places_->goesForth(i);
    for (const auto& [lasted, row] : paths_[i]) {
        const StretchLengths lengths =
            places_->lengthsForth(i, lasted, {stretch.least, stretch.most});
        Row here = row;
        ReachedLevels::narrow(here, stretch.low, stretch.high);
        const auto ends = [&, &soFar = lasted](std::int64_t length) {
            Row there = here;
            ReachedLevels::narrow(there, stretch.low, highAtEnd);
            add(paths_[i + 1], places_->forth(i, soFar, length), there);
        };
        if (lengths.least <= 0 && lengths.most >= 0) {
            ends(0);
        }
        std::vector<int> preferred = stretch.preferred; // as it begins
        for (std::int64_t length = 1; length <= lengths.most; ++length) {
            const std::int64_t highNext = std::min(
                stretch.high, highAtEnd + oven_->coolMilliCPerMin * (lengths.most - length));
            Row next = reached_->after(
                {stretch.low, stretch.high, highNext, stretch.off, preferred}, here, below_);
            if (++steps_ > mostSteps || next.levels.empty()) {
                return false;
            }
            const bool stays = preferred.empty() && next == here;
            preferred.clear();
            here = std::move(next);
            if (length >= lengths.least) {
                ends(length);
                if (stays && !eachCounts) {
                    break;
                }
            }
        }
    }
    return true;
}

std::int64_t ReachedWalk::leastTo(std::size_t stretch) const
{
    std::int64_t least = below_;
    for (const auto& [lasted, row] : paths_[stretch]) {
        least = std::min(least, ReachedLevels::isAny(row) ? row.first : least);
    }
    return least;
}

std::vector<std::int64_t> leastHeatUpTo(const Oven& oven, const OvenProgramStyle& style,
                                        const OvenBox& box, std::int64_t below, std::int64_t& work)
{
    OvenProgramStyle heatOnly = style;
    heatOnly.preferC = 0;
    heatOnly.change = 0;
    const std::vector<StretchLengths> open = lengthsOf(box.stretches);
    const SettingLevels needed(oven, {}, heatOnly, below, 0);
    const ReachedLevels reached(oven, heatOnly, needed);
    const SpanPlaces places(box.spans, open);
    const ReachedWalk walk(oven, reached, places, box, open, below);
    work += reached.work();
    std::vector<std::int64_t> result;
    for (std::size_t i = 0; i <= box.stretches.size() && walk.isDone(); ++i) {
        result.push_back(walk.leastTo(i));
    }
    return result;
}

} // namespace suppertide
