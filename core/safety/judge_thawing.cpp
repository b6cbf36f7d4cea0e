// Thawing: by which method, how warm in running water, and straight to the heat where that is
// asked.
#include <algorithm>

#include "core/safety/judges.h"

namespace suppertide::safety {

namespace {

void judgeMethod(Case& each, const Thawed& event)
{
    const FoodClass food = classAt(each.history, event.at);
    const Rule* rule = each.rule(Subject::Thawing, food);
    if (rule == nullptr || event.method != ThawBy::Counter) {
        return;
    }
    std::vector<MinuteSpan> spans;
    for (const HistoryPiece& piece : each.history.pieces) {
        if (piece.from <= event.at && event.at < piece.to) {
            append(spans, {static_cast<double>(minuteOf(event.at)),
                           static_cast<double>(minuteOf(piece.to))});
        }
    }
    each.findings.push_back(findingOf(*rule, Measure::None, 0, 0, std::move(spans),
                                      {Remedy::ThawInFridge, Remedy::DayLater}));
}

/// The water's temperature, and the minutes for which raw food is above the rule's second limit.
void judgeWater(Case& each, const Rule& rule)
{
    std::vector<MinuteSpan> warm;
    for (const TraceSegment& segment : each.trace) {
        if (segment.piece->place != Place::ThawWater || !rule.isAbout(segment.food)) {
            continue;
        }
        const auto& water = segment.piece->surroundings;
        if (water && !rule.temperature->isKeptUnderBy(*water)) {
            each.findings.push_back(findingOf(
                rule, measureOf(*rule.temperature), rule.temperature->reading(*water),
                rule.temperature->value, {{segment.from, segment.to}}, {Remedy::ThawInFridge}));
            return;
        }
        if (segment.hasTemperature()) {
            if (const auto span = above(segment, segment.warmest(), *rule.upper)) {
                append(warm, *span);
            }
        }
    }
    const double minutes = minutesIn(warm);
    if (exceeds(minutes, *rule.minutes)) {
        each.findings.push_back(findingOf(rule, Measure::Minutes, minutes, *rule.minutes,
                                          std::move(warm), {Remedy::ThawInFridge}));
    }
}

/// Thawed in water or a microwave oven, then back into the cold before it is cooked.
void judgeNextStay(Case& each, const Thawed& event)
{
    const bool mustCook = event.method == ThawBy::ColdWater || event.method == ThawBy::Microwave;
    const Rule* rule = each.rule(Subject::CookAfterThawing, classAt(each.history, event.at));
    if (!mustCook || rule == nullptr) {
        return;
    }
    bool isThawing = true;
    for (const HistoryPiece& piece : each.history.pieces) {
        if (piece.to <= event.at) {
            continue;
        }
        if (isThawing) { // the stay in which it thaws
            isThawing = false;
            continue;
        }
        if (isHeating(piece.place)) {
            return;
        }
        if (isCold(piece.place)) {
            each.findings.push_back(findingOf(*rule, Measure::None, 0, 0,
                                              {{static_cast<double>(minuteOf(piece.from)),
                                                static_cast<double>(minuteOf(piece.to))}},
                                              {Remedy::CookAtOnce, Remedy::ThawInFridge}));
            return;
        }
    }
}

} // namespace

void judgeThawing(Case& each)
{
    for (const HistoryEvent& event : each.history.events) {
        if (const auto* thawed = std::get_if<Thawed>(&event)) {
            judgeMethod(each, *thawed);
            judgeNextStay(each, *thawed);
        }
    }
    if (const Rule* water = each.rule(Subject::ThawingWater, FoodClass::CookedDish)) {
        judgeWater(each, *water);
    }
}

} // namespace suppertide::safety
