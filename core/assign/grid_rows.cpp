#include "core/assign/grid_rows.h"

#include <algorithm>
#include <cstdlib>
#include <iterator>
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

GridRows::GridRows(const Oven& oven, const OvenProgramStyle& style,
                   std::vector<SettingColumn> columns, std::int64_t below, Steps steps)
    : oven_(&oven), style_(style), asked_(below), layers_(style.countsSwitching() ? 2 : 1),
      columns_(std::move(columns)), room_(std::move(spareRoom))
{
    readSteps(steps);
}

GridRows::~GridRows()
{
    spareRoom = std::move(room_);
}

void GridRows::readSteps(Steps steps)
{
    coldest_ = std::int64_t{std::min({oven_->minC, oven_->startC, oven_->ambientC})} * thousand;
    hottest_ = std::int64_t{std::max({oven_->maxC, oven_->startC, oven_->ambientC})} * thousand;
    step_ = steps == Steps::WholeDegrees
                ? thousand
                : std::gcd(std::gcd(oven_->heatMilliCPerMin, oven_->coolMilliCPerMin), thousand);
    const Cell last = cellOf(hottest_);
    if (last >= mostCells) {
        return;
    }
    const auto movedBy = [&](std::int64_t milliC) {
        return Moved{std::min(milliC / step_, last), std::min((milliC + step_ - 1) / step_, last)};
    };
    heats_ = movedBy(oven_->heatMilliCPerMin);
    cools_ = movedBy(oven_->coolMilliCPerMin);
    const bool isExact = heats_.least == heats_.most && cools_.least == cools_.most;
    const std::int64_t within = isExact ? 0 : step_ - 1; // a cell
    for (Cell cell = 0; cell <= last; ++cell) {
        const auto after = [&](std::int64_t milliC) {
            return cellOf(ovenMoved(*oven_, milliC, std::nullopt, Minutes{1}));
        };
        const std::int64_t milliC = coldest_ + cell * step_;
        afterOff_.push_back({after(milliC), after(milliC + within)});
    }
}

void GridRows::makeRoom(std::size_t more)
{
    if (room_.size() < used_ + more) {
        room_.resize(std::max(used_ + more, 2 * room_.size()));
    }
}

bool GridRows::isSame(const Row& one, const Row& two) const
{
    const Cost* costs = room_.data() + one.place;
    return one.low == two.low && one.count == two.count && one.ends == two.ends &&
           std::equal(costs, costs + sizeOf(one), room_.data() + two.place);
}

bool GridRows::isAny(const Row& row) const
{
    const Cost* costs = room_.data() + row.place;
    return std::any_of(costs, costs + sizeOf(row), [](Cost cost) { return cost != never; });
}

std::optional<std::int64_t> GridRows::riseBetween(const Row& later, const Row& earlier) const
{
    if (later.low != earlier.low || later.count != earlier.count || later.ends != earlier.ends) {
        return std::nullopt;
    }
    const Cost* from = room_.data() + later.place;
    const Cost* to = room_.data() + earlier.place;
    const Cost* end = from + sizeOf(later);
    const Cost* known = std::find_if(from, end, [](Cost cost) { return cost != never; });
    if (known != end && to[known - from] < *known) {
        return std::nullopt;
    }
    const Cost rise = known == end ? Cost{0} : static_cast<Cost>(to[known - from] - *known);
    for (; from != end; ++from, ++to) {
        if (*to != (*from == never ? never : static_cast<Cost>(*from + rise))) {
            return std::nullopt;
        }
    }
    return rise;
}

void GridRows::raise(const Row& row, std::int64_t by, std::int64_t below)
{
    const std::int64_t limit = price(std::min(below, asked_));
    Cost* costs = room_.data() + row.place;
    for (std::size_t i = 0; i < sizeOf(row); ++i) {
        const std::int64_t cost = costs[i] + by;
        costs[i] = costs[i] == never || cost >= limit ? never : static_cast<Cost>(cost);
    }
}

GridRows::Row GridRows::rowBetween(std::int64_t low, std::int64_t high) const
{
    low = std::max(low, coldest_);
    high = std::min(high, hottest_);
    Row row;
    row.low = cellOf(low + step_ - 1);
    const Cell last = high < coldest_ ? -1 : cellOf(high);
    row.count = static_cast<std::size_t>(std::max<Cell>(0, last - row.low + 1));
    row.ends = {columns_.size(), columns_.size() + 1};
    row.place = used_;
    return row;
}

GridRows::Row GridRows::atEnd(std::int64_t low, std::int64_t high)
{
    Row row = rowBetween(low, high);
    makeRoom(sizeOf(row));
    std::fill_n(room_.begin() + static_cast<std::ptrdiff_t>(used_), sizeOf(row), Cost{0});
    used_ += sizeOf(row);
    return row;
}

void GridRows::narrow(Row& row, std::int64_t low, std::int64_t high)
{
    Row made =
        rowBetween(std::max(low, coldest_ + row.low * step_),
                   std::min(high, coldest_ + (row.low + static_cast<Cell>(row.count) - 1) * step_));
    made.ends = row.ends;
    if (made.low == row.low && made.count == row.count) {
        return;
    }
    makeRoom(sizeOf(made));
    for (std::size_t i = 0; i < made.ends.size() * layers_; ++i) {
        const auto skipped = static_cast<std::size_t>(made.low - row.low);
        std::copy_n(room_.data() + row.place + i * row.count + skipped, made.count,
                    room_.data() + made.place + i * made.count);
    }
    used_ += sizeOf(made);
    row = std::move(made);
}

void GridRows::takeBetter(Row& row, const Row& other)
{
    Row made;
    made.low = std::min(row.low, other.low);
    const Cell end = std::max(row.low + static_cast<Cell>(row.count),
                              other.low + static_cast<Cell>(other.count));
    made.count = static_cast<std::size_t>(end - made.low);
    std::ranges::set_union(row.ends, other.ends, std::back_inserter(made.ends));
    made.place = used_;
    makeRoom(sizeOf(made));
    std::fill_n(room_.begin() + static_cast<std::ptrdiff_t>(used_), sizeOf(made), never);
    for (const Row* from : {&std::as_const(row), &other}) {
        std::size_t group = 0;
        for (std::size_t i = 0; i < made.ends.size(); ++i) {
            group += from->ends[group] < made.ends[i] ? 1U : 0U;
            for (std::size_t layer = 0; layer < layers_; ++layer) {
                takeLower(room_.data() + made.place + (i * layers_ + layer) * made.count +
                              (from->low - made.low),
                          room_.data() + from->place + (group * layers_ + layer) * from->count,
                          from->count, 0);
            }
        }
    }
    used_ += sizeOf(made);
    row = std::move(made);
}

GridRows::Prices GridRows::pricesOf(const AskedOfMinute& minute) const
{
    const std::int64_t on = minute.off ? plenty : style_.onMinute;
    Prices prices{0, std::vector<std::int64_t>(columns_.size(), on), style_.switchOn};
    prices.switching += minute.within ? style_.switchOnWithin : 0;
    for (const int preferred : minute.preferred) {
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
void GridRows::addOn(const Row& next, std::size_t group, Range columns, std::int64_t onPrice,
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
    shifted(cells.first, hottest - heats_.most, heats_.most);
    shifted(coolest + cools_.most, cells.last, -cools_.most);
    if (heats_.least < heats_.most) {
        shifted(cells.first, hottest - heats_.least, heats_.least);
    }
    if (cools_.least < cools_.most) {
        shifted(coolest + cools_.least, cells.last, -cools_.least);
    }
    const Cell degree = thousand / step_;
    const Cell before = std::max<Cell>(0, std::max(next.low, cells.first - cools_.most) - coolest);
    const Cell end = std::min({hottest, nextLast, cells.last + heats_.most});
    for (Cell setting = coolest + (before + degree - 1) / degree * degree; setting <= end;
         setting += degree) {
        if (from[setting - next.low] == never) {
            continue;
        }
        const Cell first = std::max(cells.first, setting - heats_.most);
        const Cell last = std::min(cells.last, setting + cools_.most);
        if (first <= last) {
            takeLowerOf(to + (first - cells.first), static_cast<std::size_t>(last - first + 1),
                        static_cast<Cost>(from[setting - next.low] + more));
        }
    }
}

/// On at any setting.
void GridRows::findAny(const Row& next, const Prices& prices, Range cells)
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
void GridRows::findBase(const Row& next, std::size_t group, const Prices& prices, Range cells)
{
    const auto count = static_cast<std::size_t>(cells.last - cells.first + 1);
    const bool isNone = group + 1 == next.ends.size(); // the first setting is no change
    std::fill_n(base_.begin(), layers_ * count, never);
    if (prices.off < limit_ && next.count > 0) {
        const Cost* from = costsOf(next, group, false);
        const Cell nextLast = next.low + static_cast<Cell>(next.count) - 1;
        const Cost more = price(prices.off);
        const Cell falls = // from there on it falls all a minute long
            cellOfDegrees(oven_->ambientC) + cools_.most;
        for (Cell cell = cells.first; cell <= std::min(cells.last, falls - 1); ++cell) {
            Cost& cost = base_[static_cast<std::size_t>(cell - cells.first)];
            const Moved moved = afterOff_[static_cast<std::size_t>(cell)];
            for (const Cell after : {moved.least, moved.most}) {
                if (next.low <= after && after <= nextLast) {
                    cost = std::min(cost, static_cast<Cost>(from[after - next.low] + more));
                }
            }
        }
        const auto fall = [&](Cell by) {
            const Cell first = std::max({cells.first, falls, next.low + by});
            const Cell last = std::min(cells.last, nextLast + by);
            if (first <= last) {
                takeLower(base_.data() + (first - cells.first), from + (first - by - next.low),
                          static_cast<std::size_t>(last - first + 1), more);
            }
        };
        fall(cools_.most);
        if (cools_.least < cools_.most) {
            fall(cools_.least);
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
void GridRows::addColumn(Row& row, const Row& next, std::size_t group, std::size_t column,
                         const Prices& prices, bool isFirst)
{
    const Range all{row.low, row.low + static_cast<Cell>(row.count) - 1};
    Range cells = all;
    if (!isFirst) { // elsewhere both lead to the same
        cells.first =
            std::max(cells.first, cellOfDegrees(columns_[column - 1].coolest) - heats_.most);
        cells.last = std::min(cells.last, cellOfDegrees(columns_[column].hottest) + cools_.most);
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

GridRows::Row GridRows::before(const AskedOfMinute& minute, const Row& next, std::int64_t below)
{
    limit_ = price(std::min(below, asked_));
    Row row = rowBetween(minute.low, minute.high);
    if (row.count == 0) {
        return row;
    }
    const Range cells{row.low, row.low + static_cast<Cell>(row.count) - 1};
    const Prices prices = pricesOf(minute);
    row.ends.clear();
    makeRoom((columns_.size() + 1) * layers_ * row.count);
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
    used_ += sizeOf(row);
    return row;
}

std::int64_t GridRows::tooDear() const
{
    return mostLimit < asked_ ? mostLimit : plenty;
}

std::int64_t GridRows::leastIn(const Row& row, std::int64_t milliC, bool on, std::size_t from,
                               std::size_t to) const
{
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
    return least < never ? std::int64_t{least} : tooDear();
}

std::int64_t GridRows::least(const Row& row, std::int64_t milliC, bool on, int lowest,
                             int highest) const
{
    const auto columnOf = [&](int setting) {
        const auto place = std::ranges::lower_bound(columns_, setting, {}, &SettingColumn::hottest);
        return std::min(static_cast<std::size_t>(place - columns_.begin()), columns_.size() - 1);
    };
    return leastIn(row, milliC, on, columnOf(lowest), columnOf(highest));
}

std::int64_t GridRows::least(const Row& row, std::int64_t milliC) const
{
    return leastIn(row, milliC, false, columns_.size(), columns_.size());
}

/// From cold an oven is switched on once, and is on for as long as it takes at least to be as hot:
/// that is enough for a bound, and no program does better that keeps it warm all along.
std::int64_t GridRows::leastFromCold(const Row& row, std::size_t last) const
{
    const Cell cold = cellOfDegrees(std::max(oven_->startC, oven_->ambientC));
    const std::size_t none = row.ends.size() - 1;
    std::int64_t best = tooDear();
    for (std::size_t group = 0; group < row.ends.size(); ++group) {
        const Cost* off = costsOf(row, group, false);
        const Cost* on = costsOf(row, group, true);
        for (std::size_t i = 0; i < row.count; ++i) {
            const Cell cell = row.low + static_cast<Cell>(i);
            const Cell rises = std::max<Cell>(0, cell - cold);
            if (group == last && rises == 0 && off[i] < never) {
                best = std::min<std::int64_t>(best, off[i]);
            }
            const Cost cost = std::min(off[i], on[i]);
            if (group == none || cost == never) {
                continue;
            }
            const std::int64_t minutes =
                std::max<Cell>(1, (rises + heats_.most - 1) / std::max<Cell>(1, heats_.most));
            // A setting that is not as hot comes after one that was.
            const bool isChange = (group != last && last != none) ||
                                  cellOfDegrees(columns_[row.ends[group] - 1].hottest) < cell;
            best = std::min(best, cost + style_.switchOn + style_.onMinute * minutes +
                                      (isChange ? style_.change : 0));
        }
    }
    return best;
}

/// Left on at first, without being switched on again.
std::int64_t GridRows::leastIfKeptWarm(const Row& row, std::size_t last, std::int64_t minutes) const
{
    const std::size_t none = row.ends.size() - 1;
    const Cell hottest = cellOf(hottest_);
    std::int64_t best = tooDear();
    for (std::size_t group = 0; group < none; ++group) {
        const Cost* off = costsOf(row, group, false);
        const Cost* on = costsOf(row, group, true);
        for (std::size_t i = 0; i < row.count; ++i) {
            const Cost cost = std::min(off[i], on[i]);
            if (cost < never) {
                const Cell falls = hottest - row.low - static_cast<Cell>(i);
                const std::int64_t offFor = cools_.least > 0 ? falls / cools_.least + 1 : minutes;
                const std::int64_t onFor = std::max<std::int64_t>(0, minutes - offFor);
                best = std::min(best, cost + style_.onMinute * onFor +
                                          (group == last ? 0 : style_.change));
            }
        }
    }
    return best;
}

GridRows::Row GridRows::beforeLong(const Row& after, std::int64_t minutes, std::int64_t below)
{
    limit_ = price(std::min(below, asked_));
    Row row = rowBetween(coldest_, hottest_);
    row.ends = after.ends;
    makeRoom(sizeOf(row));
    for (std::size_t group = 0; group < row.ends.size(); ++group) {
        const std::int64_t fromCold = leastFromCold(after, group);
        for (std::size_t layer = 0; layer < layers_; ++layer) {
            const bool mayBeOn = layer == 1 && group + 1 < row.ends.size();
            const std::int64_t least =
                mayBeOn ? std::min(fromCold, leastIfKeptWarm(after, group, minutes)) : fromCold;
            const auto place =
                static_cast<std::ptrdiff_t>(row.place + (group * layers_ + layer) * row.count);
            std::fill_n(room_.begin() + place, row.count,
                        least < limit_ ? static_cast<Cost>(least) : never);
        }
    }
    used_ += sizeOf(row);
    return row;
}

} // namespace suppertide
