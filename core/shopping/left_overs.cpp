#include "core/shopping/left_overs.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <map>
#include <set>

namespace suppertide::shopping {

namespace {

constexpr std::size_t mostUses = 3;

/// Names of recipes by what they ask for; dishes before preparations, then by name.
using Askers = std::map<std::string, std::set<std::pair<bool, std::string>>>;

class Repertoire
{
public:
    Repertoire(const ShoppingInput& input, FactsBook& facts) : facts_(facts)
    {
        std::set<RecipeId> cooked;
        for (const Course& course : input.evening.occasion->courses) {
            for (const Dish& dish : course.dishes) {
                if (portionsOf(dish) > Portions{0}) {
                    cooked.insert(dish.recipe);
                }
            }
        }
        for (const auto& [id, recipe] : input.repertoire) {
            if (!cooked.contains(id)) {
                add(*recipe);
            }
        }
    }

    [[nodiscard]] std::vector<std::string> asking(const std::string& key) const
    {
        std::vector<std::string> names;
        if (const auto found = askers_.find(key); found != askers_.end()) {
            for (const auto& [isPreparation, name] : found->second) {
                if (names.size() < mostUses) {
                    names.push_back(name);
                }
            }
        }
        return names;
    }

private:
    void add(const Recipe& recipe)
    {
        addPart(recipe, recipe.common);
        for (const MethodChoice& choice : recipe.methods) {
            for (const Method& method : choice.methods) {
                addPart(recipe, method.part);
            }
        }
        for (const Variant& variant : recipe.variants) {
            addPart(recipe, variant.adds);
        }
    }

    void addPart(const Recipe& recipe, const RecipePart& part)
    {
        const std::pair asker{recipe.kind == RecipeKind::Preparation, recipe.name};
        for (const IngredientLine& line : part.lines) {
            askers_[facts_.of(line.ingredient).key].insert(asker);
            if (line.byProduct) {
                askers_[ingredientKey(*line.byProduct)].insert(asker);
            }
        }
    }

    FactsBook& facts_;
    Askers askers_;
};

} // namespace

void findUses(ShoppingList& list, const ShoppingInput& input, FactsBook& facts)
{
    list.spareUses.assign(list.spare.size(), "");
    if (input.repertoire.empty()) {
        return;
    }
    const Repertoire repertoire(input, facts);
    for (ShoppingLine& line : list.lines) {
        if (line.leftOver.value > Rational{0} || !line.partsLeft.empty()) {
            line.uses = repertoire.asking(facts.of(line.ingredient).key);
        }
    }
    for (std::size_t i = 0; i < list.spare.size(); ++i) {
        list.spareUses[i] = fmt::format(
            "{}", fmt::join(repertoire.asking(ingredientKey(list.spare[i].name)), ", "));
    }
}

} // namespace suppertide::shopping
