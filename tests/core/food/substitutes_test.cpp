// What may stand in for an ingredient.
#include <gmock/gmock.h>

#include <set>

#include "core/food/ingredient.h"
#include "core/food/substitutes.h"

namespace suppertide {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

TEST(Substitutes, AreOtherIngredientsOfTheTable)
{
    std::set<std::string> told;
    for (const Substitutes& each : allSubstitutes()) {
        const Ingredient* of = findIngredient(each.ingredient);
        ASSERT_NE(of, nullptr) << each.ingredient;
        EXPECT_EQ(of->name, each.ingredient);
        EXPECT_TRUE(told.insert(each.ingredient).second) << each.ingredient << " stands twice";
        EXPECT_FALSE(each.source.empty()) << each.ingredient;
        for (const std::string& name : each.instead) {
            const Ingredient* instead = findIngredient(name);
            ASSERT_NE(instead, nullptr) << name;
            EXPECT_EQ(instead->name, name);
            EXPECT_NE(instead, of);
        }
    }
}

TEST(Substitutes, AreFoundByAnyNameOfTheIngredient)
{
    EXPECT_THAT(substitutesFor("soy milk"), IsEmpty());
    EXPECT_THAT(substitutesFor("Butter"), Contains("olive oil"));
    EXPECT_THAT(substitutesFor("flaked almonds"), Contains("pumpkin seed"));
    EXPECT_THAT(substitutesFor("flaked almonds, toasted"), Contains("pumpkin seed"));
    EXPECT_THAT(substitutesFor("a thing nobody knows"), IsEmpty());
}

TEST(Substitutes, OfASpoiltTableAreRefusedWithTheLine)
{
    const auto read = readSubstitutes("ingredient\tinstead\tsource\nbutter\t-\tx\n");
    ASSERT_FALSE(read);
    EXPECT_THAT(read.error().forCook, HasSubstr("substitutes"));
}

} // namespace
} // namespace suppertide
