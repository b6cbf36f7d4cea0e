#include "core/assign/reached_levels.h"

#include <algorithm>
#include <cstdlib>

#include "core/assign/level_lanes.h"

namespace suppertide {

namespace {

constexpr std::int64_t mostCosts = 3'000; // of a row
constexpr std::size_t lane = LevelRow::lane;

} // namespace

ReachedLevels::ReachedLevels(const Oven& oven, const OvenProgramStyle& style,
                             const SettingLevels& needed)
    : needed_(&needed), oven_(oven), style_(style), columns_(needed.columns()),
      width_((columns_.size() / lane + 1) * lane), never_(width_, never), none_(width_, never)
{
    std::fill_n(none_.begin(), columns_.size(), SettingLevels::unbounded);
    for (const SettingColumn& column : columns_) {
        hottestOf_.push_back(column.hottest * 1000);
    }
    hottestOf_.resize(width_, never);
}

ReachedLevels::Row ReachedLevels::atStart() const
{
    Row row{0, never_};
    row.levels[columns_.size()] = oven_.startC * 1000;
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

/// Settings at which a minute on leads too far up; and none so far, as it stays so only if off.
void ReachedLevels::block(const AskedOfMinute& minute) const
{
    const bool risesTooFar = minute.low + oven_.heatMilliCPerMin > minute.highNext;
    blocked_ = none_;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        if (minute.off ||
            (risesTooFar && std::int64_t{columns_[i].coolest} * 1000 > minute.highNext)) {
            blocked_[i] = never;
        }
    }
}

/// From another setting, or none so far, which is no change.
ReachedLevels::Level ReachedLevels::afterChange(const Row& before, std::int64_t cost) const
{
    const std::int64_t paid = std::min(cost - style_.change, endOf(before) - 1) - before.first;
    const Level changed = paid < 0 ? never : any_[static_cast<std::size_t>(paid)];
    return std::max(at(before, cost)[columns_.size()], changed);
}

/// What a minute goes out from, by cost as it ends.
void ReachedLevels::readFrom(const Row& before, const SettingLevels::Prices& prices,
                             std::int64_t first, std::int64_t end) const
{
    any_.resize(before.levels.size() / width_);
    greatestOf(before.levels.data(), any_.size(), width_, none_.data(), any_.data());
    const bool isPriced = !prices.on.empty();
    priced_.clear();
    priced_.reserve(isPriced ? static_cast<std::size_t>(end - first) * width_ : 0);
    from_.clear();
    for (std::int64_t cost = first; cost < end; ++cost) {
        const Level* off = at(before, cost - prices.off);
        const std::int64_t paid = cost - style_.onMinute;
        if (isPriced) {
            from_.push_back({off, pricedFrom(before, prices, cost), never});
        } else {
            from_.push_back({off, at(before, paid), afterChange(before, paid)});
        }
    }
}

/// If it is on, by column.
const ReachedLevels::Level* ReachedLevels::pricedFrom(const Row& before,
                                                      const SettingLevels::Prices& prices,
                                                      std::int64_t cost) const
{
    const std::size_t place = priced_.size();
    priced_.resize(place + width_, never);
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        const std::int64_t paid = cost - prices.on[i];
        priced_[place + i] = std::max(at(before, paid)[i], afterChange(before, paid));
    }
    return &priced_[place];
}

ReachedLevels::Row ReachedLevels::after(const AskedOfMinute& minute, const Row& before,
                                        std::int64_t below) const
{
    if (before.isUnknown()) {
        return {};
    }
    const SettingLevels::Prices prices = needed_->pricesOf(minute);
    const std::int64_t first = before.first + std::min(prices.off, prices.cheapestOn);
    const std::int64_t end =
        std::min(below, endOf(before) + std::max(prices.off, prices.dearestOn + style_.change));
    if (end - first > mostCosts) {
        return {};
    }
    Row result{below, never_};
    if (end <= first) {
        return result;
    }
    block(minute);
    readFrom(before, prices, first, end);
    const std::size_t costs = from_.size();
    found_.resize(std::max(found_.size(), costs * width_));
    best_.resize(costs);
    leadFrom({LevelLanes::levelOf(minute.low), LevelLanes::levelOf(minute.highNext),
              static_cast<Level>(oven_.heatMilliCPerMin),
              static_cast<Level>(oven_.coolMilliCPerMin), oven_.ambientC * 1000},
             from_, width_, hottestOf_.data(), blocked_.data(), found_.data(), best_.data());
    work_ += static_cast<std::int64_t>(costs * width_);
    const auto any = std::ranges::find_if(best_, [](Level level) { return level != never; });
    if (any == best_.end()) {
        return result;
    }
    const auto begin = static_cast<std::size_t>(any - best_.begin());
    std::size_t last = costs - 1;
    const auto rowAt = [&](std::size_t cost) {
        return found_.begin() + static_cast<std::ptrdiff_t>(cost * width_);
    };
    while (last > begin && std::equal(rowAt(last), rowAt(last + 1), rowAt(last - 1))) {
        --last; // more does no more
    }
    result.first = first + static_cast<std::int64_t>(begin);
    result.levels.assign(rowAt(begin), rowAt(last + 1));
    return result;
}

void ReachedLevels::narrow(Row& row, std::int64_t low, std::int64_t high)
{
    narrowReached(row.levels, low, high);
}

void ReachedLevels::takeBetter(Row& row, const Row& other) const
{
    if (row.isUnknown() || other.isUnknown()) {
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
    return row.isUnknown() ||
           std::ranges::any_of(row.levels, [](Level level) { return level != never; });
}

bool ReachedLevels::meets(const Row& reached, const SettingLevels::Row& needed,
                          std::int64_t below) const
{
    if (needed.isUnknown() || reached.isUnknown()) {
        return true;
    }
    const std::int64_t last = std::min(needed.end() - 1, below - 1 - reached.first);
    for (std::int64_t cost = needed.first(); cost <= last; ++cost) {
        const Level* have = at(reached, below - 1 - cost);
        for (std::size_t group = 0; group < needed.groups(); ++group) {
            const Level hottest =
                *std::max_element(have + needed.beginOf(group), have + needed.endOf(group));
            if (hottest != never && needed.at(group, cost) <= hottest) {
                return true;
            }
        }
    }
    return false;
}

} // namespace suppertide
