#include "core/assign/reached_walk.h"

#include <algorithm>
#include <functional>
#include <optional>
#include <utility>

#include "core/assign/closed_up.h"

namespace suppertide {

namespace {

constexpr std::int64_t mostSteps = 8'000; // minutes

} // namespace

template <typename Levels>
ReachedWalk<Levels>::ReachedWalk(const Oven& oven, const Levels& reached, const SpanPlaces& places,
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
        isDone_ = through({i, &box.stretches[i], highs[i + 1]});
    }
}

/// As the first stretch begins: the oven has been empty for as long as need be.
template <typename Levels>
typename ReachedWalk<Levels>::Row ReachedWalk<Levels>::whenCold()
{
    const AskedOfMinute empty{
        -SettingLevels::unbounded, SettingLevels::unbounded, SettingLevels::unbounded, false, {}};
    Row row = reached_->atStart();
    for (std::int64_t left = ovenForgets(*oven_); left > 0 && isDone_; --left) {
        Row next = reached_->after(empty, row, below_);
        isDone_ = ++steps_ <= mostSteps && !next.isUnknown();
        if (next == row) {
            break;
        }
        row = std::move(next);
    }
    return row;
}

template <typename Levels>
void ReachedWalk<Levels>::add(Paths& paths, const SpanPlaces::Lasted& lasted, const Row& row) const
{
    const auto [best, isNew] = paths.try_emplace(lasted, row);
    if (!isNew) {
        reached_->takeBetter(best->second, row);
    }
}

/// A minute of a stretch, with so many to come in it at most; false: it would take too long.
template <typename Levels>
bool ReachedWalk<Levels>::step(const Stretch& stretch, std::int64_t left, bool begins, Row& row)
{
    const OvenStretch& asks = *stretch.asks;
    const std::int64_t highNext =
        std::min(asks.high, stretch.highAtEnd + oven_->coolMilliCPerMin * left);
    row = reached_->after(
        {asks.low, asks.high, highNext, asks.off, begins ? asks.preferred : std::vector<int>{}},
        row, below_);
    return ++steps_ <= mostSteps && !row.isUnknown();
}

template <typename Levels>
void ReachedWalk<Levels>::endAt(const Stretch& stretch, const SpanPlaces::Lasted& lasted, Row row)
{
    Levels::narrow(row, stretch.asks->low, stretch.highAtEnd);
    if (Levels::isAny(row)) {
        add(paths_[stretch.number + 1], lasted, row);
    }
}

/// From one beginning, to each end that the stretch may have.
template <typename Levels>
bool ReachedWalk<Levels>::alone(const Stretch& stretch, const SpanPlaces::Lasted& lasted,
                                StretchLengths lengths, Row here)
{
    const auto endHere = [&](std::int64_t length) {
        endAt(stretch, places_->forth(stretch.number, lasted, length), here);
    };
    if (lengths.least <= 0 && lengths.most >= 0) {
        endHere(0);
    }
    const bool eachCounts = places_->goesForth(stretch.number);
    for (std::int64_t length = 1; length <= lengths.most; ++length) {
        const bool begins = length == 1 && !stretch.asks->preferred.empty();
        Row next = here;
        if (!step(stretch, lengths.most - length, begins, next)) {
            return false;
        }
        const bool stays = !begins && next == here;
        here = std::move(next);
        if (length >= lengths.least) {
            endHere(length);
        }
        if ((length >= lengths.least && stays && !eachCounts) || !Levels::isAny(here)) {
            break;
        }
    }
    return true;
}

/// From several beginnings with one end: the one with most minutes to go meets the others on its
/// way.
template <typename Levels>
bool ReachedWalk<Levels>::together(const Stretch& stretch, const SpanPlaces::Lasted& lasted,
                                   Beginnings beginnings)
{
    std::ranges::stable_sort(beginnings, std::greater{}, &Beginning::minutes);
    std::optional<Row> here;
    const auto join = [&](const Row& row) {
        if (here) {
            reached_->takeBetter(*here, row);
        } else {
            here = row;
        }
    };
    auto next = beginnings.begin();
    const auto joinWith = [&](std::int64_t left) {
        for (; next != beginnings.end() && next->minutes == left; ++next) {
            join(next->row);
        }
    };
    const bool begins = !stretch.asks->preferred.empty();
    for (std::int64_t left = beginnings.front().minutes; left > 0; --left) {
        if (!begins) {
            joinWith(left);
        }
        if (here && !step(stretch, left - 1, false, *here)) {
            return false;
        }
        for (auto one = next; one != beginnings.end() && one->minutes == left; ++one) {
            if (!step(stretch, left - 1, true, one->row)) {
                return false;
            }
        }
        joinWith(left);
    }
    joinWith(0);
    if (here) {
        endAt(stretch, lasted, std::move(*here));
    }
    return true;
}

template <typename Levels>
bool ReachedWalk<Levels>::through(const Stretch& stretch)
{
    const std::size_t i = stretch.number;
    std::map<SpanPlaces::Lasted, Beginnings> joined;
    for (const auto& [lasted, row] : paths_[i]) {
        const StretchLengths own{stretch.asks->least, stretch.asks->most};
        const StretchLengths lengths = places_->lengthsForth(i, lasted, own);
        Row here = row;
        Levels::narrow(here, stretch.asks->low, stretch.asks->high);
        if (lengths.least == lengths.most) {
            joined[places_->forth(i, lasted, lengths.least)].push_back(
                {lengths.least, std::move(here)});
        } else if (!alone(stretch, lasted, lengths, std::move(here))) {
            return false;
        }
    }
    return std::ranges::all_of(
        joined, [&](auto& of) { return together(stretch, of.first, std::move(of.second)); });
}

template <typename Levels>
std::int64_t ReachedWalk<Levels>::leastTo(std::size_t stretch) const
{
    std::int64_t least = below_;
    for (const auto& [lasted, row] : paths_[stretch]) {
        least = std::min(least, Levels::isAny(row) ? row.first : least);
    }
    return least;
}

template class ReachedWalk<ReachedHeat>;
template class ReachedWalk<ReachedLevels>;

std::vector<std::int64_t> leastHeatUpTo(const Oven& oven, const OvenProgramStyle& style,
                                        const OvenBox& box, std::int64_t below, std::int64_t& work)
{
    const std::vector<StretchLengths> open = lengthsOf(box.stretches);
    const ReachedHeat reached(oven, style);
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
