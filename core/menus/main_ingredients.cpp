#include "core/menus/main_ingredients.h"

#include <algorithm>
#include <optional>
#include <set>

#include "core/food/name_words.h"

namespace suppertide::menus {

namespace {

using Recipes = std::map<RecipeId, const Recipe*>;

constexpr std::int64_t leastShare = 5; // one part in so many

/// Whole grams, a millilitre counted as one; absent for pieces and pinches.
std::optional<std::int64_t> weightOf(const Amount& amount)
{
    for (const Unit unit : {Unit::Gram, Unit::Millilitre}) {
        if (const auto weighed = inUnit(amount, unit)) {
            return weighed->value.rounded();
        }
    }
    return std::nullopt;
}

class Collector
{
public:
    Collector(const Recipes& recipes, const IngredientBook& ingredients)
        : recipes_(recipes), ingredients_(ingredients)
    {}

    void collect(const Recipe& recipe, const VariantId& variant)
    {
        const auto resolved = resolve(recipe, variant);
        if (!resolved || !visited_.insert(recipe.id).second) {
            return;
        }
        std::vector<IngredientLine> lines = resolved->part.lines;
        for (const MethodChoice& choice : resolved->methods) {
            const auto& usual = choice.methods.front().part.lines;
            lines.insert(lines.end(), usual.begin(), usual.end());
        }
        std::map<std::string, std::int64_t> weights;
        std::int64_t all = 0;
        for (const IngredientLine& line : lines) {
            const auto weight = weightOf(line.amount);
            if (weight && !isWater(line)) {
                weights[nameOf(line)] += *weight;
                all += *weight;
            }
        }
        const std::vector<std::string> dish = nameWords(recipe.name);
        for (const IngredientLine& line : lines) {
            const auto weight = weights.find(nameOf(line));
            const bool isMuch =
                weight != weights.end() && weight->second > 0 && weight->second * leastShare >= all;
            if (isMuch || hasWords(dish, nameWords(line.ingredient)) ||
                hasWords(dish, nameWords(nameOf(line)))) {
                add(line);
            }
        }
    }

    [[nodiscard]] std::vector<std::string> found() const { return {found_.begin(), found_.end()}; }

private:
    /// The table's name for it, so that "spuds" are potatoes.
    [[nodiscard]] std::string nameOf(const IngredientLine& line) const
    {
        const Ingredient* known = ingredients_.find(line.ingredient);
        return nameKey(known == nullptr ? line.ingredient : known->name);
    }

    static bool isWater(const IngredientLine& line)
    {
        const std::vector<std::string> words = nameWords(line.ingredient);
        return !words.empty() && words.back() == "water";
    }

    void add(const IngredientLine& line)
    {
        if (!line.preparation) {
            if (!isWater(line) && !line.ingredient.empty()) {
                found_.insert(nameOf(line));
            }
            return;
        }
        const auto made = recipes_.find(*line.preparation);
        if (made != recipes_.end() && !made->second->variants.empty()) {
            collect(*made->second, made->second->variants.front().id);
        }
    }

    const Recipes& recipes_;
    const IngredientBook& ingredients_;
    std::set<RecipeId> visited_;
    std::set<std::string> found_;
};

} // namespace

std::vector<std::string> mainIngredients(const Recipe& recipe, const VariantId& variant,
                                         const Recipes& recipes, const IngredientBook& ingredients)
{
    Collector collector(recipes, ingredients);
    collector.collect(recipe, variant);
    return collector.found();
}

} // namespace suppertide::menus
