#include "core/plan/step_cautions.h"

#include <algorithm>
#include <string_view>

namespace suppertide {

namespace {

using safety::CautionKind;

/// Of oil in a pan at medium heat, and of sugar under a torch: common practice.
constexpr double oilInPan = 160;
constexpr double sugarUnderTorch = 165;

bool names(std::string_view text, std::initializer_list<std::string_view> words)
{
    return std::ranges::any_of(
        words, [text](std::string_view word) { return text.find(word) != std::string_view::npos; });
}

/// "olive oil", "oil", but not "oily fish" or "soil".
bool isOil(std::string_view ingredient)
{
    return ingredient == "oil" || ingredient.ends_with(" oil");
}

bool hasAlcohol(const IngredientLine& line)
{
    return line.contains &&
           std::ranges::find(*line.contains, Substance::Alcohol) != line.contains->end();
}

template <typename T>
bool uses(const Step& step)
{
    return std::ranges::any_of(step.uses,
                               [](const Use& use) { return std::holds_alternative<T>(use); });
}

template <typename Test>
bool hasThing(const Step& step, Test test)
{
    return std::ranges::any_of(step.uses, [&test](const Use& use) {
        const auto* appliance = std::get_if<ApplianceUse>(&use);
        const auto* vessel = std::get_if<VesselUse>(&use);
        return (appliance != nullptr && test(appliance->kind)) ||
               (vessel != nullptr && test(vessel->kind));
    });
}

bool isHeavy(const Step& step, const std::vector<FoodInStep>& foods)
{
    const Grams heavyFood = grams(1500);
    const Litres largeVessel = decilitres(40);
    return std::ranges::any_of(
               foods, [&](const FoodInStep& each) { return each.food->mass >= heavyFood; }) ||
           std::ranges::any_of(step.uses, [&](const Use& use) {
               const auto* vessel = std::get_if<VesselUse>(&use);
               return vessel != nullptr && vessel->volume >= largeVessel;
           });
}

/// What the food is when the step begins.
FoodClass classBefore(const FoodInStep& in)
{
    FoodClass now = in.food->kind.food;
    for (std::size_t i = 0; i < in.treatment; ++i) {
        const FoodTreatment& earlier = in.food->steps[i];
        now = earlier.becomes.value_or(makesHot(earlier.treatment) ? cooked(now) : now);
    }
    return now;
}

bool isBoiling(const FoodTreatment& does)
{
    return does.treatment == Treatment::Boil || does.treatment == Treatment::Simmer ||
           does.treatment == Treatment::Reduce;
}

/// The deed itself, not what goes before and after it.
void addDeed(const Step& step, const std::vector<IngredientLine>& lines,
             const std::vector<FoodInStep>& foods, safety::StepHeat& heat)
{
    const bool isBoiled =
        std::ranges::any_of(foods, [](const FoodInStep& each) { return isBoiling(each.does()); });
    heat.isOnBurner = uses<BurnerUse>(step);
    heat.hasFlame = hasThing(step, [](const std::string& kind) { return names(kind, {"torch"}); });
    heat.isUnderPressure =
        hasThing(step, [](const std::string& kind) { return names(kind, {"pressure"}); });
    heat.hasBlade = hasThing(step, [](const std::string& kind) {
        return names(kind, {"blender", "slicer", "food processor", "mincer", "mandolin"});
    });
    heat.poursAlcohol = std::ranges::any_of(lines, hasAlcohol);
    if (heat.isOnBurner && !isBoiled &&
        std::ranges::any_of(lines, [](const auto& line) { return isOil(line.ingredient); })) {
        heat.oil = oilInPan;
    }
    if (heat.hasFlame && std::ranges::any_of(lines, [](const auto& line) {
            return names(line.ingredient, {"sugar"});
        })) {
        heat.sugar = sugarUnderTorch;
    }
    for (const FoodInStep& each : foods) {
        heat.makesSteam = heat.makesSteam || (isBoiling(each.does()) && each.does().isLid);
        heat.handlesRawAnimal =
            heat.handlesRawAnimal ||
            (each.does().treatment == Treatment::Stand && isRawAnimal(classBefore(each)));
    }
}

} // namespace

CautionKind kindOf(Caution caution)
{
    switch (caution) {
    case Caution::HotOil:
        return CautionKind::HotOil;
    case Caution::Caramel:
        return CautionKind::Caramel;
    case Caution::OpenFlame:
        return CautionKind::Torch;
    case Caution::Steam:
        return CautionKind::Steam;
    case Caution::SharpBlade:
        return CautionKind::SharpBlade;
    case Caution::RawMeat:
        return CautionKind::RawMeat;
    case Caution::RawEgg:
        return CautionKind::RawEgg;
    case Caution::Alcohol:
        return CautionKind::Alcohol;
    case Caution::Poisonous:
        return CautionKind::Poisonous;
    }
    return CautionKind::HotOil;
}

std::vector<FoodInStep> foodsIn(const std::vector<const FollowedFood*>& foods, const StepId& step)
{
    std::vector<FoodInStep> found;
    for (const FollowedFood* food : foods) {
        for (std::size_t i = 0; i < food->steps.size(); ++i) {
            if (food->steps[i].step == step) {
                found.push_back({food, i});
            }
        }
    }
    return found;
}

std::vector<CautionKind> calledFor(const Step& step, const std::vector<IngredientLine>& lines,
                                   const std::vector<FoodInStep>& foods, TaskRole role)
{
    safety::StepHeat heat;
    switch (role) {
    case TaskRole::OvenIn:
    case TaskRole::OvenOut:
    case TaskRole::Turn:
        heat.liftsFromOven = isHeavy(step, foods);
        heat.makesSteam =
            role != TaskRole::OvenIn &&
            std::ranges::any_of(foods, [](const FoodInStep& each) { return each.does().isLid; });
        break;
    case TaskRole::Step:
        addDeed(step, lines, foods, heat);
        break;
    case TaskRole::Washing:
    case TaskRole::Serving:
    case TaskRole::Target:
    case TaskRole::HouseJob:
    case TaskRole::Trip:
    case TaskRole::KeepFrom:
    case TaskRole::KeepTo:
    case TaskRole::TakeFrom:
    case TaskRole::Watch:
    case TaskRole::OvenSetting:
    case TaskRole::Mark:
        break;
    }
    return safety::cautionsFor(heat);
}

std::vector<CautionKind> cautionsOf(const TaskSource& source)
{
    std::vector<CautionKind> all;
    const auto add = [&all](CautionKind kind) {
        // Wine at the stove: the recipe's own words warn of the flame too.
        const bool isSaid = std::ranges::find(all, kind) != all.end() ||
                            (kind == CautionKind::AlcoholFlame &&
                             std::ranges::find(all, CautionKind::Alcohol) != all.end());
        if (!isSaid) {
            all.push_back(kind);
        }
    };
    for (const Caution caution : source.cautions) {
        add(kindOf(caution));
    }
    std::ranges::for_each(source.alsoCalledFor, add);
    return all;
}

} // namespace suppertide
