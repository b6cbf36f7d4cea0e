#include "core/recipe/contents.h"

namespace suppertide {

void ContentsCollector::add(const IngredientLine& line)
{
    if (line.contains) {
        addContained(*line.contains);
        return;
    }
    if (line.preparation) {
        return;
    }
    const Ingredient* known = ingredients_.find(line.ingredient);
    if (known == nullptr) {
        unknown_.insert(line.ingredient);
        return;
    }
    addContained(known->contains);
    if (known->checkLabel || !known->mayContain.empty()) {
        unknown_.insert(line.ingredient);
        checkLabel_.insert(line.ingredient);
    }
}

void ContentsCollector::addContained(const std::vector<Substance>& substances)
{
    const std::vector<Substance> all = withKinds(substances);
    contains_.insert(all.begin(), all.end());
}

void ContentsCollector::add(const RecipePart& part)
{
    for (const IngredientLine& line : part.lines) {
        add(line);
    }
}

Contents ContentsCollector::contents() const
{
    return {{contains_.begin(), contains_.end()},
            {unknown_.begin(), unknown_.end()},
            {checkLabel_.begin(), checkLabel_.end()}};
}

Contents contentsOf(const ResolvedRecipe& recipe, const IngredientBook& ingredients)
{
    ContentsCollector collector(ingredients);
    collector.add(recipe.part);
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            collector.add(method.part);
        }
    }
    return collector.contents();
}

} // namespace suppertide
