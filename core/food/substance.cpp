#include "core/food/substance.h"

#include <algorithm>

namespace suppertide {

namespace {

struct SubstanceName
{
    Substance substance;
    std::string_view name;
};

constexpr std::array substanceNames{
    SubstanceName{Substance::Wheat, "wheat"},
    SubstanceName{Substance::Rye, "rye"},
    SubstanceName{Substance::Barley, "barley"},
    SubstanceName{Substance::Oats, "oats"},
    SubstanceName{Substance::Milk, "milk"},
    SubstanceName{Substance::Egg, "egg"},
    SubstanceName{Substance::Fish, "fish"},
    SubstanceName{Substance::Crustacean, "crustacean"},
    SubstanceName{Substance::Prawn, "prawn or shrimp"},
    SubstanceName{Substance::Crab, "crab"},
    SubstanceName{Substance::Lobster, "lobster or crayfish"},
    SubstanceName{Substance::Mollusc, "mollusc"},
    SubstanceName{Substance::Mussel, "mussel or clam"},
    SubstanceName{Substance::Oyster, "oyster"},
    SubstanceName{Substance::Scallop, "scallop"},
    SubstanceName{Substance::Squid, "squid or octopus"},
    SubstanceName{Substance::Peanut, "peanut"},
    SubstanceName{Substance::Soya, "soya"},
    SubstanceName{Substance::Celery, "celery"},
    SubstanceName{Substance::Mustard, "mustard"},
    SubstanceName{Substance::Sesame, "sesame"},
    SubstanceName{Substance::Lupin, "lupin"},
    SubstanceName{Substance::Sulphite, "sulphite"},
    SubstanceName{Substance::Almond, "almond"},
    SubstanceName{Substance::Hazelnut, "hazelnut"},
    SubstanceName{Substance::Walnut, "walnut"},
    SubstanceName{Substance::Cashew, "cashew"},
    SubstanceName{Substance::Pecan, "pecan"},
    SubstanceName{Substance::BrazilNut, "brazil nut"},
    SubstanceName{Substance::Pistachio, "pistachio"},
    SubstanceName{Substance::Macadamia, "macadamia"},
    SubstanceName{Substance::PineNut, "pine nut"},
    SubstanceName{Substance::Chestnut, "chestnut"},
    SubstanceName{Substance::Coconut, "coconut"},
    SubstanceName{Substance::Meat, "meat"},
    SubstanceName{Substance::Pork, "pork"},
    SubstanceName{Substance::Poultry, "poultry"},
    SubstanceName{Substance::Gelatine, "gelatine"},
    SubstanceName{Substance::AnimalRennet, "animal rennet"},
    SubstanceName{Substance::Honey, "honey"},
    SubstanceName{Substance::Alcohol, "alcohol"},
};
static_assert(substanceNames.size() == allSubstances.size());

struct KindsOf
{
    Substance any;
    std::vector<Substance> kinds;
};

const std::array<KindsOf, 2>& shellfish()
{
    using enum Substance;
    static const std::array<KindsOf, 2> table{
        {{Crustacean, {Prawn, Crab, Lobster}}, {Mollusc, {Mussel, Oyster, Scallop, Squid}}}};
    return table;
}

} // namespace

std::string_view nameOf(Substance substance)
{
    const auto found = std::ranges::find(substanceNames, substance, &SubstanceName::substance);
    return found == substanceNames.end() ? std::string_view{} : found->name;
}

std::optional<Substance> findSubstance(std::string_view name)
{
    const auto found = std::ranges::find(substanceNames, name, &SubstanceName::name);
    return found == substanceNames.end() ? std::nullopt : std::optional{found->substance};
}

std::vector<Substance> withKinds(std::vector<Substance> contains)
{
    const auto has = [&contains](Substance substance) {
        return std::ranges::find(contains, substance) != contains.end();
    };
    for (const KindsOf& each : shellfish()) {
        if (std::ranges::any_of(each.kinds, has)) {
            contains.push_back(each.any);
        } else if (has(each.any)) {
            contains.insert(contains.end(), each.kinds.begin(), each.kinds.end());
        }
    }
    std::ranges::sort(contains);
    const auto rest = std::ranges::unique(contains);
    contains.erase(rest.begin(), rest.end());
    return contains;
}

std::string_view nameOf(Diet diet)
{
    switch (diet) {
    case Diet::Coeliac:
        return "coeliac";
    case Diet::Vegetarian:
        return "vegetarian";
    case Diet::Vegan:
        return "vegan";
    case Diet::Pescatarian:
        return "pescatarian";
    case Diet::NoTreeNuts:
        return "no tree nuts";
    case Diet::NoDairy:
        return "no dairy";
    case Diet::NoAlcohol:
        return "no alcohol";
    }
    return "";
}

std::optional<Diet> findDiet(std::string_view name)
{
    const auto found =
        std::ranges::find_if(allDiets, [name](Diet each) { return nameOf(each) == name; });
    return found == allDiets.end() ? std::nullopt : std::optional{*found};
}

std::vector<Substance> avoidedBy(Diet diet)
{
    using enum Substance;
    switch (diet) {
    case Diet::Coeliac:
        return {Wheat, Rye, Barley, Oats};
    case Diet::Vegetarian:
        return {Fish, Crustacean, Mollusc, Meat, Pork, Poultry, Gelatine, AnimalRennet};
    case Diet::Vegan:
        return {Milk, Egg,     Fish,     Crustacean,   Mollusc, Meat,
                Pork, Poultry, Gelatine, AnimalRennet, Honey};
    case Diet::Pescatarian:
        return {Meat, Pork, Poultry, Gelatine, AnimalRennet};
    case Diet::NoTreeNuts:
        // Pine nuts are seeds, but are kept with the nuts here: who avoids nuts is asked about them
        // too.
        return {Almond, Hazelnut, Walnut, Cashew, Pecan, BrazilNut, Pistachio, Macadamia, PineNut};
    case Diet::NoDairy:
        return {Milk};
    case Diet::NoAlcohol:
        return {Alcohol};
    }
    return {};
}

} // namespace suppertide
