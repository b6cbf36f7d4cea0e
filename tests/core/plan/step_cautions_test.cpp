#include <gmock/gmock.h>

#include "core/plan/step_cautions.h"

namespace suppertide {

namespace {

using safety::CautionKind;
using testing::ElementsAre;
using testing::IsEmpty;

IngredientLine line(std::string ingredient, std::vector<Substance> contains = {})
{
    IngredientLine result;
    result.ingredient = std::move(ingredient);
    result.contains = std::move(contains);
    return result;
}

FollowedFood bird()
{
    FollowedFood food;
    food.kind.food = FoodClass::RawPoultry;
    food.mass = grams(1500);
    food.steps.resize(3);
    food.steps[0].step = StepId{"salt"};
    food.steps[1].step = StepId{"roast"};
    food.steps[1].treatment = Treatment::Heat;
    food.steps[1].becomes = FoodClass::CookedMeat;
    food.steps[2].step = StepId{"carve"};
    return food;
}

std::vector<CautionKind> deedOf(const Step& step, const std::vector<IngredientLine>& lines = {})
{
    return calledFor(step, lines, {}, TaskRole::Step);
}

TEST(StepCautions, FollowFromToolsByTheirNames)
{
    Step step;
    EXPECT_THAT(deedOf(step), IsEmpty());
    step.uses = {ApplianceUse{"stick blender", Minutes{3}}};
    EXPECT_THAT(deedOf(step), ElementsAre(CautionKind::SharpBlade));
    step.uses = {VesselUse{"pressure cooker", decilitres(60), 1, Minutes{5}}};
    EXPECT_THAT(deedOf(step), ElementsAre(CautionKind::Pressure, CautionKind::Steam));
    step.uses = {ApplianceUse{"blowtorch", Minutes{0}}};
    EXPECT_THAT(deedOf(step), ElementsAre(CautionKind::Torch));
    EXPECT_THAT(deedOf(step, {line("demerara sugar")}),
                ElementsAre(CautionKind::Caramel, CautionKind::Torch));
}

TEST(StepCautions, FollowFromOilAndWineOnABurnerOnly)
{
    Step step;
    const std::vector<IngredientLine> lines{line("olive oil"), line("soil-grown carrots"),
                                            line("cider", {Substance::Alcohol})};
    EXPECT_THAT(deedOf(step, lines), IsEmpty());
    step.uses = {BurnerUse{centimetres(18)}};
    EXPECT_THAT(deedOf(step, lines), ElementsAre(CautionKind::HotOil, CautionKind::AlcoholFlame));
    EXPECT_THAT(deedOf(step, {line("soil-grown carrots")}), IsEmpty());
}

TEST(StepCautions, WarnOfRawMeatUntilItHasBeenCooked)
{
    const FollowedFood food = bird();
    for (const auto& [id, isRaw] : {std::pair{"salt", true}, {"roast", false}, {"carve", false}}) {
        Step step;
        step.id = StepId{id};
        const auto foods = foodsIn({&food}, step.id);
        ASSERT_EQ(foods.size(), 1U);
        const auto cautions = calledFor(step, {}, foods, TaskRole::Step);
        EXPECT_EQ(cautions == std::vector{CautionKind::RawMeat}, isRaw) << id;
    }
}

TEST(StepCautions, WarnOfWhatIsHeavyWhereItIsLifted)
{
    FollowedFood food = bird();
    Step roast;
    roast.id = StepId{"roast"};
    roast.uses = {OvenUse{}};
    const auto at = [&](TaskRole role) {
        return calledFor(roast, {}, foodsIn({&food}, roast.id), role);
    };
    EXPECT_THAT(at(TaskRole::OvenOut), ElementsAre(CautionKind::HotOven));
    EXPECT_THAT(at(TaskRole::Step), IsEmpty());
    food.mass = grams(1499);
    EXPECT_THAT(at(TaskRole::OvenOut), IsEmpty());
    roast.uses.push_back(VesselUse{"casserole", decilitres(40), 1, Minutes{0}});
    EXPECT_THAT(at(TaskRole::OvenOut), ElementsAre(CautionKind::HotOven));
    food.steps[1].isLid = true;
    EXPECT_THAT(at(TaskRole::OvenOut), ElementsAre(CautionKind::Steam, CautionKind::HotOven));
    EXPECT_THAT(at(TaskRole::OvenIn), ElementsAre(CautionKind::HotOven));
}

TEST(StepCautions, AreSaidOnce)
{
    TaskSource source;
    source.cautions = {Caution::Alcohol, Caution::Steam};
    source.alsoCalledFor = {CautionKind::AlcoholFlame, CautionKind::Steam, CautionKind::HotOven};
    EXPECT_THAT(cautionsOf(source),
                ElementsAre(CautionKind::Alcohol, CautionKind::Steam, CautionKind::HotOven));
}

} // namespace

} // namespace suppertide
