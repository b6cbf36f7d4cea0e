#include "core/assign/setting_levels.h"

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <set>

#include "core/assign/wide.h"

namespace suppertide {

namespace {

std::int32_t milli(int degrees)
{
    return degrees * 1000;
}

std::int32_t clamped(std::int64_t milliC)
{
    return static_cast<std::int32_t>(
        std::clamp<std::int64_t>(milliC, -SettingLevels::unbounded, SettingLevels::unbounded));
}

/// Of a row.
constexpr std::int64_t mostCosts = 3'000;
constexpr std::int64_t dear = SettingLevels::plenty;

using ByDegree =
    std::vector<std::int64_t>; // from the coolest setting on; the last one: none so far

/// What the stays prefer, and changes, cost at least up to each beginning of a stay, with each
/// setting the last in force.
std::vector<ByDegree> leastByDegree(const Oven& oven, const std::vector<int>& preferred,
                                    const OvenProgramStyle& style)
{
    const auto count = static_cast<std::size_t>(oven.maxC - oven.minC) + 1;
    ByDegree before(count + 1, dear);
    before.back() = 0;
    std::vector<ByDegree> result;
    for (const int degrees : preferred) {
        std::int64_t any = before.back();
        for (std::size_t i = 0; i < count; ++i) {
            any = std::min(any, before[i] + style.change);
        }
        const std::int64_t off = style.preferC * std::abs(oven.ambientC - degrees);
        ByDegree here(count + 1);
        for (std::size_t i = 0; i <= count; ++i) {
            here[i] = before[i] + off;
            if (i < count) {
                const int setting = oven.minC + static_cast<int>(i);
                here[i] = std::min(here[i], std::min(before[i], any) +
                                                style.preferC * std::abs(setting - degrees));
            }
        }
        before = here;
        result.push_back(std::move(here));
    }
    return result;
}

/// What all that is preferred, and changes, cost at least if a setting is the last in force as some
/// stay begins, by degree.
ByDegree leastIfInForce(const Oven& oven, const std::vector<OvenStay>& stays,
                        const OvenProgramStyle& style)
{
    ByDegree least(static_cast<std::size_t>(std::max(0, oven.maxC - oven.minC)) + 1, dear);
    std::vector<OvenStay> inOrder = stays;
    std::ranges::stable_sort(inOrder, {}, [](const OvenStay& stay) { return stay.during.start; });
    std::vector<int> preferred;
    for (const OvenStay& stay : inOrder) {
        if (stay.prefer && !stay.off && style.preferC > 0) {
            preferred.push_back(*stay.prefer);
        }
    }
    const std::vector<ByDegree> forth = leastByDegree(oven, preferred, style);
    std::ranges::reverse(preferred);
    const std::vector<ByDegree> back = leastByDegree(oven, preferred, style);
    for (std::size_t i = 0; i < forth.size(); ++i) {
        const ByDegree& after = back[forth.size() - 1 - i]; // from this stay on
        const int degrees = preferred[forth.size() - 1 - i];
        const std::int64_t off = style.preferC * std::abs(oven.ambientC - degrees);
        for (std::size_t s = 0; s < least.size(); ++s) {
            const int setting = oven.minC + static_cast<int>(s);
            const std::int64_t here = std::min(off, style.preferC * std::abs(setting - degrees));
            least[s] = std::min(least[s], forth[i][s] + after[s] - here);
        }
    }
    return least;
}

// The rows are where a search for proofs of ovens spends its time.

/// What a minute asks for, whatever the setting; levels.
struct Asked
{
    std::int32_t low = 0;
    std::int32_t high = 0;
    std::int32_t ceiling = 0; // of the next
    std::int32_t heats = 0;
    std::int32_t cools = 0;
    std::int32_t ambient = 0;
    std::int32_t coldest = 0;
};

/// The least temperature from which a minute will do, off or on, given what each asks for.
inline std::int32_t willDo(const Asked& minute, std::int32_t off, std::int32_t on)
{
    const std::int32_t cooled =
        off > minute.ambient ? off + minute.cools : -SettingLevels::unbounded;
    const std::int32_t ifOff = off > minute.ceiling ? SettingLevels::unbounded : cooled;
    const std::int32_t both = std::max(minute.low, std::min(ifOff, on));
    const std::int32_t warm = both <= minute.coldest ? -SettingLevels::unbounded : both;
    return both > minute.high ? SettingLevels::unbounded : warm;
}

/// What a row is found from, by column: what is needed next if the minute is off, and if it is on.
struct NeededNext
{
    const std::int32_t* off = nullptr;
    const std::int32_t* on = nullptr;
    const std::int32_t* hottest = nullptr;
    const std::int32_t* blocked = nullptr;
};

struct FoundLevels
{
    std::int32_t bestOn = SettingLevels::unbounded;
    std::int32_t least = SettingLevels::unbounded;
    std::int32_t worst = -SettingLevels::unbounded;
};

/// The least temperature from which a minute on at a setting leads to what is needed next.
inline std::int32_t leadTo(const Asked& minute, std::int32_t need, std::int32_t hottest,
                           std::int32_t blocked)
{
    const std::int32_t level = need > hottest ? need + minute.cools : need - minute.heats;
    const std::int32_t free = std::max(level, blocked);
    return need > minute.ceiling ? SettingLevels::unbounded : free;
}

/// The least temperatures from which a minute will do with each setting the last in force, on at
/// it, off, or on after a change.
SUPPERTIDE_WIDE FoundLevels willDo(const Asked& asked, const NeededNext& next, std::int32_t changed,
                                   std::size_t count, std::int32_t* __restrict here)
{
    const Asked minute = asked;
    const NeededNext needed = next;
    std::int32_t bestOn = SettingLevels::unbounded;
    std::int32_t least = SettingLevels::unbounded;
    std::int32_t worst = -SettingLevels::unbounded;
    for (std::size_t i = 0; i < count; ++i) {
        const std::int32_t on = leadTo(minute, needed.on[i], needed.hottest[i], needed.blocked[i]);
        const std::int32_t found = willDo(minute, needed.off[i], std::min(on, changed));
        here[i] = found;
        bestOn = std::min(bestOn, on);
        least = std::min(least, found);
        worst = std::max(worst, found);
    }
    return {bestOn, least, worst};
}

/// The same where a change costs nothing: on at any setting is as good.
SUPPERTIDE_WIDE FoundLevels willDoAtAny(const Asked& asked, const NeededNext& next,
                                        std::size_t count, std::int32_t* __restrict here)
{
    const Asked minute = asked;
    const NeededNext needed = next;
    std::int32_t bestOn = SettingLevels::unbounded;
    for (std::size_t i = 0; i < count; ++i) {
        bestOn =
            std::min(bestOn, leadTo(minute, needed.on[i], needed.hottest[i], needed.blocked[i]));
    }
    std::int32_t least = SettingLevels::unbounded;
    std::int32_t worst = -SettingLevels::unbounded;
    for (std::size_t i = 0; i < count; ++i) {
        const std::int32_t found = willDo(minute, needed.off[i], bestOn);
        here[i] = found;
        least = std::min(least, found);
        worst = std::max(worst, found);
    }
    return {bestOn, least, worst};
}

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
      hottest_(milli(std::max({oven.maxC, oven.startC, oven.ambientC})))
{
    choose(stays, below - heating);
    width_ = columns_.size() + 1;
    for (const Column& column : columns_) {
        hottestOf_.push_back(milli(column.hottest));
    }
    never_.assign(width_, unbounded);
}

/// Settings are told apart one by one where they can be in force as a stay begins, else only by
/// what is accepted.
void SettingLevels::choose(const std::vector<OvenStay>& stays, std::int64_t below)
{
    std::set<int> ends{oven_.maxC};
    for (const OvenStay& stay : stays) {
        ends.insert(std::clamp(stay.acceptHigh, oven_.minC, oven_.maxC));
    }
    const std::vector<std::int64_t> least = leastIfInForce(oven_, stays, style_);
    int lowest = oven_.maxC; // that is preferred
    int highest = oven_.minC;
    for (const OvenStay& stay : stays) {
        lowest = std::min(lowest, stay.prefer.value_or(lowest));
        highest = std::max(highest, stay.prefer.value_or(highest));
    }
    for (int setting = oven_.minC; setting <= oven_.maxC; ++setting) {
        // Between two that are preferred a column must not be near to both.
        const bool isBetween =
            lowest < setting && setting < highest && setting % narrowColumns == 0;
        if (isBetween && style_.preferC > 0) {
            ends.insert(setting);
        }
        if (least[static_cast<std::size_t>(setting - oven_.minC)] < below) {
            ends.insert(std::max(setting - 1, oven_.minC));
            ends.insert(setting);
        }
    }
    int coolest = oven_.minC;
    for (const int hottest : ends) {
        columns_.push_back({coolest, hottest});
        coolest = hottest + 1;
    }
}

std::vector<std::int64_t> SettingLevels::leastUpTo(const Oven& oven,
                                                   const std::vector<int>& preferred,
                                                   const OvenProgramStyle& style)
{
    std::vector<std::int64_t> result;
    for (const ByDegree& least : leastByDegree(oven, preferred, style)) {
        result.push_back(*std::ranges::min_element(least));
    }
    return result;
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

SettingLevels::Row SettingLevels::atEnd(std::int64_t low) const
{
    return {0, std::vector<Level>(width_, clamped(low))};
}

SettingLevels::Places::Places(const SettingLevels& levels, const Row& row)
    : first_(row.first), end_(levels.endOf(row)), width_(static_cast<std::int64_t>(levels.width_)),
      never_(levels.never_.data()), levels_(row.levels.data())
{}

/// Settings at which a minute on leads too far up.
void SettingLevels::block(const AskedOfMinute& asked) const
{
    const bool risesTooFar = asked.low + oven_.heatMilliCPerMin > asked.highNext;
    blocked_.assign(columns_.size(), -unbounded);
    for (std::size_t i = 0; risesTooFar && i < columns_.size(); ++i) {
        blocked_[i] = milli(columns_[i].coolest) > asked.highNext ? unbounded : -unbounded;
    }
}

/// What is needed after a minute on at each setting, for a cost to come before it.
const SettingLevels::Level* SettingLevels::neededOn(const Places& next, const Prices& prices,
                                                    std::int64_t cost) const
{
    if (prices.on.empty()) {
        return next.at(cost - style_.onMinute);
    }
    for (std::size_t i = 0; i < on_.size(); ++i) {
        on_[i] = next.at(cost - prices.on[i])[i];
    }
    return on_.data();
}

SettingLevels::Row SettingLevels::before(const AskedOfMinute& asked, const Row& after,
                                         std::int64_t below) const
{
    if (after.levels.empty()) {
        return {};
    }
    const Prices prices = pricesOf(asked);
    block(asked);
    on_.assign(columns_.size(), unbounded);
    any_.clear();
    const Asked minute{clamped(asked.low),
                       std::min(clamped(asked.high), hottest_),
                       clamped(asked.highNext),
                       static_cast<Level>(oven_.heatMilliCPerMin),
                       static_cast<Level>(oven_.coolMilliCPerMin),
                       milli(oven_.ambientC),
                       coldest_};
    const Places next(*this, after);
    const std::int64_t first = after.first + std::min(prices.off, prices.cheapestOn);
    const std::int64_t end =
        std::min(below, next.end() + std::max(prices.off, prices.dearestOn + style_.change));
    Row result{below, {}};
    std::size_t size = 0; // found so far
    for (std::int64_t cost = first; cost < end; ++cost) {
        if (cost - first >= mostCosts) {
            return {};
        }
        if (found_.size() < size + width_) {
            found_.resize(2 * (size + width_));
        }
        Level* here = &found_[size];
        const Level* off = next.at(cost - prices.off);
        const NeededNext needed{off, asked.off ? never_.data() : neededOn(next, prices, cost),
                                hottestOf_.data(), blocked_.data()};
        const std::int64_t paid = cost - style_.change - first;
        const auto [best, least, worst] =
            style_.change == 0 ? willDoAtAny(minute, needed, columns_.size(), here)
                               : willDo(minute, needed,
                                        paid < 0 ? unbounded : any_[static_cast<std::size_t>(paid)],
                                        columns_.size(), here);
        any_.push_back(best);
        const Level none = here[columns_.size()] = willDo(minute, off[columns_.size()], best);
        if (least == unbounded && none == unbounded && size == 0) {
            continue;
        }
        size += width_;
        result.first = std::min(result.first, cost);
        if (worst == minute.low || worst == -unbounded) { // more does no more
            break;
        }
    }
    result.levels.assign(found_.begin(), found_.begin() + static_cast<std::ptrdiff_t>(size));
    if (result.levels.empty()) {
        result.levels = never_;
    }
    work_ += static_cast<std::int64_t>(result.levels.size());
    return result;
}

void SettingLevels::narrow(Row& row, std::int64_t low, std::int64_t high)
{
    for (Level& level : row.levels) {
        level = std::max(level, clamped(low));
        level = level > clamped(high) ? unbounded : level;
    }
}

void SettingLevels::takeBetter(Row& row, const Row& other) const
{
    if (row.levels.empty() || other.levels.empty()) {
        row = {};
        return;
    }
    Row result{std::min(row.first, other.first), {}};
    const Places ones(*this, row);
    const Places twos(*this, other);
    const std::int64_t end = std::max(ones.end(), twos.end());
    result.levels.resize(static_cast<std::size_t>(end - result.first) * width_);
    Level* place = result.levels.data();
    for (std::int64_t cost = result.first; cost < end; ++cost) {
        const Level* one = ones.at(cost);
        const Level* two = twos.at(cost);
        for (std::size_t i = 0; i < width_; ++i) {
            place[i] = std::min(one[i], two[i]);
        }
        place += width_;
    }
    work_ += static_cast<std::int64_t>(result.levels.size()) / 4;
    row = std::move(result);
}

std::int64_t SettingLevels::find(const Row& row, std::int64_t milliC, std::size_t from,
                                 std::size_t to) const
{
    if (row.levels.empty()) {
        return 0;
    }
    if (from > to) {
        return plenty;
    }
    const Places places(*this, row);
    const auto isEnough = [&](std::int64_t cost) {
        const Level* levels = places.at(cost);
        return std::any_of(levels + from, levels + to + 1,
                           [&](Level level) { return level <= milliC; });
    };
    std::int64_t low = row.first; // a higher cost needs no higher temperature
    std::int64_t high = places.end();
    while (low < high) {
        const std::int64_t middle = low + (high - low) / 2;
        if (isEnough(middle)) {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    if (low < places.end()) {
        return low;
    }
    return plenty;
}

std::size_t SettingLevels::columnOf(int setting) const
{
    const auto place = std::ranges::lower_bound(columns_, setting, {}, &Column::hottest);
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
