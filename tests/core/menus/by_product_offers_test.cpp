// What one dish leaves, offered to another.
#include <gmock/gmock.h>

#include "core/menus/by_product_offers.h"
#include "tests/support/supper/supper.h"

namespace suppertide::menus {
namespace {

using test::Supper;
using testing::IsEmpty;
using testing::SizeIs;

Amount pieces(int count)
{
    return {Rational{count}, Unit::Piece};
}

/// A custard leaves six whites; a meringue takes four.
Supper custardAndMeringue(int whites = 4)
{
    Supper supper;
    Step separate = test::step("Separate eggs", Minutes{10});
    separate.leaves = {{"egg whites", pieces(6)}};
    supper.serve(test::recipe("Custard", {separate}));
    Step whisk = test::step("Whisk", Minutes{10});
    whisk.lines = {LineId{"whites"}};
    Recipe meringue = test::recipe("Meringue", {whisk});
    IngredientLine line;
    line.id = LineId{"whites"};
    line.ingredient = "Egg";
    line.part = IngredientPart::White;
    line.amount = pieces(whites);
    line.contains = {{Substance::Egg}};
    meringue.common.lines = {line};
    supper.serve(meringue);
    return supper;
}

TEST(ByProducts, AreOfferedWhereAnotherDishTakesThatPart)
{
    const auto offers = byProductOffers(custardAndMeringue().input());
    ASSERT_THAT(offers, SizeIs(1));
    EXPECT_EQ(offers[0].name, "egg whites");
    EXPECT_EQ(offers[0].from, "Custard");
    EXPECT_EQ(offers[0].taker, RecipeId{"meringue"});
    EXPECT_EQ(offers[0].wanted, pieces(4));
    EXPECT_EQ(offers[0].left, pieces(6));
}

TEST(ByProducts, AreNotOfferedWhereTheyWouldNotDo)
{
    EXPECT_THAT(byProductOffers(custardAndMeringue(7).input()), IsEmpty()) << "six are left";
    Supper yolks = custardAndMeringue();
    yolks.recipes.at(RecipeId{"meringue"}).common.lines[0].part = IngredientPart::Yolk;
    EXPECT_THAT(byProductOffers(yolks.input()), IsEmpty());
    Supper whole = custardAndMeringue();
    whole.recipes.at(RecipeId{"meringue"}).common.lines[0].part = IngredientPart::Whole;
    EXPECT_THAT(byProductOffers(whole.input()), IsEmpty());
}

TEST(ByProducts, TakenTieTheTwoStepsInThePlan)
{
    Supper supper = custardAndMeringue();
    const auto offers = byProductOffers(supper.input());
    ASSERT_THAT(offers, SizeIs(1));
    EXPECT_TRUE(supper.formulated()->problem.choices.empty());
    Recipe& meringue = supper.recipes.at(RecipeId{"meringue"});
    meringue = withByProduct(meringue, offers[0].line, offers[0].name);
    EXPECT_THAT(byProductOffers(supper.input()), IsEmpty()) << "offered once";
    const FormulationPtr formulated = supper.formulated();
    ASSERT_EQ(formulated->problem.choices.size(), 1U);
    EXPECT_EQ(formulated->choices[ChoiceIndex{0}].kind, ChoiceKind::ByProduct);
}

} // namespace
} // namespace suppertide::menus
