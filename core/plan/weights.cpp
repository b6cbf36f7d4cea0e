#include "core/plan/weights.h"

#include <algorithm>

namespace suppertide {

namespace {

constexpr int calmest = 100;
constexpr int midway = 50;
constexpr std::int64_t minutesPerHour = 60;
/// An oven is not switched off to be on again within so many minutes.
constexpr std::int64_t minutesWorthSwitching = 20;

/// For a percent of a cook and minute.
constexpr std::int64_t calmestRate = 4;

/// For none, some, much.
std::int64_t byWish(Wish wish, std::int64_t some, std::int64_t much)
{
    switch (wish) {
    case Wish::None:
        return 0;
    case Wish::Some:
        return some;
    case Wish::Much:
        return much;
    }
    return some;
}

} // namespace

std::int64_t Weights::lossMinute(int pointsPerHour) const
{
    const std::int64_t usual = pointsPerHour * costUnitsPerPoint / minutesPerHour;
    return std::max<std::int64_t>(usual * (calmest - calm) / midway, usual / 10);
}

Weights weightsFor(const Preferences& preferences, Closeness closeness)
{
    constexpr std::int64_t point = costUnitsPerPoint;
    Weights weights;
    weights.calm = std::clamp(preferences.calm, 0, calmest);
    weights.lateMinute = 5 * point;
    weights.quietRate = calmestRate * weights.calm / calmest;
    weights.ovenChange = byWish(preferences.fewOvenChanges, 2 * point, 6 * point);
    weights.ovenOnMinute = 7;
    weights.ovenSwitchOn = minutesWorthSwitching * weights.ovenOnMinute;
    // Nobody stands by to switch an oven off and on to hold a temperature.
    weights.ovenSwitchOnWithin = std::max(2 * point, weights.ovenChange);
    weights.preferC = point / 100;
    weights.session = byWish(preferences.fewSessions, point, 3 * point);
    weights.moved = byWish(preferences.stayClose, point / 40, point / 8);
    weights.movedMinute = byWish(preferences.stayClose, 1, 5);
    if (closeness == Closeness::LeastChange) {
        weights.lateMinute = 300 * point;
        weights.moved = 200 * point;
        weights.movedMinute = point / 20;
    }
    return weights;
}

} // namespace suppertide
