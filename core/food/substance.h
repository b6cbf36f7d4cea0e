// Substance: what a guest may have to, or want to, avoid; the filter for who can eat what. Finer
// than any legal list of allergens (each cereal and each nut by itself), since those lists differ:
// the EU's has no pine nut, the US's no barley. Diets are sets of substances.
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <vector>

namespace suppertide {

enum class Substance
{
    Wheat,
    Rye,
    Barley,
    Oats,
    Milk,
    Egg,
    Fish,
    Crustacean, // any: each kind below is one too
    Prawn,
    Crab,
    Lobster,
    Mollusc, // likewise
    Mussel,
    Oyster,
    Scallop,
    Squid,
    Peanut,
    Soya,
    Celery,
    Mustard,
    Sesame,
    Lupin,
    Sulphite,
    Almond,
    Hazelnut,
    Walnut,
    Cashew,
    Pecan,
    BrazilNut,
    Pistachio,
    Macadamia,
    PineNut,
    Chestnut,
    Coconut,
    Meat, // pork counts as meat too
    Pork,
    Poultry,
    Gelatine,
    AnimalRennet,
    Honey,
    Alcohol,
};

inline constexpr std::array allSubstances{
    Substance::Wheat,     Substance::Rye,       Substance::Barley,       Substance::Oats,
    Substance::Milk,      Substance::Egg,       Substance::Fish,         Substance::Crustacean,
    Substance::Prawn,     Substance::Crab,      Substance::Lobster,      Substance::Mollusc,
    Substance::Mussel,    Substance::Oyster,    Substance::Scallop,      Substance::Squid,
    Substance::Peanut,    Substance::Soya,      Substance::Celery,       Substance::Mustard,
    Substance::Sesame,    Substance::Lupin,     Substance::Sulphite,     Substance::Almond,
    Substance::Hazelnut,  Substance::Walnut,    Substance::Cashew,       Substance::Pecan,
    Substance::BrazilNut, Substance::Pistachio, Substance::Macadamia,    Substance::PineNut,
    Substance::Chestnut,  Substance::Coconut,   Substance::Meat,         Substance::Pork,
    Substance::Poultry,   Substance::Gelatine,  Substance::AnimalRennet, Substance::Honey,
    Substance::Alcohol};

/// "brazil nut", as on screen and in files.
[[nodiscard]] std::string_view nameOf(Substance substance);
[[nodiscard]] std::optional<Substance> findSubstance(std::string_view name);

/// What a food contains, with what that means: a prawn is a crustacean, and a crustacean of which
/// nobody says which one may be any of them; molluscs likewise. Sorted, each once.
[[nodiscard]] std::vector<Substance> withKinds(std::vector<Substance> contains);

enum class Diet
{
    Coeliac,
    Vegetarian,
    Vegan,
    Pescatarian,
    NoTreeNuts,
    NoDairy,
    NoAlcohol
};

inline constexpr std::array allDiets{Diet::Coeliac,     Diet::Vegetarian, Diet::Vegan,
                                     Diet::Pescatarian, Diet::NoTreeNuts, Diet::NoDairy,
                                     Diet::NoAlcohol};

/// "coeliac", "no tree nuts", as on screen and in files.
[[nodiscard]] std::string_view nameOf(Diet diet);
[[nodiscard]] std::optional<Diet> findDiet(std::string_view name);

/// What the diet rules out. Coeliac: wheat, rye, barley and oats, under every national list.
[[nodiscard]] std::vector<Substance> avoidedBy(Diet diet);

} // namespace suppertide
