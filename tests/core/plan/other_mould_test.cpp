// Another tin or mould for a dish: amounts and time follow.
#include <gmock/gmock.h>

#include <cmath>

#include "core/plan/other_tins.h"
#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

/// A cake in a round tin of 24 cm for 8, with icing that does not go by the tin.
Recipe cake()
{
    Step mix = step("Mix the batter", 10_min);
    Step bake = inOven("Bake the cake", 60_min, 180_degC);
    bake.duration = {50_min, 60_min, 70_min};
    bake.portionsPerBatch = Portions{8};
    bake.detail = "until a skewer comes out clean";
    Step ice = step("Ice the cake", 10_min);
    Recipe made = recipeInOrder("Cake", {mix, bake, ice});
    IngredientLine batter = ingredient("flour", {});
    batter.scaling = ByMould{RoundMould{24_cm}};
    IngredientLine icing = ingredient("icing sugar", {});
    made.common.steps[0].lines = {batter.id};
    made.common.steps[2].lines = {icing.id};
    made.common.lines = {batter, icing};
    return made;
}

FormulationPtr bakedIn(std::optional<OtherMould> mould, int portions = 8)
{
    Supper supper;
    supper.serve(cake(), portions).mould = mould;
    return supper.formulated();
}

Rational amountIn(const Formulation& formulation, const std::string& task)
{
    Rational all;
    for (const ScaledLine& line : sourceOf(formulation, task).lines) {
        all = all + line.amount.value;
    }
    return all;
}

TEST(OtherMould, TakesAsMuchMoreAsItsBottomIsLarger)
{
    // (28/24)² = 49/36: one tin serves all 8.
    const OtherMould larger{RoundMould{28_cm}, false};
    const FormulationPtr formulation = bakedIn(larger);
    EXPECT_EQ(amountIn(*formulation, "cake/*/mix-the-batter"), Rational(100 * 49, 36));
    EXPECT_EQ(amountIn(*formulation, "cake/*/ice-the-cake"), Rational(100));
    EXPECT_EQ(taskOf(*formulation, "cake/*/bake-the-cake").duration, 60_min);
    EXPECT_THAT(sourceOf(*formulation, "cake/*/bake-the-cake").detail,
                "in a tin or mould round 28 cm instead of round 24 cm; until a skewer comes out "
                "clean");
}

TEST(OtherMould, NeedsTwoOfASmallerOne)
{
    // (18/24)² = 9/16: a tin serves 4½, and two are baked, one after the other.
    const OtherMould smaller{RoundMould{18_cm}, false};
    const FormulationPtr formulation = bakedIn(smaller);
    EXPECT_EQ(amountIn(*formulation, "cake/*/mix-the-batter"), Rational(100 * 2 * 9, 16));
    EXPECT_EQ(sourceOf(*formulation, "cake/*/bake-the-cake#1").portions, Portions{4});
    EXPECT_EQ(sourceOf(*formulation, "cake/*/bake-the-cake#2").portions, Portions{4});
}

TEST(OtherMould, BakesLongerWhereTheSameAmountsAreDeeper)
{
    const OtherMould deeper{RoundMould{20_cm}, true};
    const FormulationPtr formulation = bakedIn(deeper);
    EXPECT_EQ(amountIn(*formulation, "cake/*/mix-the-batter"), Rational(100));
    // Depth 1.44; common practice: time ∝ depth^1.75, from 1.5 to 2.
    const DurationRange& range = sourceOf(*formulation, "cake/*/bake-the-cake").duration;
    EXPECT_EQ(range.likely.count(), std::llround(60 * std::pow(1.44, 1.75)));
    EXPECT_EQ(range.least.count(), std::llround(50 * std::pow(1.44, 1.5)));
    EXPECT_EQ(range.most.count(), std::llround(70 * std::pow(1.44, 2.0)));
}

TEST(OtherMould, ChangesNothingWhereItIsTheRecipesOwn)
{
    for (const bool keepsAmounts : {false, true}) {
        const FormulationPtr formulation = bakedIn(OtherMould{RoundMould{24_cm}, keepsAmounts});
        const FormulationPtr own = bakedIn(std::nullopt);
        EXPECT_EQ(amountIn(*formulation, "cake/*/mix-the-batter"), Rational(100));
        EXPECT_EQ(taskOf(*formulation, "cake/*/bake-the-cake").duration,
                  taskOf(*own, "cake/*/bake-the-cake").duration);
    }
}

TEST(OtherMould, ThatCannotBeIsAFaultWithAWayOut)
{
    const auto told = [](const Recipe& recipe, const OtherMould& mould) {
        Supper supper;
        supper.serve(recipe).mould = mould;
        const auto formulation = formulate(supper.input());
        return formulation ? std::string() : formulation.error().forCook;
    };
    EXPECT_EQ(told(cake(), {RoundMould{12_cm}, true}), ""); // four times as deep
    EXPECT_THAT(told(cake(), {RoundMould{11_cm}, true}), HasSubstr("more than 4 times as deep"));
    EXPECT_EQ(told(cake(), {RoundMould{11_cm}, false}), "");
    EXPECT_THAT(told(recipe("Soup", {step("Stir the soup", 5_min)}), {RoundMould{20_cm}, false}),
                HasSubstr("names no tin or mould"));
    EXPECT_THAT(told(cake(), {RoundMould{Length::ofSmallest(5)}, false}), HasSubstr("1 to 150 cm"));
}

Vessel vessel(const std::string& kind, Length across)
{
    return {KitchenItemId{slug(kind)}, "The " + kind, kind, Litres{}, across, 1};
}

TEST(OtherTins, AreThoseOfTheKitchenThatAreNeitherTheSameNorFarTooLargeOrSmall)
{
    Kitchen kitchen;
    kitchen.vessels = {vessel("cake tin", 20_cm),  vessel("wide pan", 28_cm),
                       vessel("cake tin", 24_cm),  vessel("tartlet tins", 20_cm),
                       vessel("pie dish", 28_cm),  vessel("dish, oval", Length{}),
                       vessel("cake ring", 48_cm), vessel("Mould", 12_cm),
                       vessel("mould", 11_cm),     vessel("dish", 49_cm)};
    std::vector<std::string> names;
    for (const OtherTin& tin : otherTins(cake(), kitchen)) {
        names.push_back(tin.name + " " + nameOf(tin.mould));
    }
    // 12 and 48 cm are a quarter of the bottom and four times it.
    EXPECT_THAT(names, ElementsAre("The cake tin round 20 cm", "The pie dish round 28 cm",
                                   "The cake ring round 48 cm", "The Mould round 12 cm"));
    EXPECT_THAT(otherTins(recipe("Soup", {step("Stir the soup", 5_min)}), kitchen), IsEmpty());
}

/// What is read of a tin is what a dish that is put into it does.
TEST(OtherTins, SayWhatADishInThemDoes)
{
    Kitchen kitchen;
    kitchen.vessels = {vessel("cake tin", 20_cm), vessel("pie dish", 28_cm)};
    const auto tins = otherTins(cake(), kitchen);
    ASSERT_THAT(tins, SizeIs(2));
    for (const OtherTin& tin : tins) {
        ASSERT_THAT(tin.asDeep, SizeIs(1)) << "icing does not go by the tin";
        ASSERT_THAT(tin.sameAmounts, SizeIs(1));
        EXPECT_EQ(tin.asDeep[0].ingredient, "flour");
        EXPECT_EQ(tin.sameAmounts[0].step, "Bake the cake");
        const FormulationPtr same = bakedIn(OtherMould{tin.mould, true});
        EXPECT_EQ(tin.sameAmounts[0].duration, sourceOf(*same, "cake/*/bake-the-cake").duration);
        // A cake for as few as one tin serves.
        const int few = 5;
        ASSERT_LE(Portions{few}, tin.serves);
        const FormulationPtr deep = bakedIn(OtherMould{tin.mould, false}, few);
        EXPECT_EQ(tin.asDeep[0].amount.value, amountIn(*deep, "cake/*/mix-the-batter"));
    }
    EXPECT_EQ(tins[0].serves, Portions(8 * 25, 36));
    EXPECT_EQ(tins[1].serves, Portions(8 * 49, 36));
}

} // namespace

} // namespace suppertide::test
