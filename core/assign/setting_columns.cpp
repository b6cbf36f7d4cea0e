#include "core/assign/setting_columns.h"

#include <algorithm>
#include <cstddef>
#include <cstdlib>
#include <set>

namespace suppertide {

namespace {

constexpr int narrowColumns = 3; // degrees
constexpr std::int64_t dear = std::int64_t{1} << 50;

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

/// Up to each of these.
std::vector<SettingColumn> columnsUpTo(const Oven& oven, const std::set<int>& ends)
{
    int coolest = oven.minC;
    std::vector<SettingColumn> columns;
    for (const int hottest : ends) {
        columns.push_back({coolest, hottest});
        coolest = hottest + 1;
    }
    return columns;
}

} // namespace

std::vector<SettingColumn> settingColumns(const Oven& oven, const std::vector<OvenStay>& stays,
                                          const OvenProgramStyle& style, std::int64_t below)
{
    std::set<int> ends{oven.maxC};
    for (const OvenStay& stay : stays) {
        ends.insert(std::clamp(stay.acceptHigh, oven.minC, oven.maxC));
    }
    const std::vector<std::int64_t> least = leastIfInForce(oven, stays, style);
    int lowest = oven.maxC; // that is preferred
    int highest = oven.minC;
    for (const OvenStay& stay : stays) {
        lowest = std::min(lowest, stay.prefer.value_or(lowest));
        highest = std::max(highest, stay.prefer.value_or(highest));
    }
    for (int setting = oven.minC; setting <= oven.maxC; ++setting) {
        // Between two that are preferred a column must not be near to both.
        const bool isBetween =
            lowest < setting && setting < highest && setting % narrowColumns == 0;
        if (isBetween && style.preferC > 0) {
            ends.insert(setting);
        }
        if (least[static_cast<std::size_t>(setting - oven.minC)] < below) {
            ends.insert(std::max(setting - 1, oven.minC));
            ends.insert(setting);
        }
    }
    return columnsUpTo(oven, ends);
}

std::vector<SettingColumn> sharedColumns(const Oven& oven, const std::vector<OvenStay>& stays)
{
    std::set<int> ends{oven.maxC};
    const auto tellApart = [&](int setting) {
        for (const int end : {setting - 1, setting}) {
            if (oven.minC <= end && end <= oven.maxC) {
                ends.insert(end);
            }
        }
    };
    for (const OvenStay& one : stays) {
        tellApart(one.acceptLow);
        tellApart(one.acceptHigh);
        if (!one.prefer) {
            continue;
        }
        tellApart(*one.prefer);
        for (const OvenStay& other : stays) {
            if (other.prefer > one.prefer) {
                const int last = std::min(*other.prefer, one.acceptHigh);
                for (int c = std::max(*one.prefer, other.acceptLow); c <= last; ++c) {
                    tellApart(c);
                }
            }
        }
    }
    return columnsUpTo(oven, ends);
}

std::vector<std::int64_t> leastForSettings(const Oven& oven, const std::vector<int>& preferred,
                                           const OvenProgramStyle& style)
{
    std::vector<std::int64_t> result;
    for (const ByDegree& least : leastByDegree(oven, preferred, style)) {
        result.push_back(*std::ranges::min_element(least));
    }
    return result;
}

} // namespace suppertide
