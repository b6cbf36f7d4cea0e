// Foods with rules of their own: cooked rice, garlic and herbs in oil, low-acid preserves. And what
// could not be judged since nobody has computed it.
#include <algorithm>

#include "core/safety/judges.h"

namespace suppertide::safety {

namespace {

/// From the end of the heat to the cold place into which the rice goes.
void judgeRice(Case& each)
{
    const Rule* rule = each.rule(Subject::RiceCooling, FoodClass::CookedRice);
    if (rule == nullptr) {
        return;
    }
    double offTheHeat = 0;
    bool wasHeated = false;
    for (const TraceSegment& segment : each.trace) {
        const Place place = segment.piece->place;
        if (isHeating(place) || place == Place::WarmHold) {
            offTheHeat = segment.to;
            wasHeated = true;
        } else if (isCold(place)) {
            const double minutes = segment.from - offTheHeat;
            if (wasHeated && segment.food == FoodClass::CookedRice &&
                exceeds(minutes, *rule->minutes)) {
                each.findings.push_back(findingOf(
                    *rule, Measure::Minutes, minutes, *rule->minutes, {{offTheHeat, segment.from}},
                    {Remedy::SplitShallow, Remedy::IceBath, Remedy::EatSooner}));
            }
            wasHeated = false;
        }
    }
}

void judgeGarlic(Case& each)
{
    const Rule* rule = each.rule(Subject::GarlicInOil, FoodClass::GarlicInOil);
    std::vector<MinuteSpan> spans;
    for (const TraceSegment& segment : each.trace) {
        const Place place = segment.piece->place;
        if (segment.food == FoodClass::GarlicInOil && !isCold(place) && !isHeating(place)) {
            append(spans, {segment.from, segment.to});
        }
    }
    const double minutes = minutesIn(spans);
    if (rule != nullptr && exceeds(minutes, *rule->minutes)) {
        each.findings.push_back(findingOf(*rule, Measure::Minutes, minutes, *rule->minutes,
                                          std::move(spans), {Remedy::Fridge, Remedy::Freeze}));
    }
}

void judgeCanning(Case& each)
{
    const Rule* rule = each.rule(Subject::Canning, FoodClass::LowAcidPreserve);
    const bool isPreserve = each.history.kind.food == FoodClass::LowAcidPreserve ||
                            std::ranges::any_of(each.trace, [](const TraceSegment& segment) {
                                return segment.food == FoodClass::LowAcidPreserve;
                            });
    if (rule != nullptr && isPreserve) {
        each.findings.push_back(findingOf(*rule, measureOf(*rule->temperature),
                                          rule->temperature->reading(highestCore(each).value_or(0)),
                                          rule->temperature->value, {},
                                          {Remedy::Fridge, Remedy::Freeze}));
    }
}

} // namespace

void judgeSpecialFoods(Case& each)
{
    judgeRice(each);
    judgeGarlic(each);
    judgeCanning(each);
}

/// Heat, or a warm place, of which nobody knows the temperature.
void judgeUnknown(Case& each)
{
    std::vector<MinuteSpan> spans;
    FoodClass food = FoodClass::DryGoods;
    for (const TraceSegment& segment : each.trace) {
        const bool matters =
            isTimeTemperatureControlled(segment.food) && segment.piece->place != Place::ThawWater;
        if (!segment.hasTemperature() && matters) {
            append(spans, {segment.from, segment.to});
            food = segment.food;
        }
    }
    const Rule* rule = each.rule(Subject::NotKnown, food);
    if (rule != nullptr && !spans.empty()) {
        each.findings.push_back(
            findingOf(*rule, Measure::None, 0, 0, std::move(spans), {Remedy::Measure}));
    }
}

} // namespace suppertide::safety
