// The table of ingredients: found by any of their names, and consistent in themselves.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>

#include "core/food/allergen_list.h"
#include "core/food/ingredient.h"
#include "core/food/usda_foods.h"

namespace suppertide {
namespace {

const Ingredient& known(std::string_view name)
{
    const Ingredient* found = findIngredient(name);
    EXPECT_NE(found, nullptr) << name;
    static const Ingredient none;
    return found == nullptr ? none : *found;
}

TEST(Ingredients, AreFoundByAnyOfTheirNames)
{
    for (const Ingredient& each : allIngredients()) {
        EXPECT_EQ(findIngredient(each.name), &each) << each.name;
        for (const std::string& name : each.otherNames) {
            EXPECT_EQ(findIngredient(name), &each) << name;
        }
    }
}

TEST(Ingredients, HaveNoNameTwice)
{
    std::map<std::string, std::string> owners;
    for (const Ingredient& each : allIngredients()) {
        std::vector<std::string> names = each.otherNames;
        names.push_back(each.name);
        for (const std::string& name : names) {
            const auto [owner, isNew] = owners.emplace(nameKey(name), each.name);
            EXPECT_TRUE(isNew || owner->second == each.name)
                << name << " is both " << owner->second << " and " << each.name;
        }
    }
    EXPECT_GE(allIngredients().size(), 250U);
}

TEST(Ingredients, AreFoundInTheirPluralAndWhateverTheirCase)
{
    EXPECT_EQ(known("Tomatoes").name, "tomato");
    EXPECT_EQ(known("CHERRIES").name, "cherry");
    EXPECT_EQ(known("bay leaves").name, "bay leaf");
    EXPECT_EQ(known("radishes").name, "radish");
    EXPECT_EQ(known("anchovies").name, "anchovy");
    EXPECT_EQ(known("red chillies").name, "red chilli");
    EXPECT_EQ(known("gruyère").name, "gruyère");
    EXPECT_EQ(known("Gruyere").name, "gruyère");
    EXPECT_EQ(known("Garlic  Cloves").name, "garlic clove");
    EXPECT_EQ(known("couscous").name, "couscous");
    EXPECT_EQ(known("asparagus").name, "asparagus");
}

TEST(Ingredients, AreFoundWithWordsThatOnlySayHowTheyAre)
{
    EXPECT_EQ(known("very ripe tomatoes").name, "tomato");
    EXPECT_EQ(known("large, ripe avocados").name, "avocado");
    EXPECT_EQ(known("finely chopped fresh parsley").name, "parsley");
    EXPECT_EQ(known("side of salmon, skin on").name, "salmon");
    EXPECT_EQ(known("butter, softened").name, "butter");
    // What has a name of its own is not shortened.
    EXPECT_EQ(known("whole chicken").name, "chicken");
    EXPECT_EQ(known("young white cheese, vegetable rennet").name,
              "young white cheese, vegetable rennet");
}

TEST(Ingredients, AreNeverGuessedFromAPartOfTheirName)
{
    for (const char* name : {"almond butter", "rice, with almonds", "nut roast", "cheese straws",
                             "butter beans in cream", "vegan cheese", "", " ", ","}) {
        EXPECT_EQ(findIngredient(name), nullptr) << name;
    }
}

TEST(Ingredients, HaveASourceForEachFigure)
{
    for (const Ingredient& each : allIngredients()) {
        EXPECT_EQ(each.density.has_value(), !each.sources.density.empty()) << each.name;
        EXPECT_EQ(each.pieces.empty(), each.sources.pieces.empty()) << each.name;
        EXPECT_EQ(each.ediblePerThousand.has_value(), !each.sources.edible.empty()) << each.name;
        EXPECT_EQ(each.parts.empty(), each.sources.parts.empty()) << each.name;
        EXPECT_EQ(each.fridgeDays || each.cupboardDays, !each.sources.keeps.empty()) << each.name;
        if (!each.usdaNumber.empty()) {
            EXPECT_TRUE(findUsdaFood(each.usdaNumber)) << each.name;
        }
    }
}

TEST(Ingredients, AreOfAWeightThatCanBe)
{
    for (const Ingredient& each : allIngredients()) {
        if (each.density) { // from dill to honey
            EXPECT_GE(each.density->milligramsPerMillilitre, 30) << each.name;
            EXPECT_LE(each.density->milligramsPerMillilitre, 1500) << each.name;
        }
        for (const PieceMass& piece : each.pieces) {
            EXPECT_LE(piece.mass, 5000_g) << each.name;
        }
    }
}

TEST(Ingredients, PartsNeverExceedTheWhole)
{
    for (const Ingredient& each : allIngredients()) {
        int shares = 0;
        Grams parts;
        Grams whole;
        for (const PieceMass& piece : each.pieces) {
            if (piece.unit == Unit::Piece) {
                whole = piece.mass * Rational{1000, each.ediblePerThousand.value_or(1000)};
            }
        }
        for (const PartMass& part : each.parts) {
            shares += part.perThousand.value_or(0);
            // Zest is part of the peel.
            if (part.each && part.part != IngredientPart::Zest) {
                parts += *part.each;
            }
        }
        EXPECT_LE(shares, 1000) << each.name;
        if (!parts.isZero()) {
            EXPECT_LE(parts, whole) << each.name;
        }
    }
}

TEST(Ingredients, ContainWhatTheListsOfAllergensSayOfTheirNames)
{
    // As published in the lists (allergen_words.tsv): an ingredient of that very name has them.
    for (const AllergenWord& word : allAllergenWords()) {
        const Ingredient* found = findIngredient(word.word);
        if (found == nullptr || !word.exemptIn.empty()) {
            continue;
        }
        for (const Substance substance : word.substances) {
            EXPECT_TRUE(std::ranges::find(found->contains, substance) != found->contains.end() ||
                        found->checkLabel)
                << word.word << ": " << nameOf(substance);
        }
    }
}

TEST(IngredientBook, PutsTheUsersOwnFirst)
{
    Ingredient mine;
    mine.name = "plain flour";
    mine.otherNames = {"house blend"};
    mine.contains = {Substance::Rye};
    const std::vector<Ingredient> own{mine};
    const IngredientBook book(own);
    ASSERT_NE(book.find("Plain Flours"), nullptr);
    EXPECT_EQ(*book.find("Plain Flours"), mine);
    EXPECT_EQ(*book.find("house blend"), mine);
    EXPECT_EQ(book.find("butter"), findIngredient("butter"));
    const IngredientBook copy = book; // NOLINT(performance-unnecessary-copy-initialization)
    EXPECT_EQ(*copy.find("plain flour"), mine);
    EXPECT_EQ(IngredientBook{}.find("plain flour"), findIngredient("plain flour"));
}

TEST(IngredientTable, SaysWhichCellIsWrong)
{
    const std::string head =
        "name\tother_names\tclass\tsection\tcontains\tmay_contain\tlabel\tdensity\tdensity_source\t"
        "pieces\tpieces_source\tyield\tyield_source\tparts\tparts_source\tfridge_days\t"
        "cupboard_days\tkeeps_source\tsr26\n";
    const std::string good = "x\t-\tdry goods\tbaking\t-\t-\t-\t0.5\ts\tclove 3\ts\t0.9\ts\tjuice "
                             "4\ts\t3\t-\ts\t-\n";
    EXPECT_TRUE(readIngredients(head + good));
    const auto fails = [&](const std::string& from, const std::string& to, const char* column) {
        std::string row = good;
        row.replace(row.find(from), from.size(), to);
        const auto read = readIngredients(head + row);
        ASSERT_FALSE(read) << to;
        EXPECT_THAT(read.error().forLog + read.error().forCook, testing::HasSubstr(column));
    };
    fails("dry goods", "moon", "class");
    fails("baking", "moon", "section");
    fails("0.5", "-1", "density");
    fails("clove 3", "moon 3", "pieces");
    fails("clove 3", "clove 0", "pieces");
    fails("0.9", "1.2", "yield");
    fails("juice 4", "juice x", "parts");
    fails("\t3\t", "\t0\t", "fridge_days");
}

} // namespace
} // namespace suppertide
