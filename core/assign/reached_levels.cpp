#include "core/assign/reached_levels.h"

#include <algorithm>
#include <cstdlib>

#include "core/assign/wide.h"

namespace suppertide {

namespace {

constexpr std::int64_t mostCosts = 3'000; // of a row
constexpr std::int32_t nothing = -SettingLevels::unbounded;

std::int32_t clamped(std::int64_t milliC)
{
    return static_cast<std::int32_t>(
        std::clamp<std::int64_t>(milliC, -SettingLevels::unbounded, SettingLevels::unbounded));
}

/// What a minute allows, whatever the setting; levels.
struct Allowed
{
    std::int32_t low = 0; // as it ends
    std::int32_t high = 0;
    std::int32_t heats = 0;
    std::int32_t cools = 0;
    std::int32_t ambient = 0;
};

inline std::int32_t cooled(const Allowed& minute, std::int32_t from)
{
    return from == nothing ? nothing : std::max(from - minute.cools, minute.ambient);
}

inline std::int32_t within(const Allowed& minute, std::int32_t level)
{
    const std::int32_t here = std::min(level, minute.high);
    return here < minute.low ? nothing : here;
}

SUPPERTIDE_WIDE std::int32_t greatest(const std::int32_t* levels, std::size_t count)
{
    std::int32_t best = nothing;
    for (std::size_t i = 0; i < count; ++i) {
        best = std::max(best, levels[i]);
    }
    return best;
}

/// From what has been reached, by column: if the minute is off, and if it is on.
struct Reached
{
    const std::int32_t* off = nullptr;
    const std::int32_t* on = nullptr;
    std::int32_t onAfterChange = 0; // at any
    const std::int32_t* hottest = nullptr;
    const std::int32_t* blocked = nullptr; // no higher when on
};

/// The greatest temperatures that a minute leads to with each setting the last in force; and the
/// greatest of them.
SUPPERTIDE_WIDE std::int32_t leadsTo(const Allowed& allowed, const Reached& reached,
                                     std::size_t count, std::int32_t* __restrict here)
{
    const Allowed minute = allowed;
    const Reached from = reached;
    std::int32_t best = nothing;
    for (std::size_t i = 0; i < count; ++i) {
        const std::int32_t level = std::max(from.on[i], from.onAfterChange);
        const std::int32_t heated =
            std::max(std::min(level + minute.heats, from.hottest[i]), level - minute.cools);
        const std::int32_t on = level == nothing ? nothing : std::min(heated, from.blocked[i]);
        here[i] = within(minute, std::max(on, cooled(minute, from.off[i])));
        best = std::max(best, here[i]);
    }
    return best;
}

} // namespace

ReachedLevels::ReachedLevels(const Oven& oven, const OvenProgramStyle& style,
                             const SettingLevels& needed)
    : needed_(&needed), oven_(oven), style_(style), columns_(needed.columns()),
      width_(columns_.size() + 1), never_(width_, never)
{
    for (const SettingColumn& column : columns_) {
        hottestOf_.push_back(column.hottest * 1000);
    }
}

ReachedLevels::Row ReachedLevels::atStart() const
{
    Row row{0, never_};
    row.levels.back() = oven_.startC * 1000;
    return row;
}

const ReachedLevels::Level* ReachedLevels::at(const Row& row, std::int64_t cost) const
{
    if (cost < row.first) {
        return never_.data();
    }
    const std::int64_t place = std::min(cost, endOf(row) - 1) - row.first;
    return row.levels.data() + place * static_cast<std::int64_t>(width_);
}

/// Settings at which a minute on leads too far up.
void ReachedLevels::block(const AskedOfMinute& minute) const
{
    const bool risesTooFar = minute.low + oven_.heatMilliCPerMin > minute.highNext;
    blocked_.assign(columns_.size(), SettingLevels::unbounded);
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        if (minute.off ||
            (risesTooFar && std::int64_t{columns_[i].coolest} * 1000 > minute.highNext)) {
            blocked_[i] = never;
        }
    }
}

void ReachedLevels::notePaid(const Row& before) const
{
    any_.clear();
    for (std::int64_t cost = before.first; cost < endOf(before); ++cost) {
        any_.push_back(greatest(at(before, cost), columns_.size()));
    }
}

/// From another setting, or none so far, which is no change.
ReachedLevels::Level ReachedLevels::afterChange(const Row& before, std::int64_t cost) const
{
    const std::int64_t paid = std::min(cost - style_.change, endOf(before) - 1) - before.first;
    const Level changed = paid < 0 ? never : any_[static_cast<std::size_t>(paid)];
    return std::max(at(before, cost)[columns_.size()], changed);
}

/// What a minute on at each setting, at a cost as it ends, goes out from.
const ReachedLevels::Level* ReachedLevels::fromOn(const Row& before,
                                                  const SettingLevels::Prices& prices,
                                                  std::int64_t cost) const
{
    from_.resize(width_);
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        const std::int64_t paid = cost - prices.on[i];
        from_[i] = std::max(at(before, paid)[i], afterChange(before, paid));
    }
    return from_.data();
}

ReachedLevels::Row ReachedLevels::after(const AskedOfMinute& minute, const Row& before,
                                        std::int64_t below) const
{
    if (before.levels.empty()) {
        return {};
    }
    const SettingLevels::Prices prices = needed_->pricesOf(minute);
    block(minute);
    notePaid(before);
    const Allowed allowed{clamped(minute.low), clamped(minute.highNext),
                          static_cast<Level>(oven_.heatMilliCPerMin),
                          static_cast<Level>(oven_.coolMilliCPerMin), oven_.ambientC * 1000};
    const std::size_t count = columns_.size();
    const std::int64_t first = before.first + std::min(prices.off, prices.cheapestOn);
    const std::int64_t end =
        std::min(below, endOf(before) + std::max(prices.off, prices.dearestOn + style_.change));
    if (end - first > mostCosts) {
        return {};
    }
    Row result{below, {}};
    std::size_t size = 0; // found so far
    for (std::int64_t cost = first; cost < end; ++cost) {
        if (found_.size() < size + width_) {
            found_.resize(2 * (size + width_));
        }
        Level* here = &found_[size];
        const Level* off = at(before, cost - prices.off);
        const bool isPriced = !prices.on.empty();
        const std::int64_t paid = cost - style_.onMinute;
        const Reached reached{off, isPriced ? fromOn(before, prices, cost) : at(before, paid),
                              isPriced ? never : afterChange(before, paid), hottestOf_.data(),
                              blocked_.data()};
        const Level best = leadsTo(allowed, reached, count, here);
        here[count] = within(allowed, cooled(allowed, off[count]));
        if (std::max(best, here[count]) == never && size == 0) {
            continue;
        }
        size += width_;
        result.first = std::min(result.first, cost);
    }
    while (size > width_ &&
           std::equal(&found_[size - width_], &found_[size - 1] + 1, &found_[size - 2 * width_])) {
        size -= width_; // more does no more
    }
    result.levels.assign(found_.begin(), found_.begin() + static_cast<std::ptrdiff_t>(size));
    if (result.levels.empty()) {
        result.levels = never_;
    }
    work_ += static_cast<std::int64_t>(result.levels.size());
    return result;
}

void ReachedLevels::narrow(Row& row, std::int64_t low, std::int64_t high)
{
    const Level least = clamped(low);
    const Level most = clamped(high);
    for (Level& level : row.levels) {
        level = std::min(level, most);
        level = level < least ? never : level;
    }
}

void ReachedLevels::takeBetter(Row& row, const Row& other) const
{
    if (row.levels.empty() || other.levels.empty()) {
        row = {};
        return;
    }
    Row result{std::min(row.first, other.first), {}};
    const std::int64_t end = std::max(endOf(row), endOf(other));
    result.levels.resize(static_cast<std::size_t>(end - result.first) * width_);
    Level* place = result.levels.data();
    for (std::int64_t cost = result.first; cost < end; ++cost) {
        const Level* one = at(row, cost);
        const Level* two = at(other, cost);
        for (std::size_t i = 0; i < width_; ++i) {
            place[i] = std::max(one[i], two[i]);
        }
        place += width_;
    }
    work_ += static_cast<std::int64_t>(result.levels.size()) / 4;
    row = std::move(result);
}

bool ReachedLevels::isAny(const Row& row)
{
    return std::ranges::any_of(row.levels, [](Level level) { return level != never; });
}

bool ReachedLevels::meets(const Row& reached, const SettingLevels::Row& needed,
                          std::int64_t below) const
{
    if (needed.isUnknown() || reached.levels.empty()) {
        return true;
    }
    const std::int64_t last = std::min(needed.end() - 1, below - 1 - reached.first);
    for (std::int64_t cost = needed.first(); cost <= last; ++cost) {
        const Level* have = at(reached, below - 1 - cost);
        for (std::size_t group = 0; group < needed.groups(); ++group) {
            const Level hottest =
                greatest(have + needed.beginOf(group), needed.endOf(group) - needed.beginOf(group));
            if (hottest != never && needed.at(group, cost) <= hottest) {
                return true;
            }
        }
    }
    return false;
}

} // namespace suppertide
