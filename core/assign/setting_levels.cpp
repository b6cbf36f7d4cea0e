#include "core/assign/setting_levels.h"

#include <algorithm>
#include <cstdlib>

#include "core/assign/level_lanes.h"

namespace suppertide {

namespace {

using Level = LevelRow::Level;
constexpr Level unbounded = LevelRow::unbounded;

Level milli(int degrees)
{
    return degrees * 1000;
}

constexpr std::size_t mostCosts = 3'000; // of a row
constexpr std::size_t lane = LevelRow::lane;
constexpr std::int64_t workOfRow = 200; // levels

} // namespace

bool SettingLevels::suits(const Oven& oven)
{
    constexpr int mostC = 100'000;
    constexpr int mostSettings = 2'000;
    constexpr std::int64_t mostMilliC = 100'000'000; // a minute
    const auto within = [](int degrees) { return -mostC <= degrees && degrees <= mostC; };
    return within(oven.minC) && within(oven.maxC) && within(oven.startC) && within(oven.ambientC) &&
           oven.minC <= oven.maxC && oven.maxC - oven.minC < mostSettings &&
           oven.heatMilliCPerMin <= mostMilliC && oven.coolMilliCPerMin <= mostMilliC;
}

SettingLevels::SettingLevels(const Oven& oven, const std::vector<OvenStay>& stays,
                             const OvenProgramStyle& style, std::int64_t below,
                             std::int64_t heating)
    : oven_(oven), style_(style),
      coldest_(milli(std::min({oven.minC, oven.startC, oven.ambientC}))),
      hottest_(milli(std::max({oven.maxC, oven.startC, oven.ambientC}))),
      columns_(settingColumns(oven, stays, style, below - heating))
{
    for (const SettingColumn& column : columns_) {
        hottestOf_.push_back(milli(column.hottest));
    }
}

SettingLevels::Prices SettingLevels::pricesOf(const AskedOfMinute& minute) const
{
    Prices prices{0, {}, style_.onMinute, style_.onMinute};
    if (minute.preferred.empty()) {
        return prices;
    }
    prices.on.assign(columns_.size(), style_.onMinute);
    for (const int preferred : minute.preferred) {
        prices.off += style_.preferC * std::abs(oven_.ambientC - preferred);
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            const int nearest = std::clamp(preferred, columns_[i].coolest, columns_[i].hottest);
            prices.on[i] += style_.preferC * std::abs(nearest - preferred);
        }
    }
    prices.cheapestOn = *std::ranges::min_element(prices.on);
    prices.dearestOn = *std::ranges::max_element(prices.on);
    return prices;
}

SettingLevels::Row SettingLevels::atEnd(std::int64_t low, std::int64_t /*high*/) const
{
    return rowOf(0, LevelLanes::levelOf(low));
}

/// The same for all, from a cost on.
SettingLevels::Row SettingLevels::rowOf(std::int64_t cost, Level level) const
{
    const std::vector<Level> levels(3 * lane, level);
    return {cost, 1, {columns_.size(), columns_.size() + 1}, levels.data(), lane};
}

/// Settings at which a minute on leads too far up.
std::size_t SettingLevels::blockedFrom(const AskedOfMinute& minute) const
{
    if (minute.off) {
        return 0;
    }
    if (minute.low + oven_.heatMilliCPerMin <= minute.highNext) {
        return columns_.size();
    }
    const auto blocked =
        std::ranges::upper_bound(columns_, minute.highNext, {}, [](const SettingColumn& column) {
            return std::int64_t{column.coolest} * 1000;
        });
    return static_cast<std::size_t>(blocked - columns_.begin());
}

/// Of a group up to a column: settings heat to all that is needed next up to their own temperature.
void SettingLevels::divideByHeat(const Row& after, std::size_t group, std::size_t end,
                                 Level ceiling) const
{
    const std::size_t begin = parts_.empty() ? 0 : parts_.back().end;
    const Level* levels = after.levelsOf(group);
    const Level most = std::min(ceiling, hottestOf_[end - 1]);
    const Level* from = std::partition_point(levels, levels + after.costs(),
                                             [&](Level level) { return level > most; });
    splits_.clear();
    for (; from != levels + after.costs() && *from > hottestOf_[begin]; ++from) {
        const auto heats =
            std::lower_bound(hottestOf_.begin() + static_cast<std::ptrdiff_t>(begin),
                             hottestOf_.begin() + static_cast<std::ptrdiff_t>(end), *from);
        splits_.push_back(static_cast<std::size_t>(heats - hottestOf_.begin()));
    }
    while (!splits_.empty()) { // a dearer one is lower
        if (parts_.empty() || parts_.back().end < splits_.back()) {
            parts_.push_back({group, splits_.back(), style_.onMinute});
        }
        splits_.pop_back();
    }
    parts_.push_back({group, end, style_.onMinute});
}

void SettingLevels::divide(const AskedOfMinute& minute, const Prices& prices, const Row& after,
                           std::int64_t below) const
{
    parts_.clear();
    const std::size_t blocked = blockedFrom(minute);
    const Level ceiling = LevelLanes::levelOf(minute.highNext);
    for (std::size_t group = 0; group + 1 < after.groups(); ++group) {
        const std::size_t end = std::min(after.endOf(group), blocked);
        std::size_t column = after.beginOf(group);
        if (column < end && prices.on.empty()) {
            divideByHeat(after, group, end, ceiling);
        }
        for (; column < end && !prices.on.empty(); ++column) {
            const bool matters = after.first() + prices.on[column] < below;
            const std::int64_t price = matters ? prices.on[column] : plenty;
            if (matters || column == after.beginOf(group) || parts_.back().price < plenty) {
                parts_.push_back({group, column, price});
            }
            parts_.back().end = column + 1;
        }
        if (after.endOf(group) > blocked) {
            parts_.push_back({group, after.endOf(group), plenty});
        }
    }
}

/// Levels of the row after, as they are for a cost of `back` less than here.
class SettingLevels::Spread
{
public:
    /// So many at most.
    Spread(const Row& after, std::vector<Level>& room, std::size_t most, std::size_t lanes)
        : after_(after), room_(room), most_(most), lanes_(lanes)
    {}
    [[nodiscard]] LevelLanes of(std::size_t group, std::int64_t back)
    {
        if (back <= static_cast<std::int64_t>(lane)) {
            return after_.lanesOf(group, static_cast<std::size_t>(back));
        }
        const Level* levels = after_.levelsOf(group);
        const std::size_t count = lanes_ * lane;
        if (used_ == 0) { // what has been given must not move
            room_.resize(std::max(room_.size(), most_ * count));
        }
        Level* place = room_.data() + used_;
        used_ += count;
        const std::size_t dear = std::min(count, static_cast<std::size_t>(back));
        const std::size_t known = std::min(count - dear, after_.costs());
        std::fill_n(place, dear, unbounded);
        std::copy_n(levels, known, place + dear);
        std::fill(place + dear + known, place + count, levels[after_.costs() - 1]);
        return {place, lanes_, place};
    }

private:
    const Row& after_;
    std::vector<Level>& room_;
    std::size_t most_;
    std::size_t lanes_;
    std::size_t used_ = 0;
};

/// What each part needs next, and none so far; costs from `cheapest` more than the row's on.
void SettingLevels::readNext(const Row& after, const Prices& prices, std::size_t lanes) const
{
    const std::int64_t cheapest = std::min(prices.off, prices.cheapestOn);
    Spread spread(after, spread_, 2 * parts_.size() + 1, lanes);
    next_.clear();
    for (std::size_t p = 0; p < parts_.size(); ++p) {
        const Part& part = parts_[p];
        const bool isOn = part.price < plenty;
        const bool isAsBefore = p > 0 && parts_[p - 1].group == part.group;
        next_.push_back(
            {isOn ? spread.of(part.group, part.price - cheapest) : LevelLanes{},
             isAsBefore ? next_.back().off : spread.of(part.group, prices.off - cheapest),
             hottestOf_[part.end - 1]});
    }
    none_.assign(1, {{}, spread.of(after.groups() - 1, prices.off - cheapest), 0});
}

/// Finds the levels of each part by cost, and then those for none so far. How many of so many costs
/// are of use: once the minute can be on from what it asks for at least, all others can for a
/// change more.
std::size_t SettingLevels::lookThrough(const LevelsAsked& minute, std::size_t costs) const
{
    const std::size_t stride = LevelLanes::countFor(costs) * lane;
    found_.resize(std::max(found_.size(), (parts_.size() + 1) * stride + lane));
    best_.resize(stride);
    changed_.resize(stride);
    worst_.resize(stride);
    leadTo(minute, next_, stride, found_.data(), best_.data());
    const auto floor = std::partition_point(best_.begin(), best_.end(),
                                            [&](Level level) { return level > minute.low; });
    const std::int64_t ofUse = floor - best_.begin() + style_.change + 1;
    costs = static_cast<std::size_t>(std::min(static_cast<std::int64_t>(costs), ofUse));
    const auto late =
        static_cast<std::size_t>(std::min(style_.change, static_cast<std::int64_t>(stride)));
    std::fill_n(changed_.begin(), late, unbounded);
    std::copy_n(best_.begin(), stride - late, changed_.begin() + static_cast<std::ptrdiff_t>(late));
    Level* none = &found_[parts_.size() * stride];
    std::copy(best_.begin(), best_.end(), none); // the first setting is no change
    const std::size_t lanes = LevelLanes::countFor(costs);
    willDo(minute, none_, lanes, stride, best_.data(), none, worst_.data());
    willDo(minute, next_, lanes, stride, changed_.data(), found_.data(), worst_.data());
    return costs;
}

/// Of what has been found; without costs in front at which nothing will do, and such at the end as
/// change nothing.
SettingLevels::Row SettingLevels::rowFrom(std::int64_t first, std::size_t costs, Level low) const
{
    const std::size_t stride = best_.size();
    const Level* none = &found_[parts_.size() * stride]; // never more than with a setting
    std::size_t begin = 0;
    while (begin < costs && none[begin] == unbounded) {
        ++begin;
    }
    if (begin == costs && costs > mostCosts) {
        return {};
    }
    if (begin == costs) {
        return rowOf(first + static_cast<std::int64_t>(costs), unbounded);
    }
    std::size_t end = begin + 1;
    while (end < costs && worst_[end - 1] != low && worst_[end - 1] != -unbounded) {
        ++end;
    }
    if (end == costs && costs > mostCosts && worst_[end - 1] != low &&
        worst_[end - 1] != -unbounded) {
        return {}; // more costs than were looked at may tell them apart
    }
    const auto isAsBefore = [&](std::size_t cost) {
        for (const Level* levels = found_.data(); levels <= none; levels += stride) {
            if (levels[cost] != levels[cost - 1]) {
                return false;
            }
        }
        return true;
    };
    while (end > begin + 1 && isAsBefore(end - 1)) {
        --end;
    }
    if (end > mostCosts) {
        return {};
    }
    ends_.clear();
    for (const Part& part : parts_) {
        ends_.push_back(part.end);
    }
    ends_.push_back(columns_.size() + 1);
    return {first + static_cast<std::int64_t>(begin), end - begin, ends_, found_.data() + begin,
            stride};
}

SettingLevels::Row SettingLevels::before(const AskedOfMinute& asked, const Row& after,
                                         std::int64_t below) const
{
    if (after.isUnknown()) {
        return {};
    }
    const Prices prices = pricesOf(asked);
    const std::int64_t cheapest = std::min(prices.off, prices.cheapestOn);
    const std::int64_t first = after.first() + cheapest;
    const std::int64_t end =
        std::min(below, after.end() + std::max(prices.off, prices.dearestOn + style_.change));
    if (end <= first) {
        return rowOf(below, unbounded);
    }
    divide(asked, prices, after, below);
    const LevelsAsked minute{LevelLanes::levelOf(asked.low),
                             std::min(LevelLanes::levelOf(asked.high), hottest_),
                             LevelLanes::levelOf(asked.highNext),
                             static_cast<Level>(oven_.heatMilliCPerMin),
                             static_cast<Level>(oven_.coolMilliCPerMin),
                             milli(oven_.ambientC),
                             coldest_};
    const std::size_t all = std::min(static_cast<std::size_t>(end - first), mostCosts + 1);
    readNext(after, prices, LevelLanes::countFor(all));
    const std::size_t costs = lookThrough(minute, all);
    work_ += static_cast<std::int64_t>(parts_.size() * costs) + workOfRow;
    return rowFrom(first, costs, minute.low);
}

void SettingLevels::narrow(Row& row, std::int64_t low, std::int64_t high)
{
    row.narrow(LevelLanes::levelOf(low), LevelLanes::levelOf(high));
}

void SettingLevels::takeBetter(Row& row, const Row& other) const
{
    row = Row::lower(row, other);
    work_ += static_cast<std::int64_t>(row.size());
}

std::int64_t SettingLevels::find(const Row& row, std::int64_t milliC, std::size_t from,
                                 std::size_t to) const
{
    if (row.isUnknown()) {
        return 0;
    }
    std::int64_t best = plenty;
    for (std::size_t group = 0; group < row.groups(); ++group) {
        if (from > to || row.beginOf(group) > to || row.endOf(group) <= from) {
            continue;
        }
        const Level* levels = row.levelsOf(group); // a higher cost needs no higher temperature
        const Level* enough = std::partition_point(levels, levels + row.costs(),
                                                   [&](Level level) { return level > milliC; });
        if (enough != levels + row.costs()) {
            best = std::min(best, row.first() + (enough - levels));
        }
    }
    return best;
}

std::size_t SettingLevels::columnOf(int setting) const
{
    const auto place = std::ranges::lower_bound(columns_, setting, {}, &SettingColumn::hottest);
    return std::min(static_cast<std::size_t>(place - columns_.begin()), columns_.size() - 1);
}

std::int64_t SettingLevels::least(const Row& row, std::int64_t milliC, int lowest,
                                  int highest) const
{
    return find(row, milliC, columnOf(lowest), columnOf(highest));
}

std::int64_t SettingLevels::least(const Row& row, std::int64_t milliC) const
{
    return find(row, milliC, columns_.size(), columns_.size());
}

} // namespace suppertide
