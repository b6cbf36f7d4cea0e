// Trace: a food's history as linear pieces of time and temperature in one row, so that each rule
// can be judged in one pass. For judge_history only.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/safety/finding.h"
#include "core/safety/food_history.h"

namespace suppertide::safety {

/// Whence a temperature is known.
enum class Known
{
    Computed, // from the history's curve
    Assumed,  // from the place: nobody computed it
    No
};

/// A value that goes linearly from one to the other, in °C.
struct LinearRun
{
    double first = 0;
    double last = 0;

    [[nodiscard]] double at(double part) const { return first + part * (last - first); }
};

/// Core and surface do not cross within it, so that the warmer and the colder are linear too.
struct TraceSegment
{
    double from = 0;
    double to = 0;
    LinearRun core;
    LinearRun surface;
    Known known = Known::No;
    const HistoryPiece* piece = nullptr;
    FoodClass food = FoodClass::DryGoods; // what it is then

    [[nodiscard]] double length() const { return to - from; }
    [[nodiscard]] bool hasTemperature() const { return known != Known::No; }
    [[nodiscard]] LinearRun warmest() const;
    [[nodiscard]] LinearRun coldest() const;
};

/// Linear in pieces and samples times events. The history must outlive it and have been checked.
[[nodiscard]] std::vector<TraceSegment> traceOf(const FoodHistory& history);

/// The part of a segment in which `run` is above, or below, a limit in the limit's unit; less than
/// `onTheLimit` beyond it does not count. Nothing if there is none.
[[nodiscard]] std::optional<MinuteSpan> above(const TraceSegment& segment, const LinearRun& run,
                                              const PublishedTemperature& limit);
[[nodiscard]] std::optional<MinuteSpan> below(const TraceSegment& segment, const LinearRun& run,
                                              const PublishedTemperature& limit);
/// What two spans have in common.
[[nodiscard]] std::optional<MinuteSpan> common(const std::optional<MinuteSpan>& a,
                                               const std::optional<MinuteSpan>& b);
/// The span in which some part of the food is between the two limits.
[[nodiscard]] std::optional<MinuteSpan> between(const TraceSegment& segment,
                                                const PublishedTemperature& lower,
                                                const PublishedTemperature& upper);

/// Appends a span, joining it to the last one where they meet.
void append(std::vector<MinuteSpan>& spans, const MinuteSpan& span);
[[nodiscard]] double minutesIn(std::span<const MinuteSpan> spans);

} // namespace suppertide::safety
