// Reheating: the temperature, the time in which it is reached, and once only where that is the
// rule.
#include <algorithm>

#include "core/safety/judges.h"
#include "core/safety/time_temperature.h"

namespace suppertide::safety {

namespace {

/// The heat that follows an event, up to the first stay elsewhere.
struct Warming
{
    std::vector<const TraceSegment*> segments;
    bool isKnown = true;

    [[nodiscard]] double end(double otherwise) const
    {
        return segments.empty() ? otherwise : segments.back()->to;
    }
};

Warming warmingFrom(const Case& each, double start)
{
    Warming warming;
    for (const TraceSegment& segment : each.trace) {
        if (segment.to <= start) {
            continue;
        }
        if (!isHeating(segment.piece->place) && segment.piece->place != Place::WarmHold) {
            if (warming.segments.empty()) {
                continue;
            }
            break;
        }
        warming.segments.push_back(&segment);
        warming.isKnown = warming.isKnown && segment.known == Known::Computed;
    }
    return warming;
}

/// When the coldest part first reaches a limit.
std::optional<double> reachedAt(const Warming& warming, const PublishedTemperature& limit)
{
    for (const TraceSegment* segment : warming.segments) {
        const LinearRun coldest = segment->coldest();
        if (limit.isReachedBy(coldest.first)) {
            return segment->from;
        }
        if (limit.isReachedBy(coldest.last)) {
            const auto under = below(*segment, coldest, limit);
            return under ? under->to : segment->to;
        }
    }
    return std::nullopt;
}

double highest(const Warming& warming, const PublishedTemperature& unit)
{
    double celsius = 0;
    for (const TraceSegment* segment : warming.segments) {
        const LinearRun coldest = segment->coldest();
        celsius = std::max({celsius, coldest.first, coldest.last});
    }
    return unit.reading(celsius);
}

bool isEqualInTime(const Warming& warming, const std::string& table)
{
    const TimeTemperatureTable* found = findTimeTemperatureTable(table);
    if (found == nullptr) {
        return false;
    }
    double share = 0;
    for (const TraceSegment* segment : warming.segments) {
        const LinearRun coldest = segment->coldest();
        const CoreReading run[] = {{segment->from, coldest.first}, {segment->to, coldest.last}};
        share += shareGathered(*found, run);
    }
    return share >= 1 - onTheLimit;
}

void judgeTemperature(Case& each, const Rule& rule, const Warming& warming, double start)
{
    const bool isMet = rule.equivalents.empty() ? reachedAt(warming, *rule.temperature).has_value()
                                                : isEqualInTime(warming, rule.equivalents);
    if (!isMet) {
        each.findings.push_back(
            findingOf(rule, measureOf(*rule.temperature), highest(warming, *rule.temperature),
                      rule.temperature->value, {{start, warming.end(each.end())}},
                      {Remedy::ReheatTo, Remedy::SplitShallow}));
    }
}

void judgeOne(Case& each, const Reheated& event)
{
    const auto start = static_cast<double>(minuteOf(event.at));
    const FoodClass food = classAt(each.history, event.at);
    const Rule* rule = each.rule(Subject::Reheating, food);
    // Trade may reheat to any temperature what is eaten at once: Food Code 2022, 3-403.10.
    if (rule == nullptr || (rule->strength == Strength::TradeLimit && !event.forHotHolding)) {
        return;
    }
    const Warming warming = warmingFrom(each, start);
    if (!warming.isKnown) {
        return; // judgeUnknown says so
    }
    judgeTemperature(each, *rule, warming, start);
    const Rule* time = each.rule(Subject::ReheatingTime, food);
    const auto reached = reachedAt(warming, *rule->temperature);
    if (time != nullptr && reached && exceeds(*reached - start, *time->minutes)) {
        each.findings.push_back(findingOf(*time, Measure::Minutes, *reached - start, *time->minutes,
                                          {{start, *reached}},
                                          {Remedy::SplitShallow, Remedy::ReheatTo}));
    }
}

void judgeOnce(Case& each, std::vector<Reheated> events)
{
    std::ranges::stable_sort(events, {}, &Reheated::at);
    if (events.size() < 2) {
        return;
    }
    if (const Rule* once = each.rule(Subject::ReheatingOnce, classAt(each.history, events[1].at))) {
        const auto second = static_cast<double>(minuteOf(events[1].at));
        each.findings.push_back(findingOf(*once, Measure::Times, static_cast<double>(events.size()),
                                          1, {{second, std::max(second, each.end())}},
                                          {Remedy::ReheatOnce}));
    }
}

} // namespace

void judgeReheating(Case& each)
{
    std::vector<Reheated> events;
    for (const HistoryEvent& event : each.history.events) {
        if (const auto* reheated = std::get_if<Reheated>(&event)) {
            events.push_back(*reheated);
            judgeOne(each, *reheated);
        }
    }
    judgeOnce(each, std::move(events));
}

} // namespace suppertide::safety
