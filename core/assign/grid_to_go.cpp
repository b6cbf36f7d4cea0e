#include "core/assign/grid_to_go.h"

#include <algorithm>
#include <cstdlib>
#include <numeric>
#include <optional>
#include <utility>

#include "core/assign/oven_segments.h"
#include "core/assign/wide.h"

namespace suppertide {

namespace {

using Cost = std::uint16_t;

constexpr std::int64_t thousand = 1000; // thousandths of a degree
constexpr std::int64_t mostCells = 6'000;
constexpr std::size_t mostCosts = 24'000'000; // in all rows
// With any price added it still fits.
constexpr Cost never = 0x7fff;
constexpr std::int64_t mostLimit = 0x3fff;

SUPPERTIDE_WIDE void takeLower(Cost* __restrict to, const Cost* __restrict from, std::size_t count,
                               Cost more)
{
    for (std::size_t i = 0; i < count; ++i) {
        const auto cost = static_cast<Cost>(from[i] + more);
        to[i] = std::min(to[i], cost);
    }
}

SUPPERTIDE_WIDE void takeLowerOf(Cost* __restrict to, std::size_t count, Cost cost)
{
    for (std::size_t i = 0; i < count; ++i) {
        to[i] = std::min(to[i], cost);
    }
}

/// From `limit` on costs do not matter.
SUPPERTIDE_WIDE void cap(Cost* __restrict costs, std::size_t count, Cost limit)
{
    for (std::size_t i = 0; i < count; ++i) {
        costs[i] = costs[i] < limit ? costs[i] : never;
    }
}

/// Fresh pages for every table would take as long as filling them.
thread_local std::vector<Cost> spareRoom;

Cost price(std::int64_t cost)
{
    return static_cast<Cost>(std::min<std::int64_t>(cost, mostLimit));
}

} // namespace

GridToGo::GridToGo(const Oven& oven, const std::vector<OvenStay>& stays, const OvenHeat& heat,
                   const OvenProgramStyle& style, std::int64_t below)
    : oven_(&oven), heat_(&heat), style_(style), asked_(below), limit_(price(below)),
      layers_(style.countsSwitching() ? 2 : 1), room_(std::move(spareRoom))
{
    if (readSteps(stays)) {
        const std::int64_t heating =
            heat.least(0, std::int64_t{oven.startC} * thousand, false, false);
        columns_ = settingColumns(oven, stays, style, below - heating);
        lookBack();
    }
}

GridToGo::~GridToGo()
{
    spareRoom = std::move(room_);
}

bool GridToGo::readSteps(const std::vector<OvenStay>& stays)
{
    for (const OvenStay& stay : stays) {
        if (stay.prefer && style_.preferC > 0) {
            preferred_[static_cast<int>(minuteOf(stay.during.start))].push_back(*stay.prefer);
        }
    }
    coldest_ = std::int64_t{std::min({oven_->minC, oven_->startC, oven_->ambientC})} * thousand;
    hottest_ = std::int64_t{std::max({oven_->maxC, oven_->startC, oven_->ambientC})} * thousand;
    step_ = std::gcd(std::gcd(oven_->heatMilliCPerMin, oven_->coolMilliCPerMin), thousand);
    const Cell last = cellOf(hottest_);
    if (last >= mostCells) {
        return false;
    }
    heats_ = std::min(oven_->heatMilliCPerMin / step_, last);
    cools_ = std::min(oven_->coolMilliCPerMin / step_, last);
    for (Cell cell = 0; cell <= last; ++cell) {
        afterOff_.push_back(
            cellOf(ovenMoved(*oven_, coldest_ + cell * step_, std::nullopt, Minutes{1})));
    }
    return true;
}

void GridToGo::lookBack()
{
    const int last = heat_->last();
    rowOf_.assign(static_cast<std::size_t>(last) + 1, 0);
    rows_.push_back(emptyRow(last));
    rows_.back().ends = {columns_.size(), columns_.size() + 1};
    used_ = sizeOf(rows_.back());
    room_.resize(std::max(room_.size(), used_));
    std::fill_n(room_.begin(), used_, Cost{0});
    for (int minute = last; minute-- > 0;) {
        const auto here = static_cast<std::size_t>(minute);
        rowOf_[here] = rowOf_[here + 1];
        if (heat_->isAsNext(minute) && rowOf_[here + 1] == rowOf_[here + 2]) {
            continue;
        }
        Row row = before(minute, rows_[rowOf_[here + 1]]);
        if (isSame(row, rows_[rowOf_[here + 1]])) {
            continue;
        }
        used_ += sizeOf(row);
        if (used_ > mostCosts) {
            rows_.clear();
            return;
        }
        rows_.push_back(std::move(row));
        rowOf_[here] = rows_.size() - 1;
    }
}

bool GridToGo::isSame(const Row& one, const Row& two) const
{
    const Cost* costs = room_.data() + one.place;
    return one.low == two.low && one.count == two.count && one.ends == two.ends &&
           std::equal(costs, costs + sizeOf(one), room_.data() + two.place);
}

/// Of temperatures from which what follows can be kept.
GridToGo::Range GridToGo::rangeAt(int minute) const
{
    const std::int64_t low = std::max(heat_->leastAt(minute), coldest_);
    const std::int64_t high = std::min(heat_->mostAt(minute), hottest_);
    return {cellOf(low + step_ - 1), high < coldest_ ? -1 : cellOf(high)};
}

GridToGo::Row GridToGo::emptyRow(int minute) const
{
    const Range cells = rangeAt(minute);
    Row row;
    row.low = cells.first;
    row.count = static_cast<std::size_t>(std::max<Cell>(0, cells.last - cells.first + 1));
    return row;
}

GridToGo::Prices GridToGo::pricesOf(int minute) const
{
    const std::int64_t on = heat_->mustBeOff(minute) ? plenty : style_.onMinute;
    Prices prices{0, std::vector<std::int64_t>(columns_.size(), on), style_.switchOn};
    prices.switching += heat_->isWithin(minute) ? style_.switchOnWithin : 0;
    const auto begins = preferred_.find(minute);
    if (begins == preferred_.end()) {
        return prices;
    }
    for (const int preferred : begins->second) {
        prices.off += style_.preferC * std::abs(oven_->ambientC - preferred);
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            const int nearest = std::clamp(preferred, columns_[i].coolest, columns_[i].hottest);
            prices.on[i] += style_.preferC * std::abs(nearest - preferred);
        }
    }
    return prices;
}

/// What a minute on at one of these columns, which are of one group next, leads to: `to`, by cell
/// from the first, becomes no more than that.
void GridToGo::addOn(const Row& next, std::size_t group, Range columns, std::int64_t onPrice,
                     Range cells, Cost* to) const
{
    if (onPrice >= limit_ || next.count == 0) {
        return;
    }
    const Cost more = price(onPrice);
    const Cost* from = costsOf(next, group, true);
    const Cell nextLast = next.low + static_cast<Cell>(next.count) - 1;
    const auto shifted = [&](Cell first, Cell last, Cell by) {
        first = std::max({first, cells.first, next.low - by});
        last = std::min({last, cells.last, nextLast - by});
        if (first <= last) {
            takeLower(to + (first - cells.first), from + (first + by - next.low),
                      static_cast<std::size_t>(last - first + 1), more);
        }
    };
    const Cell coolest = cellOfDegrees(columns_[static_cast<std::size_t>(columns.first)].coolest);
    const Cell hottest = cellOfDegrees(columns_[static_cast<std::size_t>(columns.last)].hottest);
    shifted(cells.first, hottest - heats_, heats_);
    shifted(coolest + cools_, cells.last, -cools_);
    const Cell degree = thousand / step_;
    const Cell before = std::max<Cell>(0, std::max(next.low, cells.first - cools_) - coolest);
    const Cell end = std::min({hottest, nextLast, cells.last + heats_});
    for (Cell setting = coolest + (before + degree - 1) / degree * degree; setting <= end;
         setting += degree) {
        if (from[setting - next.low] == never) {
            continue;
        }
        const Cell first = std::max(cells.first, setting - heats_);
        const Cell last = std::min(cells.last, setting + cools_);
        if (first <= last) {
            takeLowerOf(to + (first - cells.first), static_cast<std::size_t>(last - first + 1),
                        static_cast<Cost>(from[setting - next.low] + more));
        }
    }
}

/// On at any setting.
void GridToGo::findAny(const Row& next, const Prices& prices, Range cells)
{
    for (std::size_t group = 0; group + 1 < next.ends.size(); ++group) {
        std::size_t first = group == 0 ? 0 : next.ends[group - 1];
        while (first < next.ends[group]) {
            std::size_t last = first;
            while (last + 1 < next.ends[group] && prices.on[last + 1] == prices.on[first]) {
                ++last;
            }
            addOn(next, group, {static_cast<Cell>(first), static_cast<Cell>(last)},
                  prices.on[first], cells, any_.data());
            first = last + 1;
        }
    }
    cap(any_.data(), any_.size(), limit_);
}

/// Off, or at another setting than the last one, of a group next.
void GridToGo::findBase(const Row& next, std::size_t group, const Prices& prices, Range cells)
{
    const auto count = static_cast<std::size_t>(cells.last - cells.first + 1);
    const bool isNone = group + 1 == next.ends.size(); // the first setting is no change
    std::fill_n(base_.begin(), layers_ * count, never);
    if (prices.off < limit_ && next.count > 0) {
        const Cost* from = costsOf(next, group, false);
        const Cell nextLast = next.low + static_cast<Cell>(next.count) - 1;
        const Cost more = price(prices.off);
        const Cell falls = // from there on it falls all a minute long
            cellOfDegrees(oven_->ambientC) + cools_;
        for (Cell cell = cells.first; cell <= std::min(cells.last, falls - 1); ++cell) {
            const Cell after = afterOff_[static_cast<std::size_t>(cell)];
            if (next.low <= after && after <= nextLast) {
                base_[static_cast<std::size_t>(cell - cells.first)] =
                    static_cast<Cost>(from[after - next.low] + more);
            }
        }
        const Cell first = std::max({cells.first, falls, next.low + cools_});
        const Cell last = std::min(cells.last, nextLast + cools_);
        if (first <= last) {
            takeLower(base_.data() + (first - cells.first), from + (first - cools_ - next.low),
                      static_cast<std::size_t>(last - first + 1), more);
        }
    }
    const std::int64_t change = isNone ? 0 : style_.change;
    if (layers_ == 2) {
        std::copy_n(base_.begin(), count, base_.begin() + static_cast<std::ptrdiff_t>(count));
        takeLower(base_.data() + count, any_.data(), count, price(change));
    }
    takeLower(base_.data(), any_.data(), count, price(change + prices.switching));
}

/// As the row's last group, if it is no different from that, else as one more. `isFirst`: of its
/// group next, or at its price.
void GridToGo::addColumn(Row& row, const Row& next, std::size_t group, std::size_t column,
                         const Prices& prices, bool isFirst)
{
    const Range all{row.low, row.low + static_cast<Cell>(row.count) - 1};
    Range cells = all;
    if (!isFirst) { // elsewhere both lead to the same
        cells.first = std::max(cells.first, cellOfDegrees(columns_[column - 1].coolest) - heats_);
        cells.last = std::min(cells.last, cellOfDegrees(columns_[column].hottest) + cools_);
    }
    const auto count = static_cast<std::size_t>(std::max<Cell>(0, cells.last - cells.first + 1));
    const auto offset = count == 0 ? 0 : static_cast<std::size_t>(cells.first - all.first);
    std::fill_n(on_.begin(), count, never);
    addOn(next, group, {static_cast<Cell>(column), static_cast<Cell>(column)}, prices.on[column],
          cells, on_.data());
    const std::size_t size = layers_ * row.count;
    Cost* here = room_.data() + row.place + sizeOf(row); // after the last group
    bool isOther = row.ends.empty();
    for (std::size_t layer = 0; layer < layers_; ++layer) {
        const std::size_t place = layer * row.count + offset;
        Cost* made = made_.data() + place;
        std::copy_n(base_.data() + place, count, made);
        takeLower(made, on_.data(), count, layer == 0 ? price(prices.switching) : Cost{0});
        cap(made, count, limit_);
        isOther = isOther || !std::equal(made, made + count, here - size + place);
    }
    if (!isOther) {
        row.ends.back() = column + 1;
        return;
    }
    if (!isFirst) {
        std::copy_n(here - size, size, here);
    }
    for (std::size_t layer = 0; layer < layers_; ++layer) {
        const std::size_t place = layer * row.count + offset;
        std::copy_n(made_.data() + place, count, here + place);
    }
    row.ends.push_back(column + 1);
}

GridToGo::Row GridToGo::before(int minute, const Row& next)
{
    Row row = emptyRow(minute);
    row.place = used_;
    if (row.count == 0) {
        row.ends = {columns_.size(), columns_.size() + 1};
        return row;
    }
    const Range cells{row.low, row.low + static_cast<Cell>(row.count) - 1};
    const Prices prices = pricesOf(minute);
    room_.resize(std::max(room_.size(), used_ + (columns_.size() + 1) * layers_ * row.count));
    any_.assign(row.count, never);
    base_.resize(layers_ * row.count);
    made_.resize(layers_ * row.count);
    on_.resize(row.count);
    findAny(next, prices, cells);
    std::size_t column = 0;
    for (std::size_t group = 0; group + 1 < next.ends.size(); ++group) {
        findBase(next, group, prices, cells);
        for (bool isFirst = true; column < next.ends[group]; ++column) {
            isFirst = isFirst || prices.on[column] != prices.on[column - 1];
            addColumn(row, next, group, column, prices, isFirst);
            isFirst = false;
        }
    }
    findBase(next, next.ends.size() - 1, prices, cells);
    cap(base_.data(), layers_ * row.count, limit_);
    std::copy_n(base_.data(), layers_ * row.count, room_.data() + used_ + sizeOf(row));
    row.ends.push_back(columns_.size() + 1);
    return row;
}

std::int64_t GridToGo::leastIn(int minute, std::int64_t milliC, bool on, std::size_t from,
                               std::size_t to) const
{
    const Row& row = rows_[rowOf_[static_cast<std::size_t>(minute)]];
    const Cell cell = cellOf(milliC) - row.low;
    if (milliC < coldest_ || cell < 0 || cell >= static_cast<Cell>(row.count)) {
        return plenty;
    }
    const auto first = std::ranges::upper_bound(row.ends, from);
    Cost least = never;
    for (auto group = static_cast<std::size_t>(first - row.ends.begin());
         group < row.ends.size() && (group == 0 || row.ends[group - 1] <= to); ++group) {
        least = std::min(least, costsOf(row, group, on)[cell]);
    }
    if (least < limit_) {
        return least;
    }
    return limit_ < asked_ ? std::int64_t{limit_} : plenty;
}

std::int64_t GridToGo::least(int minute, std::int64_t milliC, bool on, int lowest,
                             int highest) const
{
    const auto columnOf = [&](int setting) {
        const auto place = std::ranges::lower_bound(columns_, setting, {}, &SettingColumn::hottest);
        return std::min(static_cast<std::size_t>(place - columns_.begin()), columns_.size() - 1);
    };
    return leastIn(minute, milliC, on, columnOf(lowest), columnOf(highest));
}

std::int64_t GridToGo::least(int minute, std::int64_t milliC) const
{
    return leastIn(minute, milliC, false, columns_.size(), columns_.size());
}

} // namespace suppertide
