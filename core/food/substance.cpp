#include "core/food/substance.h"

#include <algorithm>

namespace suppertide {

std::string_view nameOf(Substance substance)
{
    switch (substance) {
    case Substance::Wheat:
        return "wheat";
    case Substance::Rye:
        return "rye";
    case Substance::Barley:
        return "barley";
    case Substance::Oats:
        return "oats";
    case Substance::Milk:
        return "milk";
    case Substance::Egg:
        return "egg";
    case Substance::Fish:
        return "fish";
    case Substance::Crustacean:
        return "crustacean";
    case Substance::Mollusc:
        return "mollusc";
    case Substance::Peanut:
        return "peanut";
    case Substance::Soya:
        return "soya";
    case Substance::Celery:
        return "celery";
    case Substance::Mustard:
        return "mustard";
    case Substance::Sesame:
        return "sesame";
    case Substance::Lupin:
        return "lupin";
    case Substance::Sulphite:
        return "sulphite";
    case Substance::Almond:
        return "almond";
    case Substance::Hazelnut:
        return "hazelnut";
    case Substance::Walnut:
        return "walnut";
    case Substance::Cashew:
        return "cashew";
    case Substance::Pecan:
        return "pecan";
    case Substance::BrazilNut:
        return "brazil nut";
    case Substance::Pistachio:
        return "pistachio";
    case Substance::Macadamia:
        return "macadamia";
    case Substance::PineNut:
        return "pine nut";
    case Substance::Meat:
        return "meat";
    case Substance::Poultry:
        return "poultry";
    case Substance::Gelatine:
        return "gelatine";
    case Substance::AnimalRennet:
        return "animal rennet";
    case Substance::Honey:
        return "honey";
    case Substance::Alcohol:
        return "alcohol";
    }
    return "";
}

std::optional<Substance> findSubstance(std::string_view name)
{
    const auto found = std::ranges::find_if(
        allSubstances, [name](Substance each) { return nameOf(each) == name; });
    return found == allSubstances.end() ? std::nullopt : std::optional{*found};
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
        return {Fish, Crustacean, Mollusc, Meat, Poultry, Gelatine, AnimalRennet};
    case Diet::Vegan:
        return {Milk, Egg, Fish, Crustacean, Mollusc, Meat, Poultry, Gelatine, AnimalRennet, Honey};
    case Diet::Pescatarian:
        return {Meat, Poultry, Gelatine, AnimalRennet};
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
