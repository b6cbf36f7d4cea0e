// A variant made fit for a guest by ingredients of the table.
#include <gmock/gmock.h>

#include "core/occasion/line_swaps.h"

namespace suppertide {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

IngredientLine line(const std::string& ingredient)
{
    IngredientLine made;
    made.id = LineId{ingredient};
    made.ingredient = ingredient;
    made.amount = {Rational{100}, Unit::Gram};
    return made;
}

Recipe recipeOf(std::vector<IngredientLine> lines)
{
    Recipe recipe;
    recipe.id = RecipeId{"dish"};
    recipe.name = "Dish";
    recipe.common.lines = std::move(lines);
    recipe.variants.resize(1);
    recipe.variants.front().id = VariantId{"plain"};
    recipe.variants.front().name = "plain";
    return recipe;
}

Guest avoiding(std::vector<Substance> substances)
{
    Guest guest;
    guest.id = GuestId{"bea"};
    guest.allergies = std::move(substances);
    return guest;
}

std::optional<std::vector<LineSwap>> swaps(const Guest& guest, const Recipe& recipe)
{
    return swapsFor(guest, recipe, VariantId{"plain"}, {{recipe.id, &recipe}}, IngredientBook{},
                    safety::RuleBook::UkEu);
}

TEST(LineSwaps, TakeTheFirstSubstituteOfWhichAllIsKnownAndNothingAvoided)
{
    const Recipe recipe = recipeOf({line("potato"), line("flaked almond"), line("butter")});
    const auto nuts = swaps(avoiding({Substance::Almond}), recipe);
    ASSERT_TRUE(nuts);
    EXPECT_THAT(*nuts,
                ElementsAre(LineSwap{LineId{"flaked almond"}, "flaked almond", "pumpkin seed"}));
    const auto both = swaps(avoiding({Substance::Almond, Substance::Milk}), recipe);
    ASSERT_TRUE(both);
    ASSERT_THAT(*both, SizeIs(2));
    EXPECT_EQ(both->back().instead, "olive oil") << "of margarine the label would tell";
}

TEST(LineSwaps, AreNoneWhereSomethingHasNoSubstituteOrNothingIsInTheWay)
{
    EXPECT_FALSE(swaps(avoiding({Substance::Milk}), recipeOf({line("parmesan"), line("butter")})));
    EXPECT_FALSE(swaps(avoiding({Substance::Fish}), recipeOf({line("butter")})));
    EXPECT_FALSE(swaps(avoiding({Substance::Milk}), recipeOf({line("a thing nobody knows")})));
    EXPECT_FALSE(swaps(Guest{}, recipeOf({line("butter")})));
}

TEST(LineSwaps, ReachNoLineOfAMethod)
{
    Recipe recipe = recipeOf({line("butter")});
    MethodChoice choice;
    choice.id = MethodChoiceId{"how"};
    choice.methods.resize(1);
    choice.methods.front().id = MethodId{"in cream"};
    choice.methods.front().part.lines = {line("single cream")};
    recipe.methods = {choice};
    EXPECT_FALSE(swaps(avoiding({Substance::Milk}), recipe));
}

TEST(LineSwaps, MakeOneMoreVariantWithTheSameAmount)
{
    const Recipe recipe = recipeOf({line("butter")});
    const std::vector<LineSwap> swap{{LineId{"butter"}, "butter", "olive oil"}};
    const Recipe with = withSwapped(recipe, VariantId{"plain"}, swap);
    ASSERT_THAT(with.variants, SizeIs(2));
    const VariantId id = swappedVariant(VariantId{"plain"}, swap);
    EXPECT_EQ(with.variants.back().id, id);
    EXPECT_EQ(with.variants.back().name, "plain, olive oil for butter");
    const auto made = resolve(with, id);
    ASSERT_TRUE(made);
    ASSERT_THAT(made->part.lines, SizeIs(1));
    EXPECT_EQ(made->part.lines.front().ingredient, "olive oil");
    EXPECT_EQ(made->part.lines.front().amount, recipe.common.lines.front().amount);
    EXPECT_THAT(contentsOf(*made).contains, IsEmpty());
    EXPECT_EQ(withSwapped(with, VariantId{"plain"}, swap), with) << "made once";
    EXPECT_EQ(*resolve(with, VariantId{"plain"}), *resolve(recipe, VariantId{"plain"}));
}

} // namespace
} // namespace suppertide
