// The USDA's table of foods (National Nutrient Database for Standard Reference, release 26, public
// domain): 8,463 foods with composition, household weights and what is thrown away, for looking up
// when a cook adds an ingredient that ours lacks.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/food/ingredient.h"

namespace suppertide {

/// "1 cup chopped" is 128 g.
struct HouseholdWeight
{
    double amount = 1;
    std::string measure;
    Grams mass; // of the edible part
};

/// Figures are grams in 100 g of the edible part; absent: not known.
struct UsdaFood
{
    std::string number; // "11124"
    std::string group;  // "Vegetables and Vegetable Products"
    std::string name;   // "Carrots, raw"
    std::optional<double> water;
    std::optional<double> protein;
    std::optional<double> fat;
    std::optional<double> carbohydrate; // by difference, fibre in it
    std::optional<double> fibre;
    std::optional<double> ash;
    std::optional<double> refuse; // % of what is bought
    std::string refuseWhat;
    std::vector<HouseholdWeight> weights;
};

/// Foods with a word that begins like each word of the query ("carr raw"), whatever its case and
/// order; best first: where the first word of the query begins the name, then raw foods, then short
/// names. At most `most`. An empty query finds nothing.
[[nodiscard]] std::vector<UsdaFood> lookUpFoods(std::string_view query, std::size_t most = 50);
[[nodiscard]] std::optional<UsdaFood> findUsdaFood(std::string_view number);
[[nodiscard]] std::size_t usdaFoodCount();

/// What the table says of it as an ingredient of the user's own: density, pieces and yield, with
/// the source; what it contains is left for the user to say, so its label is to be checked.
[[nodiscard]] Ingredient ingredientFrom(const UsdaFood& food);

} // namespace suppertide
