#include "tests/core/assign/small_ovens.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>
#include <set>
#include <tuple>

#include "core/problem/oven_curve.h"

namespace suppertide::test {

namespace {

constexpr int ambient = 20;
constexpr int top = 46;

bool accepts(const OvenStay& stay, std::int64_t milliC)
{
    return std::int64_t{stay.acceptLow} * 1000 <= milliC &&
           milliC <= std::int64_t{stay.acceptHigh} * 1000;
}

bool accepted(const std::vector<OvenStay>& stays, std::int64_t minute, std::int64_t milliC)
{
    return std::all_of(stays.begin(), stays.end(), [&](const OvenStay& stay) {
        const bool inside =
            minuteOf(stay.during.start) <= minute && minute <= minuteOf(stay.during.end);
        return !inside || accepts(stay, milliC);
    });
}

bool mustBeOff(const std::vector<OvenStay>& stays, std::int64_t minute)
{
    return std::any_of(stays.begin(), stays.end(), [&](const OvenStay& stay) {
        return stay.off && stay.during.contains(planTime(minute));
    });
}

constexpr int noSetting = ambient - 1;
using OvenStates = std::map<std::tuple<std::int64_t, int, bool>, std::int64_t>;

/// What stays that begin in a minute lose by the setting that is in force.
std::int64_t preferredCost(const std::vector<OvenStay>& stays, std::int64_t minute, int inForce)
{
    std::int64_t sum = 0;
    for (const OvenStay& stay : stays) {
        if (stay.prefer && minuteOf(stay.during.start) == minute) {
            sum += std::abs(inForce - *stay.prefer);
        }
    }
    return sum;
}

std::int64_t afterOneMinute(const Oven& oven, std::int64_t now, int setting)
{
    const std::int64_t target = std::int64_t{setting} * 1000;
    return target >= now ? std::min(target, now + oven.heatMilliCPerMin)
                         : std::max(target, now - oven.coolMilliCPerMin);
}

/// From each temperature, last setting and whether on, to those a minute later.
OvenStates minuteLater(const Oven& oven, const std::vector<OvenStay>& stays, std::int64_t minute,
                       const OvenStates& reached, const OvenProgramStyle& style)
{
    OvenStates after;
    const int hottest = mustBeOff(stays, minute) ? noSetting : top;
    const bool within = std::any_of(stays.begin(), stays.end(), [&](const OvenStay& stay) {
        return minuteOf(stay.during.start) < minute && minute < minuteOf(stay.during.end);
    });
    for (const auto& [state, cost] : reached) {
        const auto& [now, last, on] = state;
        if (!accepted(stays, minute, now)) {
            continue;
        }
        for (int setting = noSetting; setting <= hottest; ++setting) {
            const bool sets = setting != noSetting;
            const int inForce = sets ? setting : oven.ambientC;
            std::int64_t sum = cost + style.preferC * preferredCost(stays, minute, inForce);
            if (sets) {
                sum += style.onMinute +
                       (on ? 0 : style.switchOn + (within ? style.switchOnWithin : 0)) +
                       (last != noSetting && last != setting ? style.change : 0);
            }
            const auto [place, isNew] = after.try_emplace(
                {afterOneMinute(oven, now, inForce), sets ? setting : last, sets}, sum);
            place->second = std::min(place->second, sum);
        }
    }
    return after;
}

} // namespace

Oven smallOven(Random& random)
{
    constexpr std::array<std::int64_t, 4> heats{2000, 3000, 5000, 3500};
    constexpr std::array<std::int64_t, 3> cools{1000, 2000, 1500};
    Oven oven;
    oven.id.push_back('o');
    oven.shelves = 4;
    oven.minC = ambient;
    oven.maxC = top;
    oven.startC = ambient;
    oven.ambientC = ambient;
    oven.heatMilliCPerMin = heats.at(static_cast<std::size_t>(random.between(0, 3)));
    oven.coolMilliCPerMin = cools.at(static_cast<std::size_t>(random.between(0, 2)));
    return oven;
}

OvenStay smallStay(Random& random, std::int64_t horizon)
{
    const std::int64_t start = random.between(0, horizon - 1);
    OvenStay stay;
    stay.during = interval(start, random.between(start + 1, horizon));
    stay.acceptLow = static_cast<int>(random.between(ambient, 36));
    stay.acceptHigh = stay.acceptLow + static_cast<int>(random.between(0, 8));
    if (random.oneIn(2)) {
        stay.prefer = static_cast<int>(random.between(stay.acceptLow, stay.acceptHigh));
    }
    return stay;
}

bool someProgramKeeps(const Oven& oven, const std::vector<OvenStay>& stays, std::int64_t horizon)
{
    std::set<std::int64_t> reached{std::int64_t{oven.startC} * 1000};
    for (std::int64_t minute = 0; minute < horizon; ++minute) {
        std::set<std::int64_t> after;
        const bool off = mustBeOff(stays, minute);
        for (const std::int64_t now : reached) {
            if (!accepted(stays, minute, now)) {
                continue;
            }
            for (int setting = ambient; setting <= (off ? ambient : top); ++setting) {
                after.insert(afterOneMinute(oven, now, setting));
            }
        }
        reached = std::move(after);
    }
    return std::any_of(reached.begin(), reached.end(),
                       [&](std::int64_t milliC) { return accepted(stays, horizon, milliC); });
}

std::optional<std::int64_t> leastProgramCost(const Oven& oven, const std::vector<OvenStay>& stays,
                                             std::int64_t horizon, const OvenProgramStyle& style)
{
    OvenStates reached{{{std::int64_t{oven.startC} * 1000, noSetting, false}, 0}};
    for (std::int64_t minute = 0; minute < horizon; ++minute) {
        reached = minuteLater(oven, stays, minute, reached, style);
    }
    std::optional<std::int64_t> least;
    for (const auto& [state, cost] : reached) {
        if (accepted(stays, horizon, std::get<0>(state))) {
            least = std::min(least.value_or(cost), cost);
        }
    }
    return least;
}

bool programKeeps(const Oven& oven, const OvenProgram& program, const OvenStay& stay)
{
    const OvenCurve curve(oven, program);
    for (PlanTime at = stay.during.start; at <= stay.during.end; at += Minutes{1}) {
        if (!accepts(stay, curve.milliC(at)) ||
            (stay.off && at < stay.during.end && curve.setting(at))) {
            return false;
        }
    }
    return true;
}

} // namespace suppertide::test
