#include "core/occasion/line_swaps.h"

#include <algorithm>

#include "core/base/contracts.h"
#include "core/food/substitutes.h"

namespace suppertide {

namespace {

using Recipes = std::map<RecipeId, const Recipe*>;

/// The same amount of another ingredient, of which nobody has said anything for this line.
IngredientLine swapped(IngredientLine line, const std::string& instead)
{
    line.ingredient = instead;
    line.contains.reset();
    line.also.reset(); // the two measures are of the other thing
    line.byProduct.reset();
    return line;
}

bool isFine(const Guest& guest, Contents contents, safety::RuleBook book)
{
    return suitabilityOf(guest, {std::move(contents), {}, {}}, book).suits();
}

Contents contentsOfLine(const IngredientLine& line, const IngredientBook& ingredients)
{
    ResolvedRecipe alone;
    alone.part.lines = {line};
    return contentsOf(alone, ingredients);
}

} // namespace

bool isLineFine(const Guest& guest, const IngredientLine& line, const Recipes& recipes,
                const IngredientBook& ingredients, safety::RuleBook book)
{
    if (!line.preparation) {
        return isFine(guest, contentsOfLine(line, ingredients), book);
    }
    const auto made = recipes.find(*line.preparation);
    return made != recipes.end() && !made->second->variants.empty() &&
           isFine(
               guest,
               contentsOf(*made->second, made->second->variants.front().id, recipes, ingredients),
               book);
}

std::optional<std::string> substituteIn(const Guest& guest, const IngredientLine& line,
                                        const IngredientBook& ingredients, safety::RuleBook book)
{
    if (line.preparation || line.part != IngredientPart::Whole) {
        return std::nullopt;
    }
    const std::vector<std::string>& known = substitutesFor(line.ingredient);
    const auto fine = std::ranges::find_if(known, [&](const std::string& instead) {
        return isFine(guest, contentsOfLine(swapped(line, instead), ingredients), book);
    });
    return fine == known.end() ? std::nullopt : std::optional{*fine};
}

std::optional<std::vector<LineSwap>> swapsFor(const Guest& guest, const Recipe& recipe,
                                              const VariantId& variant, const Recipes& recipes,
                                              const IngredientBook& ingredients,
                                              safety::RuleBook book)
{
    const auto resolved = resolve(recipe, variant);
    if (!resolved) {
        return std::nullopt;
    }
    std::vector<LineSwap> swaps;
    for (const IngredientLine& line : resolved->part.lines) {
        if (isLineFine(guest, line, recipes, ingredients, book)) {
            continue;
        }
        auto instead = substituteIn(guest, line, ingredients, book);
        if (!instead) {
            return std::nullopt;
        }
        swaps.push_back({line.id, line.ingredient, *std::move(instead)});
    }
    if (swaps.empty()) {
        return std::nullopt;
    }
    // What swaps do not reach: methods, by-products of others, how it is cooked.
    const Recipe with = withSwapped(recipe, variant, swaps);
    Recipes known = recipes;
    known[with.id] = &with;
    const VariantNature nature = natureOf(with, swappedVariant(variant, swaps), known, ingredients);
    return suitabilityOf(guest, nature, book).suits() ? std::optional{std::move(swaps)}
                                                      : std::nullopt;
}

VariantId swappedVariant(const VariantId& variant, const std::vector<LineSwap>& swaps)
{
    std::string id = variant.text();
    for (const LineSwap& swap : swaps) {
        id += "-" + swap.line.text() + "-" + swap.instead;
    }
    std::ranges::replace(id, ' ', '-');
    return VariantId{id};
}

Recipe withSwapped(Recipe recipe, const VariantId& variant, const std::vector<LineSwap>& swaps)
{
    const VariantId id = swappedVariant(variant, swaps);
    if (std::ranges::find(recipe.variants, id, &Variant::id) != recipe.variants.end()) {
        return recipe;
    }
    const auto from = std::ranges::find(recipe.variants, variant, &Variant::id);
    const auto resolved = resolve(recipe, variant);
    expects(from != recipe.variants.end() && resolved, "a variant of the recipe");
    Variant made = *from;
    made.id = id;
    for (const LineSwap& swap : swaps) {
        const auto& lines = resolved->part.lines;
        const auto line = std::ranges::find(lines, swap.line, &IngredientLine::id);
        expects(line != lines.end(), "a line of the variant");
        std::erase_if(made.adds.lines,
                      [&swap](const IngredientLine& own) { return own.id == swap.line; });
        made.adds.lines.push_back(swapped(*line, swap.instead));
        made.name += (made.name.empty() ? "" : ", ") + swap.instead + " for " + swap.ingredient;
    }
    recipe.variants.push_back(std::move(made));
    return recipe;
}

} // namespace suppertide
