// What guests at higher risk should not eat, and freezing of fish that is eaten raw.
#include <algorithm>

#include "core/safety/judges.h"

namespace suppertide::safety {

namespace {

void report(Case& each, Subject subject, std::vector<Remedy> remedies)
{
    const Rule* rule = each.rule(subject, FoodClass::CookedDish);
    if (rule != nullptr) {
        Finding finding = findingOf(*rule, Measure::None, 0, 0, {}, std::move(remedies));
        finding.guests = each.judging.guests;
        each.findings.push_back(std::move(finding));
    }
}

/// Reached the book's temperature for its class, or the equal in time: what judgeCore found.
bool isCooked(const Case& each)
{
    const Rule* rule = each.rule(Subject::CoreTemperature, each.history.kind.food);
    return rule != nullptr && rule->temperature && hasHeat(each.history) &&
           std::ranges::none_of(each.findings, [rule](const Finding& finding) {
               return finding.rule == rule->id && finding.equivalent.empty();
           });
}

/// 160 °F makes egg safe to eat in a dish that is not cooked further; 165 °F all else that was
/// ready to eat. Source: USDA and foodsafety.gov, Safe Minimum Internal Temperatures.
bool isHeated(const Case& each, double fahrenheit)
{
    return hasReached(each, {fahrenheit, TemperatureUnit::Fahrenheit});
}

void judgeEgg(Case& each)
{
    const FoodKind& kind = each.history.kind;
    const bool isRaw = kind.has(RiskFact::RawEgg) || (kind.food == FoodClass::RawEggParts);
    const bool isLion = each.judging.book == RuleBook::UkEu && kind.has(RiskFact::LionEgg);
    if (!isRaw || kind.has(RiskFact::PasteurisedEgg) || isLion || isHeated(each, 160)) {
        return;
    }
    if (each.hasGuestsAtRisk()) {
        report(each, Subject::RawEgg,
               {Remedy::Pasteurised, Remedy::CookTo, Remedy::AnotherPortion});
    } else if (const Rule* advice = findRule("raw_egg"); advice->isIn(each.judging.book)) {
        each.findings.push_back(
            findingOf(*advice, Measure::None, 0, 0, {}, {Remedy::Pasteurised, Remedy::CookTo}));
    }
}

/// One freezing, long and cold enough by one of the two rows.
bool isFrozenForParasites(const Case& each)
{
    for (const Rule* rule :
         rulesAbout(each.judging.book, Subject::Parasites, FoodClass::FattyFish)) {
        std::vector<MinuteSpan> cold;
        for (const TraceSegment& segment : each.trace) {
            const LinearRun warmest = segment.warmest();
            const bool isFrozen =
                segment.piece->place == Place::Freezer && segment.hasTemperature() &&
                rule->temperature->isKeptUnderBy(std::max(warmest.first, warmest.last));
            if (isFrozen) {
                append(cold, {segment.from, segment.to});
            }
        }
        if (std::ranges::any_of(cold, [rule](const MinuteSpan& span) {
                return span.length() >= *rule->minutes - onTheLimit;
            })) {
            return true;
        }
    }
    return false;
}

void judgeRawFish(Case& each)
{
    const FoodKind& kind = each.history.kind;
    if (!kind.has(RiskFact::RawFish) || isCooked(each)) {
        return;
    }
    if (each.hasGuestsAtRisk()) {
        report(each, Subject::RawFish, {Remedy::CookTo, Remedy::AnotherPortion});
    }
    if (!kind.has(RiskFact::SoldForEatingRaw) && !isFrozenForParasites(each)) {
        report(each, Subject::Parasites, {Remedy::FrozenFish, Remedy::CookTo});
    }
}

} // namespace

void judgeGuests(Case& each)
{
    if (!each.history.isEaten) {
        return;
    }
    const FoodKind& kind = each.history.kind;
    judgeEgg(each);
    judgeRawFish(each);
    if (!each.hasGuestsAtRisk()) {
        return;
    }
    if (kind.has(RiskFact::RareMeat) && !isCooked(each)) {
        report(each, Subject::RareMeat, {Remedy::CookTo, Remedy::AnotherPortion});
    }
    if (kind.has(RiskFact::RawShellfish) && !isCooked(each)) {
        report(each, Subject::RawShellfish, {Remedy::CookTo, Remedy::AnotherPortion});
    }
    const bool isColdSmoked =
        kind.has(RiskFact::ColdSmokedFish) || kind.food == FoodClass::ColdSmokedFish;
    if (isColdSmoked && !isHeated(each, 165)) {
        report(each, Subject::ColdSmokedFish, {Remedy::CookTo, Remedy::AnotherPortion});
    }
    if (kind.has(RiskFact::UnpasteurisedMilk) && !isHeated(each, 165)) {
        report(each, Subject::UnpasteurisedMilk,
               {Remedy::Pasteurised, Remedy::CookTo, Remedy::AnotherPortion});
    }
}

} // namespace suppertide::safety
