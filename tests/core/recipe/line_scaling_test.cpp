// How the amounts of lines follow the portions.
#include <gtest/gtest.h>

#include "core/recipe/line_scaling.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {
namespace {

const Amount hundred{Rational{100}, Unit::Gram};

Rational grams(const Made& made, const LineScaling& scaling)
{
    return amountIn(made, hundred, scaling).value;
}

Made whole(const Portions& recipe, const Portions& made)
{
    return {recipe, made, made};
}

TEST(LineScaling, InProportionIsExactInAnyNumberOfSteps)
{
    test::forEachSeed(300, [](test::Random& random) {
        const Portions recipe{random.between(1, 24)};
        const Portions first{random.between(1, 96), random.between(1, 4)};
        const Portions second{random.between(1, 96), random.between(1, 4)};
        const Amount range{Rational{random.between(1, 100), 3}, Unit::UsCup, Rational{50}};
        const Amount there = amountIn(whole(recipe, first), range, InProportion{});
        EXPECT_EQ(amountIn(whole(first, second), there, InProportion{}),
                  amountIn(whole(recipe, second), range, InProportion{}));
    });
}

TEST(LineScaling, SharesOfWhatStaysTheSameAddUpToIt)
{
    const Made three{Portions{8}, Portions{12}, Portions{3}};
    const Made nine{Portions{8}, Portions{12}, Portions{9}};
    for (const LineScaling& scaling : {LineScaling{SameForAny{}}, LineScaling{ByPower{}}}) {
        const Rational all = grams(whole(Portions{8}, Portions{12}), scaling);
        EXPECT_EQ(grams(three, scaling) + grams(nine, scaling), all);
    }
    EXPECT_EQ(grams(three, SameForAny{}), Rational{25});
}

TEST(LineScaling, ABatchTakesWhatFillsItHoweverFewEatOfIt)
{
    const EachBatch six{Portions{6}};
    EXPECT_EQ(grams(whole(Portions{6}, Portions{1}), six), Rational{100});
    EXPECT_EQ(grams(whole(Portions{6}, Portions{6}), six), Rational{100});
    EXPECT_EQ(grams(whole(Portions{6}, Portions(13, 2)), six), Rational{200});
    EXPECT_EQ(grams(whole(Portions{6}, Portions{18}), six), Rational{300});
    EXPECT_EQ(grams(whole(Portions{6}, Portions{18}), EachBatch{}), Rational{100});
}

TEST(LineScaling, APowerGrowsMoreSlowlyThanThePot)
{
    EXPECT_EQ(grams(whole(Portions{4}, Portions{16}), ByPower{}), Rational{200});
    EXPECT_EQ(grams(whole(Portions{16}, Portions{4}), ByPower{}), Rational{50});
    EXPECT_EQ(grams(whole(Portions{4}, Portions{16}), ByPower{Rational{1}}), Rational{400});
    EXPECT_EQ(grams(whole(Portions{4}, Portions{16}), ByPower{Rational{0}}), Rational{100});
    // 2^(3/4) = 1.68179…
    EXPECT_EQ(grams(whole(Portions{4}, Portions{8}), ByPower{Rational(3, 4)}),
              Rational(16'818, 100));
}

TEST(LineScaling, APowerIsNearlyTheSameInTwoSteps)
{
    // Rounded to 1/10000 of the amount at each step.
    test::forEachSeed(300, [](test::Random& random) {
        const Portions recipe{random.between(2, 12)};
        const Portions first{random.between(2, 48)};
        const Portions second{random.between(2, 48)};
        const ByPower rule{Rational{random.between(1, 4), 4}};
        const Amount there = amountIn(whole(recipe, first), hundred, rule);
        const double twice = amountIn(whole(first, second), there, rule).value.toDouble();
        const double once = grams(whole(recipe, second), rule).toDouble();
        EXPECT_NEAR(twice, once, 0.0051 + there.value.toDouble() / 20'000 + once / 5'000);
    });
}

TEST(LineScaling, AMouldIsFilledOnceForTheRecipesPortions)
{
    const ByMould twentyFour{RoundMould{24_cm}};
    EXPECT_EQ(grams(whole(Portions{8}, Portions{8}), twentyFour), Rational{100});
    EXPECT_EQ(grams(whole(Portions{8}, Portions{5}), twentyFour), Rational{100});
    EXPECT_EQ(grams(whole(Portions{8}, Portions{9}), twentyFour), Rational{200});
    // 28 cm against 24 cm: (28/24)² = 49/36, which serves 10.9.
    Made larger = whole(Portions{8}, Portions{10});
    larger.mould = RoundMould{28_cm};
    EXPECT_EQ(grams(larger, twentyFour), Rational(4900, 36));
    larger.batch = larger.all = Portions{11};
    EXPECT_EQ(grams(larger, twentyFour), Rational(9800, 36));
}

TEST(LineScaling, ForNobodyTakesNothing)
{
    for (const LineScaling& scaling :
         {LineScaling{InProportion{}}, LineScaling{SameForAny{}}, LineScaling{EachBatch{}},
          LineScaling{ByPower{}}, LineScaling{ByMould{}}}) {
        EXPECT_EQ(grams(whole(Portions{8}, Portions{0}), scaling), Rational{0});
    }
}

TEST(LineScaling, KnowsWhichRulesCannotBe)
{
    EXPECT_TRUE(isPossible(LineScaling{ByPower{Rational{1}}}));
    EXPECT_FALSE(isPossible(LineScaling{ByPower{Rational(11, 10)}}));
    EXPECT_FALSE(isPossible(LineScaling{ByPower{Rational{-1, 2}}}));
    EXPECT_TRUE(isPossible(LineScaling{EachBatch{Portions(1, 2)}}));
    EXPECT_FALSE(isPossible(LineScaling{EachBatch{Portions{0}}}));
    EXPECT_TRUE(isPossible(LineScaling{ByMould{RoundMould{1_cm}}}));
    EXPECT_FALSE(isPossible(LineScaling{ByMould{RoundMould{Length::ofSmallest(9)}}}));
    EXPECT_FALSE(isPossible(LineScaling{ByMould{RectangularMould{20_cm, 151_cm}}}));
}

TEST(Moulds, GoByTheirBottoms)
{
    EXPECT_EQ(areaRatio(RoundMould{20_cm}, RoundMould{10_cm}), Rational{4});
    EXPECT_NEAR(areaRatio(RectangularMould{20_cm, 20_cm}, RoundMould{20_cm}).toDouble(),
                4 / 3.14159265358979, 2e-7);
    EXPECT_EQ(nameOf(Mould{RoundMould{24_cm}}), "round 24 cm");
    EXPECT_EQ(nameOf(Mould{RectangularMould{20_cm, 20_cm}}), "square 20 cm");
    EXPECT_EQ(nameOf(Mould{RectangularMould{Length::ofSmallest(205), 30_cm}}), "20.5 × 30 cm");
}

} // namespace
} // namespace suppertide
