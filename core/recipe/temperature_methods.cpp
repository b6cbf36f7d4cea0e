#include "core/recipe/temperature_methods.h"

#include <fmt/format.h>

#include <algorithm>

namespace suppertide {

namespace {

OvenUse* ovenOf(Step& step)
{
    for (Use& use : step.uses) {
        if (auto* oven = std::get_if<OvenUse>(&use)) {
            return oven;
        }
    }
    return nullptr;
}

int degreesOf(const OvenUse& use)
{
    return use.prefer.value_or(Celsius::tenths((use.low.tenths() + use.high.tenths()) / 2))
        .wholeDegrees();
}

/// A step at one of its temperatures, and how much less that is liked.
struct AtHeat
{
    Step step;
    int celsius = 0;
    int cost = 0;

    [[nodiscard]] std::string name() const
    {
        return fmt::format("{} min at {} °C", step.duration.likely.count(), celsius);
    }
    [[nodiscard]] std::string id() const { return fmt::format("at-{}-c", celsius); }
};

/// As it stands first. A turn comes at the same part of the time.
std::vector<AtHeat> heatsOf(const Step& step)
{
    AtHeat usual{step, 0, 0};
    usual.step.otherHeats.clear();
    const OvenUse* oven = ovenOf(usual.step);
    if (oven == nullptr) {
        return {usual};
    }
    usual.celsius = degreesOf(*oven);
    std::vector<AtHeat> heats{usual};
    for (const OtherHeat& other : step.otherHeats) {
        AtHeat at = usual;
        OvenUse& use = *ovenOf(at.step);
        use.low = other.low;
        use.high = other.high;
        use.prefer = other.prefer;
        at.step.duration = other.duration;
        if (step.turnAfter && step.duration.likely > Minutes{0}) {
            at.step.turnAfter =
                *step.turnAfter * other.duration.likely.count() / step.duration.likely.count();
        }
        at.celsius = degreesOf(use);
        at.cost = other.cost;
        heats.push_back(std::move(at));
    }
    return heats;
}

bool hasOtherHeats(const Step& step)
{
    return !step.otherHeats.empty();
}

/// A method once for each temperature of its first step that has several.
std::vector<Method> spread(const Method& method)
{
    const auto found = std::ranges::find_if(method.part.steps, hasOtherHeats);
    if (found == method.part.steps.end()) {
        return {method};
    }
    const auto place = found - method.part.steps.begin();
    std::vector<Method> methods;
    for (const AtHeat& at : heatsOf(*found)) {
        Method each = method;
        each.part.steps[static_cast<std::size_t>(place)] = at.step;
        if (!methods.empty()) {
            each.id = MethodId{method.id.text() + "-" + at.id()};
            each.name = method.name + ", " + at.name();
        }
        each.cost += at.cost;
        methods.push_back(std::move(each));
    }
    return methods;
}

} // namespace

MethodChoiceId heatChoiceOf(const StepId& step)
{
    return MethodChoiceId{step.text() + "-heat"};
}

void spreadTemperatures(ResolvedRecipe& recipe)
{
    for (MethodChoice& choice : recipe.methods) {
        for (std::size_t i = 0; i < choice.methods.size();) {
            const std::vector<Method> methods = spread(choice.methods[i]);
            if (methods.size() == 1) {
                choice.methods[i] = methods.front();
                ++i;
                continue;
            }
            const auto at = choice.methods.begin() + static_cast<std::ptrdiff_t>(i);
            choice.methods.insert(choice.methods.erase(at), methods.begin(), methods.end());
        }
    }
    std::vector<Step> kept;
    for (const Step& step : recipe.part.steps) {
        if (!hasOtherHeats(step)) {
            kept.push_back(step);
            continue;
        }
        const std::vector<AtHeat> heats = heatsOf(step);
        if (heats.size() == 1) {
            kept.push_back(heats.front().step);
            continue;
        }
        MethodChoice choice{heatChoiceOf(step.id), "how hot: " + step.text, {}};
        for (const AtHeat& at : heats) {
            Method method{MethodId{at.id()}, at.name(), at.cost, {}};
            method.part.steps = {at.step};
            choice.methods.push_back(std::move(method));
        }
        recipe.methods.push_back(std::move(choice));
    }
    recipe.part.steps = std::move(kept);
}

std::vector<MethodChoice> choicesOf(const Recipe& recipe)
{
    ResolvedRecipe all{recipe.common, recipe.methods};
    for (const Variant& variant : recipe.variants) {
        for (const Step& step : variant.adds.steps) {
            const auto same = std::ranges::find(all.part.steps, step.id, &Step::id);
            if (same == all.part.steps.end()) {
                all.part.steps.push_back(step);
            } else if (same->otherHeats.empty()) {
                *same = step;
            }
        }
    }
    spreadTemperatures(all);
    return all.methods;
}

} // namespace suppertide
