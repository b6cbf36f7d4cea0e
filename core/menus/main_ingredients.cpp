#include "core/menus/main_ingredients.h"

#include <algorithm>
#include <cctype>
#include <optional>
#include <set>

namespace suppertide::menus {

namespace {

using Recipes = std::map<RecipeId, const Recipe*>;

constexpr std::int64_t leastShare = 5; // one part in so many

std::string lowerCase(std::string text)
{
    std::ranges::transform(text, text.begin(), [](unsigned char letter) {
        return letter < 0x80 ? static_cast<char>(std::tolower(letter)) : static_cast<char>(letter);
    });
    return text;
}

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

/// "beetroot" in "chilled beetroot soup": a whole word, in the singular or the plural.
bool isNamedIn(const std::string& dish, std::string ingredient)
{
    if (ingredient.size() > 3 && ingredient.ends_with('s')) {
        ingredient.pop_back();
    }
    const auto isLetter = [](char letter) {
        const auto code = static_cast<unsigned char>(letter);
        return code >= 0x80 || std::isalpha(code) != 0;
    };
    for (std::size_t at = dish.find(ingredient); at != std::string::npos;
         at = dish.find(ingredient, at + 1)) {
        std::size_t end = at + ingredient.size();
        if (end < dish.size() && dish[end] == 's') {
            ++end;
        }
        const bool begins = at == 0 || !isLetter(dish[at - 1]);
        if (begins && (end == dish.size() || !isLetter(dish[end]))) {
            return true;
        }
    }
    return false;
}

class Collector
{
public:
    explicit Collector(const Recipes& recipes) : recipes_(recipes) {}

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
                weights[line.ingredient] += *weight;
                all += *weight;
            }
        }
        const std::string dish = lowerCase(recipe.name);
        for (const IngredientLine& line : lines) {
            const auto weight = weights.find(line.ingredient);
            const bool isMuch =
                weight != weights.end() && weight->second > 0 && weight->second * leastShare >= all;
            if (isMuch || isNamedIn(dish, lowerCase(line.ingredient))) {
                add(line);
            }
        }
    }

    [[nodiscard]] std::vector<std::string> found() const { return {found_.begin(), found_.end()}; }

private:
    static bool isWater(const IngredientLine& line)
    {
        return isNamedIn(lowerCase(line.ingredient), "water");
    }

    void add(const IngredientLine& line)
    {
        if (!line.preparation) {
            if (!isWater(line) && !line.ingredient.empty()) {
                found_.insert(lowerCase(line.ingredient));
            }
            return;
        }
        const auto made = recipes_.find(*line.preparation);
        if (made != recipes_.end() && !made->second->variants.empty()) {
            collect(*made->second, made->second->variants.front().id);
        }
    }

    const Recipes& recipes_;
    std::set<RecipeId> visited_;
    std::set<std::string> found_;
};

} // namespace

std::vector<std::string> mainIngredients(const Recipe& recipe, const VariantId& variant,
                                         const Recipes& recipes)
{
    Collector collector(recipes);
    collector.collect(recipe, variant);
    return collector.found();
}

} // namespace suppertide::menus
