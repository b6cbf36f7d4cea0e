// What guests avoid, against the lists that the law has.
//  - European Union: Regulation (EU) No 1169/2011, Annex II: cereals with gluten (wheat, rye,
//    barley, oats), crustaceans, eggs, fish, peanuts, soybeans, milk, nuts (almonds, hazelnuts,
//    walnuts, cashews, pecans, Brazil nuts, pistachios, macadamias), celery, mustard, sesame,
//    sulphites, lupin, molluscs.
//  - United States: FALCPA 2004, section 203, with the FASTER Act of 2021: milk, egg, fish,
//    Crustacean shellfish, tree nuts, wheat, peanuts, soybeans, sesame.
#include <gmock/gmock.h>

#include <algorithm>
#include <set>

#include "core/food/substance.h"

namespace suppertide {
namespace {

using enum Substance;
using testing::IsSupersetOf;
using testing::Not;
using testing::UnorderedElementsAre;

TEST(Substances, HaveNamesByWhichTheyAreFound)
{
    std::set<std::string_view> names;
    for (const Substance substance : allSubstances) {
        EXPECT_FALSE(nameOf(substance).empty());
        EXPECT_TRUE(names.insert(nameOf(substance)).second) << nameOf(substance);
        EXPECT_EQ(findSubstance(nameOf(substance)), substance);
    }
    EXPECT_FALSE(findSubstance(""));
    EXPECT_FALSE(findSubstance("Wheat")); // names are written small
    EXPECT_FALSE(findSubstance("gluten"));
}

TEST(Diets, HaveNamesByWhichTheyAreFound)
{
    for (const Diet diet : allDiets) {
        EXPECT_FALSE(nameOf(diet).empty());
        EXPECT_EQ(findDiet(nameOf(diet)), diet);
        EXPECT_FALSE(avoidedBy(diet).empty());
    }
    EXPECT_FALSE(findDiet("carnivore"));
}

TEST(Substances, CoverTheListOfTheEuropeanUnion)
{
    EXPECT_THAT(allSubstances,
                IsSupersetOf({Wheat,  Rye,     Barley, Oats,      Crustacean, Egg,
                              Fish,   Peanut,  Soya,   Milk,      Almond,     Hazelnut,
                              Walnut, Cashew,  Pecan,  BrazilNut, Pistachio,  Macadamia,
                              Celery, Mustard, Sesame, Sulphite,  Lupin,      Mollusc}));
}

TEST(Substances, CoverTheListOfTheUnitedStates)
{
    EXPECT_THAT(allSubstances, IsSupersetOf({Milk, Egg, Fish, Crustacean, Wheat, Peanut, Soya,
                                             Sesame, Almond, Hazelnut, Walnut, Cashew, Pecan,
                                             BrazilNut, Pistachio, Macadamia, PineNut}));
}

TEST(Shellfish, OfAKindIsShellfish)
{
    EXPECT_EQ(withKinds({Crab}), (std::vector{Crustacean, Crab}));
    EXPECT_EQ(withKinds({Milk, Oyster, Prawn}),
              (std::vector{Milk, Crustacean, Prawn, Mollusc, Oyster}));
    EXPECT_EQ(withKinds({Milk}), std::vector{Milk});
}

TEST(Shellfish, OfNoSaidKindMayBeAny)
{
    EXPECT_EQ(withKinds({Crustacean}), (std::vector{Crustacean, Prawn, Crab, Lobster}));
    EXPECT_EQ(withKinds({Mollusc, Crab}),
              (std::vector{Crustacean, Crab, Mollusc, Mussel, Oyster, Scallop, Squid}));
    for (const Substance substance : allSubstances) {
        const std::vector<Substance> once = withKinds({substance});
        EXPECT_EQ(withKinds(once), once) << nameOf(substance);
    }
}

TEST(Coeliac, AvoidsTheCerealsWithGluten)
{
    // Annex II, point 1. Oats that are labelled so may suit some; their own doctor says.
    EXPECT_THAT(avoidedBy(Diet::Coeliac), UnorderedElementsAre(Wheat, Rye, Barley, Oats));
}

TEST(NoTreeNuts, AvoidsTheNutsOfAnnexTwoAndPineNuts)
{
    EXPECT_THAT(avoidedBy(Diet::NoTreeNuts),
                UnorderedElementsAre(Almond, Hazelnut, Walnut, Cashew, Pecan, BrazilNut, Pistachio,
                                     Macadamia, PineNut));
    // A peanut is a legume, an allergen of its own in both lists.
    EXPECT_THAT(avoidedBy(Diet::NoTreeNuts), Not(testing::Contains(Peanut)));
}

TEST(Diets, RuleOutMoreTheStricterTheyAre)
{
    const auto avoids = [](Diet diet, Diet less) {
        const auto all = avoidedBy(diet);
        return std::ranges::all_of(avoidedBy(less), [&](Substance each) {
            return std::ranges::find(all, each) != all.end();
        });
    };
    EXPECT_TRUE(avoids(Diet::Vegan, Diet::Vegetarian));
    EXPECT_TRUE(avoids(Diet::Vegan, Diet::NoDairy));
    EXPECT_TRUE(avoids(Diet::Vegetarian, Diet::Pescatarian));
    EXPECT_FALSE(avoids(Diet::Pescatarian, Diet::Vegetarian));
    EXPECT_FALSE(avoids(Diet::NoDairy, Diet::Vegan));
}

TEST(Vegetarians, EatNoGelatineAndNoAnimalRennet)
{
    // Both come from slaughtered animals (common practice of vegetarian labels).
    EXPECT_THAT(avoidedBy(Diet::Vegetarian), IsSupersetOf({Gelatine, AnimalRennet, Meat, Fish}));
    EXPECT_THAT(avoidedBy(Diet::Vegetarian), Not(testing::Contains(Milk)));
}

} // namespace
} // namespace suppertide
