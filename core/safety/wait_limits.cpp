#include "core/safety/wait_limits.h"

#include <algorithm>
#include <cmath>

#include "core/safety/storage_days.h"

namespace suppertide::safety {

namespace {

Minutes wholeMinutes(double minutes)
{
    return Minutes{std::llround(std::floor(minutes + onTheLimit))};
}

void tighten(std::optional<WaitLimit>& limit, const WaitLimit& other)
{
    if (!limit || other.most < limit->most) {
        limit = other;
    }
}

/// The rule of standing about that holds first.
std::optional<WaitLimit> standingLimit(RuleBook book, const Stay& stay)
{
    std::optional<WaitLimit> limit;
    const auto take = [&](Subject subject) {
        if (const Rule* rule = ruleAbout(book, subject, stay.food)) {
            const Minutes left = wholeMinutes(*rule->minutes) - stay.standingBefore;
            tighten(limit, {std::max(left, Minutes{0}), rule->id});
        }
    };
    take(Subject::GarlicInOil);
    if (stay.food == FoodClass::GarlicInOil) {
        return limit;
    }
    take(Subject::DangerZone);
    take(Subject::TimeAlone);
    take(stay.isHot ? Subject::HotPeriod : Subject::ColdPeriod);
    const Rule* hotAir = ruleAbout(book, Subject::DangerZoneHotAir, stay.food);
    if (hotAir != nullptr && stay.surroundings && stay.place != Place::WarmHold &&
        !hotAir->temperature->isKeptUnderBy(*stay.surroundings)) {
        take(Subject::DangerZoneHotAir);
    }
    if (stay.isHot && stay.food == FoodClass::CookedRice) {
        take(Subject::RiceCooling);
    }
    return limit;
}

std::optional<WaitLimit> fridgeLimit(RuleBook book, FoodClass food)
{
    std::optional<WaitLimit> limit;
    const StorageRow* row = storageOf(book, food);
    if (row != nullptr && row->fridge) {
        limit = WaitLimit{row->fridge->most, "storage/" + row->id};
    }
    const Rule* mark = ruleAbout(book, Subject::DateMark, food);
    if (mark != nullptr && !isRawAnimal(food)) {
        constexpr Minutes day{1440};
        tighten(limit, {wholeMinutes(*mark->minutes) - day, mark->id});
    }
    return limit;
}

} // namespace

PublishedTemperature keepWarmAt(RuleBook book, FoodClass food)
{
    // Dry goods have no limit of their own; what is kept warm with other food is kept as that.
    const Rule* rule = ruleAbout(book, Subject::HotHolding,
                                 isTimeTemperatureControlled(food) ? food : FoodClass::CookedDish);
    ensures(rule != nullptr, "each book says how hot food is held");
    return *rule->temperature;
}

std::optional<WaitLimit> longestStay(RuleBook book, const Stay& stay)
{
    if (!watches(book, stay.food) && stay.place != Place::Fridge) {
        return std::nullopt;
    }
    switch (stay.place) {
    case Place::Counter:
    case Place::AtTable:
        return standingLimit(book, stay);
    case Place::WarmHold:
        if (!stay.surroundings || keepWarmAt(book, stay.food).isReachedBy(*stay.surroundings)) {
            return std::nullopt;
        }
        return standingLimit(book, stay);
    case Place::Fridge:
        return fridgeLimit(book, stay.food);
    case Place::WaterBath: {
        const Rule* bath = ruleAbout(book, Subject::LowBath, stay.food);
        if (bath == nullptr || !stay.surroundings ||
            bath->temperature->isReachedBy(*stay.surroundings)) {
            return std::nullopt;
        }
        return WaitLimit{wholeMinutes(*bath->minutes), bath->id};
    }
    case Place::Freezer:
    case Place::IceBath:
    case Place::Oven:
    case Place::Hob:
    case Place::Microwave:
    case Place::ThawWater:
        return std::nullopt;
    }
    return std::nullopt;
}

} // namespace suppertide::safety
