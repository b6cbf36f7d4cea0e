// How steps follow the number of portions.
#include <algorithm>

#include "core/recipe/recipe.h"

namespace suppertide {

namespace {

Minutes times(Minutes duration, const Rational& factor)
{
    return Minutes{(Rational{duration.count()} * factor).ceiled()};
}

} // namespace

DurationRange scaledDuration(const Step& step, const Portions& recipePortions,
                             const Portions& portions)
{
    if (step.scaling != Scaling::PerPortion) {
        return step.duration;
    }
    expects(recipePortions > Rational{0}, "a recipe for more than no portions");
    const Rational factor = portions / recipePortions;
    return {times(step.duration.least, factor), times(step.duration.likely, factor),
            times(step.duration.most, factor)};
}

std::optional<Mould> mouldOf(const Recipe& recipe)
{
    std::vector<const RecipePart*> parts{&recipe.common};
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            parts.push_back(&method.part);
        }
    }
    for (const Variant& variant : recipe.variants) {
        parts.push_back(&variant.adds);
    }
    for (const RecipePart* part : parts) {
        for (const IngredientLine& line : part->lines) {
            if (const auto* rule = std::get_if<ByMould>(&line.scaling)) {
                return rule->mould;
            }
        }
    }
    return std::nullopt;
}

std::vector<Portions> batchesOf(const Step& step, const Portions& portions)
{
    return inBatches(portions, step.portionsPerBatch);
}

std::vector<Portions> inBatches(const Portions& portions, const std::optional<Portions>& atOnce)
{
    if (!atOnce || *atOnce <= Rational{0} || portions <= *atOnce) {
        return {portions};
    }
    const std::int64_t count = (portions / *atOnce).ceiled();
    std::vector<Portions> result;
    Portions left = portions;
    for (std::int64_t i = count; i > 0; --i) {
        // Whole portions as long as they fit: nobody bakes 3 1/3 tartlets. What is left never
        // outgrows the batches to come, since each takes at least its even share.
        Portions batch{(left / Rational{i}).ceiled()};
        batch = std::min({batch, *atOnce, left});
        result.push_back(batch);
        left = left - batch;
    }
    return result;
}

} // namespace suppertide
