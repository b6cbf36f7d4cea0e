#include "core/safety/trace.h"

#include <algorithm>
#include <utility>

namespace suppertide::safety {

namespace {

constexpr double roomTemperature = 20;     // °C; common practice
constexpr double fridgeTemperature = 4;    // °C; inside every book's limit
constexpr double freezerTemperature = -18; // °C; 0 °F
constexpr double iceBathTemperature = 1;   // °C

double minuteAsNumber(PlanTime time)
{
    return static_cast<double>(minuteOf(time));
}

/// The level of a stay that nobody has computed.
std::optional<double> assumedTemperature(const HistoryPiece& piece)
{
    switch (piece.place) {
    case Place::Counter:
    case Place::AtTable:
        return piece.surroundings.value_or(roomTemperature);
    case Place::Fridge:
        return piece.surroundings.value_or(fridgeTemperature);
    case Place::Freezer:
        return piece.surroundings.value_or(freezerTemperature);
    case Place::IceBath:
        return piece.surroundings.value_or(iceBathTemperature);
    case Place::WarmHold:
        return piece.surroundings;
    case Place::ThawWater:
    case Place::Oven:
    case Place::Hob:
    case Place::Microwave:
    case Place::WaterBath:
        return std::nullopt;
    }
    return std::nullopt;
}

/// Adds segments from one sample to the next, cut where core and surface cross.
void addRun(std::vector<TraceSegment>& trace, const HistoryPiece& piece, const TemperatureSample& a,
            const TemperatureSample& b)
{
    if (b.minute <= a.minute) {
        return;
    }
    const auto add = [&](const TemperatureSample& from, const TemperatureSample& to) {
        trace.push_back({from.minute,
                         to.minute,
                         {from.core, to.core},
                         {from.surface, to.surface},
                         Known::Computed,
                         &piece});
    };
    const double before = a.surface - a.core;
    const double after = b.surface - b.core;
    if (before * after < 0) {
        const double part = before / (before - after);
        const double meeting = LinearRun{a.core, b.core}.at(part);
        const TemperatureSample cross{LinearRun{a.minute, b.minute}.at(part), meeting, meeting};
        add(a, cross);
        add(cross, b);
    } else {
        add(a, b);
    }
}

void addPiece(std::vector<TraceSegment>& trace, const HistoryPiece& piece)
{
    const double from = minuteAsNumber(piece.from);
    const double to = minuteAsNumber(piece.to);
    if (piece.curve.empty()) {
        const auto level = assumedTemperature(piece);
        const double celsius = level.value_or(0);
        if (from < to) {
            trace.push_back({from,
                             to,
                             {celsius, celsius},
                             {celsius, celsius},
                             level ? Known::Assumed : Known::No,
                             &piece});
        }
        return;
    }
    TemperatureSample last = piece.curve.front();
    last.minute = from;
    for (const TemperatureSample& sample : piece.curve) {
        addRun(trace, piece, last, sample);
        last = sample;
    }
    TemperatureSample end = last;
    end.minute = to;
    addRun(trace, piece, last, end);
}

/// Classes change at whole minutes, which need not be those of samples: a segment has the class
/// that it begins with.
void nameFoods(std::vector<TraceSegment>& trace, const FoodHistory& history)
{
    std::vector<Became> changes;
    for (const HistoryEvent& event : history.events) {
        if (const auto* became = std::get_if<Became>(&event)) {
            changes.push_back(*became);
        }
    }
    std::ranges::stable_sort(changes, {}, &Became::at);
    FoodClass food = history.kind.food;
    auto next = changes.begin();
    for (TraceSegment& segment : trace) {
        for (; next != changes.end() && minuteAsNumber(next->at) <= segment.from; ++next) {
            food = next->food;
        }
        segment.food = food;
    }
}

/// The part in which a run is beyond a limit; `sign` 1: above, −1: below.
std::optional<MinuteSpan> beyond(const TraceSegment& segment, const LinearRun& run,
                                 const PublishedTemperature& limit, double sign)
{
    const double first = sign * (limit.reading(run.first) - limit.value) - onTheLimit;
    const double last = sign * (limit.reading(run.last) - limit.value) - onTheLimit;
    if (first <= 0 && last <= 0) {
        return std::nullopt;
    }
    if (first > 0 && last > 0) {
        return MinuteSpan{segment.from, segment.to};
    }
    // Where the limit itself is crossed, not `onTheLimit` beyond it, so that times are exact.
    const double a = first + onTheLimit;
    const double b = last + onTheLimit;
    const double part = std::clamp(a / (a - b), 0.0, 1.0);
    const double crossing = LinearRun{segment.from, segment.to}.at(part);
    return first > 0 ? MinuteSpan{segment.from, crossing} : MinuteSpan{crossing, segment.to};
}

} // namespace

LinearRun TraceSegment::warmest() const
{
    return {std::max(core.first, surface.first), std::max(core.last, surface.last)};
}

LinearRun TraceSegment::coldest() const
{
    return {std::min(core.first, surface.first), std::min(core.last, surface.last)};
}

std::vector<TraceSegment> traceOf(const FoodHistory& history)
{
    std::vector<TraceSegment> trace;
    std::size_t samples = 0;
    for (const HistoryPiece& piece : history.pieces) {
        samples += piece.curve.size() + 2;
    }
    trace.reserve(samples);
    for (const HistoryPiece& piece : history.pieces) {
        addPiece(trace, piece);
    }
    nameFoods(trace, history);
    return trace;
}

std::optional<MinuteSpan> above(const TraceSegment& segment, const LinearRun& run,
                                const PublishedTemperature& limit)
{
    return beyond(segment, run, limit, 1);
}

std::optional<MinuteSpan> below(const TraceSegment& segment, const LinearRun& run,
                                const PublishedTemperature& limit)
{
    return beyond(segment, run, limit, -1);
}

std::optional<MinuteSpan> common(const std::optional<MinuteSpan>& a,
                                 const std::optional<MinuteSpan>& b)
{
    if (!a || !b) {
        return std::nullopt;
    }
    const MinuteSpan both{std::max(a->from, b->from), std::min(a->to, b->to)};
    return both.from < both.to ? std::optional{both} : std::nullopt;
}

std::optional<MinuteSpan> between(const TraceSegment& segment, const PublishedTemperature& lower,
                                  const PublishedTemperature& upper)
{
    return common(above(segment, segment.warmest(), lower),
                  below(segment, segment.coldest(), upper));
}

void append(std::vector<MinuteSpan>& spans, const MinuteSpan& span)
{
    if (span.to <= span.from) {
        return;
    }
    if (!spans.empty() && span.from - spans.back().to < 1e-9) {
        spans.back().to = std::max(spans.back().to, span.to);
    } else {
        spans.push_back(span);
    }
}

double minutesIn(std::span<const MinuteSpan> spans)
{
    double sum = 0;
    for (const MinuteSpan& span : spans) {
        sum += span.length();
    }
    return sum;
}

} // namespace suppertide::safety
