// The core temperature of what must be cooked, or its equal in time; the rest after it; the oven of
// a roast; and how long heating through the range of growth takes.
#include <algorithm>

#include "core/safety/judges.h"
#include "core/safety/time_temperature.h"

namespace suppertide::safety {

namespace {

/// Vegetables need their temperature only if they are to be kept hot.
bool mustBeCooked(const Case& each, const Rule& rule)
{
    const FoodHistory& history = each.history;
    const bool isRawEgg = history.kind.food == FoodClass::RawEggParts && !hasHeat(history);
    if (!history.isEaten || isRawEgg) { // raw egg: judgeGuests
        return false;
    }
    if (history.kind.food == FoodClass::CookedVegetable) {
        return hasHeat(history) &&
               std::ranges::any_of(history.pieces, [](const HistoryPiece& piece) {
                   return piece.place == Place::WarmHold;
               });
    }
    return rule.temperature && (isRawAnimal(history.kind.food) || hasHeat(history));
}

bool isUnknown(const Case& each)
{
    return std::ranges::any_of(each.trace, [](const TraceSegment& segment) {
        return isHeating(segment.piece->place) && !segment.hasTemperature();
    });
}

double minutesAbove(const Case& each, const PublishedTemperature& limit)
{
    double minutes = 0;
    for (const TraceSegment& segment : each.trace) {
        if (segment.known == Known::Computed) {
            // At the limit counts: a hair below it is where “above” begins.
            const PublishedTemperature hair{limit.value - 3 * onTheLimit, limit.unit};
            if (const auto span = above(segment, segment.core, hair)) {
                minutes += span->length();
            }
        }
    }
    return minutes;
}

double shareOf(const Case& each, const std::string& table)
{
    const TimeTemperatureTable* found = findTimeTemperatureTable(table);
    if (found == nullptr) {
        return 0;
    }
    double share = 0;
    for (const TraceSegment& segment : each.trace) {
        if (segment.known == Known::Computed) {
            const CoreReading run[] = {{segment.from, segment.core.first},
                                       {segment.to, segment.core.last}};
            share += shareGathered(*found, run);
        }
    }
    return share;
}

/// The minutes of heat, to show where more of it is wanted.
std::vector<MinuteSpan> heat(const Case& each)
{
    std::vector<MinuteSpan> spans;
    for (const TraceSegment& segment : each.trace) {
        if (isHeating(segment.piece->place)) {
            append(spans, {segment.from, segment.to});
        }
    }
    return spans;
}

/// Meant to be rare: told to the cook, not called unsafe, unless it is mince or poultry, or
/// somebody at higher risk eats of it (judgeGuests).
bool isMeantSo(const FoodKind& kind)
{
    const bool isFish = kind.food == FoodClass::FattyFish || kind.food == FoodClass::LeanFish;
    const bool isShell = kind.food == FoodClass::Shellfish || kind.food == FoodClass::CrabOrLobster;
    return (kind.food == FoodClass::RawMeat && kind.has(RiskFact::RareMeat)) ||
           (isFish && kind.has(RiskFact::RawFish)) || (isShell && kind.has(RiskFact::RawShellfish));
}

/// True if the rule's temperature is reached, for its time where it has one.
bool isReached(const Case& each, const Rule& rule)
{
    return hasReached(each, *rule.temperature) &&
           (!rule.minutes || minutesAbove(each, *rule.temperature) >= *rule.minutes - onTheLimit ||
            rule.printedTime.starts_with('<'));
}

void judgeCore(Case& each, const Rule& rule)
{
    if (isReached(each, rule)) {
        return;
    }
    const double share = shareOf(each, rule.equivalents);
    const bool isEqualInTime = share >= 1 - onTheLimit;
    if (isEqualInTime && rule.minutes) {
        return; // rule and equivalents are one rule
    }
    if (!isEqualInTime && isUnknown(each)) {
        return; // judgeUnknown says so
    }
    const double highest = rule.temperature->reading(
        highestCore(each).value_or(each.trace.empty() || !each.trace.front().hasTemperature()
                                       ? 0.0
                                       : each.trace.front().core.first));
    Finding finding =
        findingOf(rule, measureOf(*rule.temperature), highest, rule.temperature->value, heat(each),
                  {Remedy::CookTo, Remedy::Measure});
    if (isEqualInTime) {
        finding.weight = Weight::Caution;
        finding.equivalent = rule.equivalents;
    } else if (isMeantSo(each.history.kind)) {
        finding.weight = Weight::Caution;
    }
    each.findings.push_back(std::move(finding));
}

/// Between reaching the temperature and the end.
void judgeRest(Case& each, const Rule& rule)
{
    for (const TraceSegment& segment : each.trace) {
        const PublishedTemperature& limit = *rule.temperature;
        const bool reaches = segment.known == Known::Computed &&
                             limit.isReachedBy(std::max(segment.core.first, segment.core.last));
        if (!reaches) {
            continue;
        }
        const auto under = below(segment, segment.core, limit);
        const double from = under && under->from <= segment.from ? under->to : segment.from;
        if (exceeds(*rule.minutes, each.end() - from)) {
            each.findings.push_back(findingOf(rule, Measure::Minutes, each.end() - from,
                                              *rule.minutes, {{from, each.end()}},
                                              {Remedy::RestLonger}));
        }
        return;
    }
}

/// Which row of the Food Code's table of ovens a roast of this mass falls under.
constexpr double largeRoast = 4.5; // kg (10 lb): FDA, Food Code 2022, 3-401.11(B)(1)

const Rule* ovenRule(const Case& each, const HistoryPiece& piece)
{
    if (each.judging.book != RuleBook::UsTrade) {
        return each.rule(Subject::RoastingOven, each.history.kind.food);
    }
    if (!each.history.kilograms || each.history.kind.food != FoodClass::RawMeat) {
        return nullptr;
    }
    const bool isLarge = *each.history.kilograms >= largeRoast;
    return piece.isFan ? findRule(isLarge ? "us_trade_roast_oven_fan_large"
                                          : "us_trade_roast_oven_fan_small")
                       : findRule(isLarge ? "us_trade_roast_oven_still_large"
                                          : "us_trade_roast_oven_still_small");
}

/// Trade asks for an oven of some heat only of a roast that relies on time at a lower core.
void judgeOven(Case& each, const Rule* core)
{
    if (each.judging.book == RuleBook::UsTrade && (core == nullptr || isReached(each, *core))) {
        return;
    }
    for (const HistoryPiece& piece : each.history.pieces) {
        const Rule* rule = piece.place == Place::Oven && piece.surroundings && !piece.isCovered
                               ? ovenRule(each, piece)
                               : nullptr;
        if (rule == nullptr || rule->temperature->isReachedBy(*piece.surroundings) ||
            !isRawAnimal(classAt(each.history, piece.from))) {
            continue;
        }
        each.findings.push_back(findingOf(
            *rule, measureOf(*rule->temperature), rule->temperature->reading(*piece.surroundings),
            rule->temperature->value,
            {{static_cast<double>(minuteOf(piece.from)), static_cast<double>(minuteOf(piece.to))}},
            {Remedy::HotterOven, Remedy::Measure}));
        return;
    }
}

/// Minutes of heating with a core between the rule's temperatures, until it is first hot.
void judgeComingUp(Case& each, const Rule& rule)
{
    std::vector<MinuteSpan> spans;
    for (const TraceSegment& segment : each.trace) {
        if (segment.known != Known::Computed || !isHeating(segment.piece->place)) {
            continue;
        }
        if (rule.upper->isReachedBy(segment.core.first)) {
            break;
        }
        if (const auto span = common(above(segment, segment.core, *rule.temperature),
                                     below(segment, segment.core, *rule.upper))) {
            append(spans, *span);
        }
        if (rule.upper->isReachedBy(segment.core.last)) {
            break;
        }
    }
    const double minutes = minutesIn(spans);
    if (exceeds(minutes, *rule.minutes)) {
        each.findings.push_back(findingOf(rule, Measure::Minutes, minutes, *rule.minutes,
                                          std::move(spans),
                                          {Remedy::HotterOven, Remedy::SplitShallow}));
    }
}

void judgeLowBath(Case& each, const Rule& rule)
{
    std::vector<MinuteSpan> spans;
    for (const TraceSegment& segment : each.trace) {
        if (segment.piece->place == Place::WaterBath && segment.hasTemperature() &&
            isTimeTemperatureControlled(segment.food)) {
            if (const auto span = below(segment, segment.core, *rule.temperature)) {
                append(spans, *span);
            }
        }
    }
    const double minutes = minutesIn(spans);
    if (exceeds(minutes, *rule.minutes)) {
        each.findings.push_back(findingOf(rule, Measure::Minutes, minutes, *rule.minutes,
                                          std::move(spans), {Remedy::CookTo, Remedy::EatSooner}));
    }
}

/// What is heated in a microwave oven alone.
bool isMicrowaved(const FoodHistory& history)
{
    return hasHeat(history) && std::ranges::none_of(history.pieces, [](const HistoryPiece& piece) {
               return isHeating(piece.place) && piece.place != Place::Microwave;
           });
}

} // namespace

void judgeCooking(Case& each)
{
    const FoodClass food = each.history.kind.food;
    const Rule* core = each.rule(Subject::CoreTemperature, food);
    const Rule* microwave = each.rule(Subject::Microwave, food);
    if (microwave != nullptr && each.history.isEaten && isMicrowaved(each.history)) {
        judgeCore(each, *microwave);
    } else if (core != nullptr && mustBeCooked(each, *core)) {
        judgeCore(each, *core);
    }
    const Rule* rest = each.rule(Subject::Rest, food);
    if (rest != nullptr && each.history.isEaten) {
        judgeRest(each, *rest);
    }
    judgeOven(each, core);
    if (const Rule* comingUp = each.rule(Subject::ComingUp, food)) {
        judgeComingUp(each, *comingUp);
    }
    if (const Rule* bath = each.rule(Subject::LowBath, FoodClass::CookedDish)) {
        judgeLowBath(each, *bath);
    }
}

} // namespace suppertide::safety
