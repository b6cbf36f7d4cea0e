// Regulation (EU) 1169/2011, Annex II (14), its UK retention, and FALCPA 2004 with FASTER 2021 (9);
// FDA, Guidance on food allergen labelling, edition 5, January 2025 (12 tree nuts).
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/food/allergen_list.h"

namespace suppertide {
namespace {

std::vector<std::string> namesOf(AllergenList list)
{
    std::vector<std::string> names;
    for (const AllergenLabel* label : labelsOf(list)) {
        names.push_back(label->name);
    }
    return names;
}

bool has(AllergenList list, Substance substance)
{
    return labelOf(list, substance) != nullptr;
}

std::vector<std::string> labelsOfWord(AllergenList list, std::string_view word)
{
    const AllergenWord* found = findAllergenWord(word);
    return found == nullptr ? std::vector<std::string>{"no such word"}
                            : labelsFor(list, found->substances);
}

TEST(AllergenLists, TheEuAndTheUkHaveTheSameFourteen)
{
    const std::vector<std::string> fourteen{"cereals containing gluten",
                                            "crustaceans",
                                            "eggs",
                                            "fish",
                                            "peanuts",
                                            "soybeans",
                                            "milk",
                                            "nuts",
                                            "celery",
                                            "mustard",
                                            "sesame seeds",
                                            "sulphur dioxide and sulphites",
                                            "lupin",
                                            "molluscs"};
    EXPECT_EQ(namesOf(AllergenList::Eu14), fourteen);
    EXPECT_EQ(namesOf(AllergenList::Uk14), fourteen);
    for (const Substance substance : allSubstances) {
        EXPECT_EQ(has(AllergenList::Eu14, substance), has(AllergenList::Uk14, substance))
            << nameOf(substance);
    }
}

TEST(AllergenLists, TheUsHasNine)
{
    EXPECT_EQ(namesOf(AllergenList::Us9),
              (std::vector<std::string>{"milk", "eggs", "fish", "crustacean shellfish", "tree nuts",
                                        "peanuts", "wheat", "soybeans", "sesame"}));
}

TEST(AllergenLists, TheEuNamesEightNutsAndFourCereals)
{
    using enum Substance;
    EXPECT_EQ(
        labelOf(AllergenList::Eu14, Almond)->substances,
        (std::vector{Almond, Hazelnut, Walnut, Cashew, Pecan, BrazilNut, Pistachio, Macadamia}));
    EXPECT_EQ(labelOf(AllergenList::Eu14, Wheat)->substances,
              (std::vector{Wheat, Rye, Barley, Oats}));
    EXPECT_EQ(labelsOfWord(AllergenList::Eu14, "spelt"),
              std::vector<std::string>{"cereals containing gluten"});
    EXPECT_EQ(labelsOfWord(AllergenList::Eu14, "Khorasan wheat"),
              std::vector<std::string>{"cereals containing gluten"});
}

TEST(AllergenLists, TheUsListLacksWhatTheEuListHas)
{
    using enum Substance;
    for (const Substance lacking : {Mollusc, Celery, Mustard, Lupin, Sulphite, Barley, Rye, Oats}) {
        EXPECT_FALSE(has(AllergenList::Us9, lacking)) << nameOf(lacking);
        EXPECT_TRUE(has(AllergenList::Eu14, lacking)) << nameOf(lacking);
    }
    EXPECT_TRUE(has(AllergenList::Us9, PineNut));
    EXPECT_FALSE(has(AllergenList::Eu14, PineNut));
}

TEST(AllergenLists, FdaCountsTwelveTreeNuts)
{
    std::vector<std::string> nuts;
    for (const AllergenWord& word : allAllergenWords()) {
        if (word.isUsTreeNut && !word.isOtherName) {
            nuts.push_back(word.word);
            EXPECT_EQ(labelsFor(AllergenList::Us9, word.substances),
                      std::vector<std::string>{"tree nuts"})
                << word.word;
        }
    }
    EXPECT_EQ(nuts,
              (std::vector<std::string>{"almond", "black walnut", "brazil nut", "california walnut",
                                        "cashew", "hazelnut", "heartnut", "macadamia", "pecan",
                                        "pine nut", "pistachio", "walnut"}));
    for (const char* other : {"filbert", "japanese walnut", "bush nut", "pinon nut",
                              "english walnut", "persian walnut"}) {
        const AllergenWord* word = findAllergenWord(other);
        ASSERT_NE(word, nullptr) << other;
        EXPECT_TRUE(word->isUsTreeNut && word->isOtherName) << other;
    }
    for (const char* none : {"coconut", "chestnut", "beech nut", "butternut", "hickory nut",
                             "lychee", "pili nut", "shea nut", "ginkgo nut"}) {
        const AllergenWord* word = findAllergenWord(none);
        ASSERT_NE(word, nullptr) << none;
        EXPECT_FALSE(word->isUsTreeNut) << none;
        EXPECT_TRUE(word->substances.empty()) << none;
    }
}

TEST(AllergenLists, WordsThatACookMayNotThinkOf)
{
    EXPECT_EQ(labelsOfWord(AllergenList::Eu14, "celeriac"), std::vector<std::string>{"celery"});
    EXPECT_EQ(labelsOfWord(AllergenList::Us9, "celeriac"), std::vector<std::string>{});
    EXPECT_EQ(labelsOfWord(AllergenList::Eu14, "Worcestershire-type sauce"),
              (std::vector<std::string>{"cereals containing gluten", "fish"}));
    EXPECT_EQ(labelsOfWord(AllergenList::Us9, "tahini"), std::vector<std::string>{"sesame"});
    EXPECT_EQ(labelsOfWord(AllergenList::Us9, "soy sauce"),
              (std::vector<std::string>{"wheat", "soybeans"}));
    EXPECT_EQ(labelsOfWord(AllergenList::Eu14, "queensland nut"), std::vector<std::string>{"nuts"});
}

TEST(AllergenLists, SulphitesCountAboveTenMilligrams)
{
    EXPECT_FALSE(mustDeclareSulphites(AllergenList::Eu14, 10));
    EXPECT_TRUE(mustDeclareSulphites(AllergenList::Uk14, 10.1));
    EXPECT_FALSE(mustDeclareSulphites(AllergenList::Us9, 100));
}

TEST(AllergenLists, RefinedThingsAreExemptFromDeclaringByAnnexII)
{
    for (const char* exempt :
         {"glucose syrup from wheat", "glucose syrup from barley", "spirit distilled from cereals",
          "spirit distilled from whey", "spirit distilled from nuts", "fully refined soya oil",
          "fish gelatine as a carrier", "isinglass as a fining"}) {
        const AllergenWord* word = findAllergenWord(exempt);
        ASSERT_NE(word, nullptr) << exempt;
        EXPECT_EQ(word->exemptIn, (std::vector{AllergenList::Eu14, AllergenList::Uk14})) << exempt;
        EXPECT_FALSE(word->substances.empty()) << exempt; // guests are told of it all the same
    }
}

TEST(AllergenLists, EverySubstanceThatALawNamesRoundTripsThroughItsName)
{
    std::set<Substance> named;
    for (const AllergenLabel& label : allAllergenLabels()) {
        EXPECT_FALSE(label.substances.empty()) << label.name;
        EXPECT_FALSE(label.source.empty()) << label.name;
        named.insert(label.substances.begin(), label.substances.end());
    }
    for (const Substance substance : named) {
        EXPECT_EQ(findSubstance(nameOf(substance)), substance);
    }
}

TEST(AllergenLists, TablesNameTheLineThatCannotBeRead)
{
    const auto label = readAllergenLabels("list\tnumber\tlabel\tsubstances\tsource\tsection\n"
                                          "eu\t1\tx\tmoonstone\ts\t-\n");
    ASSERT_FALSE(label);
    EXPECT_NE(label.error().forCook.find("line 2"), std::string::npos) << label.error().forCook;
    EXPECT_FALSE(readAllergenLabels("list\tnumber\tlabel\tsubstances\tsource\tsection\n"
                                    "mars\t1\tx\tmilk\ts\t-\n"));
    EXPECT_FALSE(readAllergenWords("word\tsubstances\tus_tree_nut\texempt_in\tsource\tsection\n"
                                   "x\tmilk\t-\tmars\ts\t-\n"));
}

} // namespace
} // namespace suppertide
