#include "core/safety/judge_history.h"

#include <algorithm>
#include <limits>

#include "core/safety/judges.h"

namespace suppertide::safety {

Measure measureOf(const PublishedTemperature& temperature)
{
    return temperature.unit == TemperatureUnit::Celsius ? Measure::Celsius : Measure::Fahrenheit;
}

Finding findingOf(const Rule& rule, Measure measure, double measured, double limit,
                  std::vector<MinuteSpan> counts, std::vector<Remedy> remedies)
{
    return {rule.id,           rule.weight,         measure, measured, limit,
            std::move(counts), std::move(remedies), {},      {}};
}

std::optional<double> highestCore(const Case& each)
{
    std::optional<double> highest;
    for (const TraceSegment& segment : each.trace) {
        if (segment.known == Known::Computed) {
            const double warmer = std::max(segment.core.first, segment.core.last);
            highest = std::max(highest.value_or(warmer), warmer);
        }
    }
    return highest;
}

bool hasReached(const Case& each, const PublishedTemperature& temperature)
{
    const auto highest = highestCore(each);
    return highest && temperature.isReachedBy(*highest);
}

bool hasHeat(const FoodHistory& history)
{
    return std::ranges::any_of(history.pieces,
                               [](const HistoryPiece& piece) { return isHeating(piece.place); });
}

Result<std::vector<Finding>> judgeHistory(const FoodHistory& history, const Judging& judging)
{
    if (const auto fine = checkHistory(history); !fine) {
        return fine.error();
    }
    Case each{history, judging, traceOf(history), {}};
    judgeDangerZone(each);
    judgeCooling(each);
    judgeHolding(each);
    judgeCooking(each);
    judgeReheating(each);
    judgeDays(each);
    judgeThawing(each);
    judgeGuests(each);
    judgeSpecialFoods(each);
    judgeUnknown(each);
    std::ranges::stable_sort(each.findings, {}, [](const Finding& finding) {
        return std::pair(finding.weight, finding.counts.empty()
                                             ? std::numeric_limits<double>::lowest()
                                             : finding.counts.front().from);
    });
    return std::move(each.findings);
}

} // namespace suppertide::safety
