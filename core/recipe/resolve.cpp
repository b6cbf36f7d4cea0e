// Carrying a variant through: what joins, replaces and drops, and how the ties mend.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "core/recipe/temperature_methods.h"

namespace suppertide {

namespace {

/// Adds `additions` to `list`; what has the id of something there takes its place.
template <typename T>
void join(std::vector<T>& list, const std::vector<T>& additions)
{
    for (const T& addition : additions) {
        const auto same = std::ranges::find(list, addition.id, &T::id);
        if (same == list.end()) {
            list.push_back(addition);
        } else {
            *same = addition;
        }
    }
}

template <typename T, typename IdType>
void drop(std::vector<T>& list, const std::vector<IdType>& ids)
{
    std::erase_if(list,
                  [&ids](const T& each) { return std::ranges::find(ids, each.id) != ids.end(); });
}

using Predecessors = std::map<StepId, std::vector<StepId>>;

/// What stands in for `step`: itself, or what its own predecessors stand for if it was dropped.
void standIns(const StepId& step, const Predecessors& dropped, std::set<StepId>& visited,
              std::vector<StepId>& result)
{
    const auto gone = dropped.find(step);
    if (gone == dropped.end()) {
        if (std::ranges::find(result, step) == result.end()) {
            result.push_back(step);
        }
        return;
    }
    if (!visited.insert(step).second) {
        return;
    }
    for (const StepId& before : gone->second) {
        standIns(before, dropped, visited, result);
    }
}

void retie(std::vector<Step>& steps, const Predecessors& dropped)
{
    for (Step& step : steps) {
        std::vector<StepId> mended;
        for (const StepId& before : step.after) {
            std::set<StepId> visited;
            standIns(before, dropped, visited, mended);
        }
        step.after = std::move(mended);
    }
}

bool touches(const StepPoint& point, const Predecessors& dropped)
{
    return point.step && dropped.contains(*point.step);
}

/// Waits and spans of what was dropped go with it, and what it did to foods.
void letGo(RecipePart& part, const Predecessors& dropped)
{
    std::erase_if(part.waits, [&dropped](const Wait& wait) {
        return touches(wait.from, dropped) || touches(wait.to, dropped);
    });
    std::erase_if(part.spans, [&dropped](const Span& span) {
        return touches(span.from, dropped) || touches(span.to, dropped);
    });
    for (FollowedFood& food : part.foods) {
        std::erase_if(food.steps, [&dropped](const FoodTreatment& treatment) {
            return dropped.contains(treatment.step);
        });
    }
    std::erase_if(part.foods, [](const FollowedFood& food) { return food.steps.empty(); });
}

/// Lines that were dropped are no longer taken by any step.
void forgetLines(std::vector<Step>& steps, const std::vector<LineId>& dropped)
{
    for (Step& step : steps) {
        std::erase_if(step.lines, [&dropped](const LineId& line) {
            return std::ranges::find(dropped, line) != dropped.end();
        });
    }
}

void dropFrom(RecipePart& part, const Variant& variant, Predecessors& dropped)
{
    for (const StepId& id : variant.dropSteps) {
        const auto step = std::ranges::find(part.steps, id, &Step::id);
        if (step != part.steps.end()) {
            dropped[id] = step->after;
        }
    }
    drop(part.lines, variant.dropLines);
    drop(part.steps, variant.dropSteps);
    drop(part.waits, variant.dropWaits);
    drop(part.spans, variant.dropSpans);
    drop(part.foods, variant.dropFoods);
    forgetLines(part.steps, variant.dropLines);
}

} // namespace

Result<ResolvedRecipe> resolve(const Recipe& recipe, const VariantId& id)
{
    const auto variant = std::ranges::find(recipe.variants, id, &Variant::id);
    if (variant == recipe.variants.end()) {
        return Failure{FailureKind::NotFound,
                       fmt::format("“{}” has no variant “{}”. Choose one of its variants.",
                                   recipe.name, id.text()),
                       {}};
    }
    ResolvedRecipe result{recipe.common, recipe.methods};
    Predecessors dropped;
    dropFrom(result.part, *variant, dropped);
    for (MethodChoice& choice : result.methods) {
        for (Method& method : choice.methods) {
            dropFrom(method.part, *variant, dropped);
        }
    }
    join(result.part.lines, variant->adds.lines);
    join(result.part.steps, variant->adds.steps);
    join(result.part.waits, variant->adds.waits);
    join(result.part.spans, variant->adds.spans);
    join(result.part.foods, variant->adds.foods);
    // A step that is dropped and added again under its id has been replaced, not dropped.
    for (const Step& step : result.part.steps) {
        dropped.erase(step.id);
    }
    retie(result.part.steps, dropped);
    letGo(result.part, dropped);
    for (MethodChoice& choice : result.methods) {
        for (Method& method : choice.methods) {
            retie(method.part.steps, dropped);
            letGo(method.part, dropped);
        }
    }
    spreadTemperatures(result);
    return result;
}

} // namespace suppertide
