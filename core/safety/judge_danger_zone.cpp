// Minutes off the heat and out of the cold, added up over all stays: no cooking in between begins
// the count anew, for what bacteria leave behind may outlast it.
#include <algorithm>

#include "core/safety/judges.h"

namespace suppertide::safety {

namespace {

/// Whether a stay leaves food standing: off the heat (an oven that is on counts as heat) and out of
/// the cold. Thawing in water is a method of its own.
bool isStanding(const HistoryPiece& piece, const PublishedTemperature& hot)
{
    if (isCold(piece.place) || piece.place == Place::ThawWater) {
        return false;
    }
    if (isHeating(piece.place)) {
        return piece.surroundings && !hot.isReachedBy(*piece.surroundings);
    }
    return true;
}

/// Garlic in oil has a rule of its own, of the same length.
bool isCounted(const TraceSegment& segment, RuleBook book)
{
    return segment.hasTemperature() && watches(book, segment.food) &&
           segment.food != FoodClass::GarlicInOil;
}

/// Of the part that has stood longest: what grew there is in the mixture.
std::vector<MinuteSpan> broughtAlong(const FoodHistory& history)
{
    std::vector<MinuteSpan> most;
    for (const HistoryEvent& event : history.events) {
        const auto* part = std::get_if<MixedIn>(&event);
        if (part != nullptr && minutesIn(part->stood) > minutesIn(most)) {
            most = part->stood;
        }
    }
    return most;
}

std::vector<MinuteSpan> ownStanding(const Case& each, const Rule& rule)
{
    std::vector<MinuteSpan> spans;
    for (const TraceSegment& segment : each.trace) {
        if (isCounted(segment, each.judging.book) && isStanding(*segment.piece, *rule.upper)) {
            if (const auto span = between(segment, *rule.temperature, *rule.upper)) {
                append(spans, *span);
            }
        }
    }
    return spans;
}

/// In order; what a part did while this food stood too counts once.
std::vector<MinuteSpan> joined(std::vector<MinuteSpan> one, const std::vector<MinuteSpan>& other)
{
    one.insert(one.end(), other.begin(), other.end());
    std::ranges::sort(one, {}, &MinuteSpan::from);
    std::vector<MinuteSpan> spans;
    for (const MinuteSpan& span : one) {
        if (!spans.empty() && span.from <= spans.back().to) {
            spans.back().to = std::max(spans.back().to, span.to);
        } else {
            spans.push_back(span);
        }
    }
    return spans;
}

std::vector<MinuteSpan> standing(const Case& each, const Rule& rule)
{
    return joined(ownStanding(each, rule), broughtAlong(each.history));
}

void report(Case& each, const Rule& rule, std::vector<MinuteSpan> spans)
{
    const double minutes = minutesIn(spans);
    if (exceeds(minutes, *rule.minutes)) {
        each.findings.push_back(
            findingOf(rule, Measure::Minutes, minutes, *rule.minutes, std::move(spans),
                      {Remedy::EatSooner, Remedy::Fridge, Remedy::IceBath, Remedy::KeepHotter}));
    }
}

void judgeHotAir(Case& each, const Rule& zone, const Rule& hotAir)
{
    std::vector<MinuteSpan> spans;
    for (const TraceSegment& segment : each.trace) {
        const auto& air = segment.piece->surroundings;
        const bool isHotAir = air && !hotAir.temperature->isKeptUnderBy(*air) &&
                              segment.piece->place != Place::WarmHold &&
                              !isHeating(segment.piece->place);
        if (isHotAir && isCounted(segment, each.judging.book) &&
            isStanding(*segment.piece, *zone.upper)) {
            if (const auto span = between(segment, *zone.temperature, *zone.upper)) {
                append(spans, *span);
            }
        }
    }
    report(each, hotAir, std::move(spans));
}

/// Food that comes out of the cold and never gets above the second limit has longer.
void judgeTimeAlone(Case& each, const Rule& rule, const Rule* cold)
{
    std::vector<MinuteSpan> spans = standing(each, rule);
    if (spans.empty()) {
        return;
    }
    bool staysCold = cold != nullptr;
    bool beganCold = false;
    for (const TraceSegment& segment : each.trace) {
        if (!segment.hasTemperature() || segment.from > spans.back().to) {
            continue;
        }
        const LinearRun warmest = segment.warmest();
        staysCold = staysCold && cold->upper->isKeptUnderBy(std::max(warmest.first, warmest.last));
        beganCold = beganCold || (segment.from <= spans.front().from &&
                                  rule.temperature->isKeptUnderBy(warmest.first));
    }
    report(each, staysCold && beganCold ? *cold : rule, std::move(spans));
}

/// UK: since it was last hot the one limit, since it was last chilled the other.
void judgePeriods(Case& each, const Rule& hot, const Rule& cold)
{
    std::vector<MinuteSpan> afterHeat;
    std::vector<MinuteSpan> afterChilling;
    bool wasHot = false;
    for (const TraceSegment& segment : each.trace) {
        if (!segment.hasTemperature()) {
            wasHot = wasHot || isHeating(segment.piece->place);
            continue;
        }
        const LinearRun warmest = segment.warmest();
        wasHot = hot.upper->isReachedBy(warmest.first) ||
                 (wasHot && !hot.temperature->isKeptUnderBy(warmest.first));
        if (isCounted(segment, each.judging.book) && isStanding(*segment.piece, *hot.upper)) {
            if (const auto span = between(segment, *hot.temperature, *hot.upper)) {
                // Part of it may be hot already while the rest is not.
                const auto nowHot = above(segment, warmest, *hot.upper);
                const double turns = wasHot ? span->from : nowHot ? nowHot->from : span->to;
                append(afterChilling, {span->from, std::min(turns, span->to)});
                append(afterHeat, {std::max(turns, span->from), span->to});
            }
        }
        wasHot = hot.upper->isReachedBy(warmest.last) ||
                 (wasHot && !hot.temperature->isKeptUnderBy(warmest.last));
    }
    report(each, hot, std::move(afterHeat));
    report(each, cold, joined(std::move(afterChilling), broughtAlong(each.history)));
}

/// By which the book counts the minutes that food stands.
const Rule* countedBy(RuleBook book)
{
    for (const Subject subject : {Subject::DangerZone, Subject::TimeAlone, Subject::ColdPeriod}) {
        if (const Rule* rule = ruleAbout(book, subject, FoodClass::CookedDish)) {
            return rule;
        }
    }
    return nullptr;
}

} // namespace

Result<std::vector<MinuteSpan>> stoodSoFar(const FoodHistory& history, PlanTime until,
                                           RuleBook book)
{
    if (const auto fine = checkHistory(history); !fine) {
        return fine.error();
    }
    const Rule* rule = countedBy(book);
    std::vector<MinuteSpan> spans;
    if (rule == nullptr) {
        return spans;
    }
    const Judging judging{book, {}, {}};
    const Case each{history, judging, traceOf(history), {}};
    const auto end = static_cast<double>(minuteOf(until));
    for (MinuteSpan span : standing(each, *rule)) {
        span.to = std::min(span.to, end);
        if (span.from < span.to) {
            spans.push_back(span);
        }
    }
    return spans;
}

void judgeDangerZone(Case& each)
{
    // The class changes on the way; the rules here are about all controlled food.
    constexpr FoodClass any = FoodClass::CookedDish;
    if (const Rule* zone = each.rule(Subject::DangerZone, any)) {
        report(each, *zone, standing(each, *zone));
        if (const Rule* hotAir = each.rule(Subject::DangerZoneHotAir, any)) {
            judgeHotAir(each, *zone, *hotAir);
        }
    }
    if (const Rule* alone = each.rule(Subject::TimeAlone, any)) {
        judgeTimeAlone(each, *alone, each.rule(Subject::TimeAloneCold, any));
    }
    const Rule* hot = each.rule(Subject::HotPeriod, any);
    const Rule* cold = each.rule(Subject::ColdPeriod, any);
    if (hot != nullptr && cold != nullptr) {
        judgePeriods(each, *hot, *cold);
    }
}

} // namespace suppertide::safety
