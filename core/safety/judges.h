// The rules of judge_history, a file for each group of them. Each adds what it finds.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/safety/judge_history.h"
#include "core/safety/trace.h"

namespace suppertide::safety {

/// What all judges look at, and where they put what they find.
struct Case
{
    const FoodHistory& history;
    const Judging& judging;
    std::vector<TraceSegment> trace;
    std::vector<Finding> findings;

    [[nodiscard]] const Rule* rule(Subject subject, FoodClass food) const
    {
        return ruleAbout(judging.book, subject, food);
    }
    [[nodiscard]] bool hasGuestsAtRisk() const { return !judging.guests.empty(); }
    [[nodiscard]] double end() const { return trace.empty() ? 0 : trace.back().to; }
};

[[nodiscard]] Measure measureOf(const PublishedTemperature& temperature);
/// A finding of a rule with its own weight.
[[nodiscard]] Finding findingOf(const Rule& rule, Measure measure, double measured, double limit,
                                std::vector<MinuteSpan> counts, std::vector<Remedy> remedies);
/// Minutes that are more than a limit by more than what is lost in double.
[[nodiscard]] inline bool exceeds(double minutes, double limit)
{
    return minutes > limit + onTheLimit;
}
/// The highest core that the history has computed; nothing without a curve.
[[nodiscard]] std::optional<double> highestCore(const Case& each);
/// Whether the core is known to have reached a temperature.
[[nodiscard]] bool hasReached(const Case& each, const PublishedTemperature& temperature);
[[nodiscard]] bool hasHeat(const FoodHistory& history);

void judgeDangerZone(Case& each);
void judgeCooling(Case& each);
void judgeHolding(Case& each);
void judgeCooking(Case& each);
void judgeReheating(Case& each);
void judgeDays(Case& each);
void judgeThawing(Case& each);
void judgeGuests(Case& each);
void judgeSpecialFoods(Case& each); // rice, garlic in oil, preserves
void judgeUnknown(Case& each);      // what nobody has computed

} // namespace suppertide::safety
