// Variants carried through: what joins, replaces and drops, and how the ties mend.
#include <gmock/gmock.h>

#include "tests/core/recipe/recipes.h"

namespace suppertide {
namespace {

using test::findStep;
using test::gratin;
using test::line;
using test::step;
using test::wait;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

Variant& other(Recipe& recipe)
{
    return recipe.variants[1];
}

ResolvedRecipe resolvedOther(const Recipe& recipe)
{
    return *resolve(recipe, VariantId{"other"});
}

TEST(Resolve, GivesTheCommonPartForAVariantThatChangesNothing)
{
    const Recipe recipe = gratin();
    EXPECT_EQ(resolve(recipe, VariantId{"plain"})->part, recipe.common);
}

TEST(Resolve, NamesTheVariantThatIsNotThere)
{
    const auto failed = resolve(gratin(), VariantId{"O'Brien's “best” 🥔"});
    ASSERT_FALSE(failed);
    EXPECT_EQ(failed.error().kind, FailureKind::NotFound);
    EXPECT_THAT(failed.error().forCook,
                HasSubstr("“Gratin” has no variant “O'Brien's “best” 🥔”"));
}

TEST(Resolve, AddsAndReplaces)
{
    Recipe recipe = gratin();
    other(recipe).adds.lines = {line("cheese", {Substance::Milk}), line("nuts")};
    other(recipe).adds.steps = {step("brown", {StepId{"bake"}}), step("bake", {}, 50_min)};
    const ResolvedRecipe made = resolvedOther(recipe);
    ASSERT_EQ(made.part.lines.size(), 3U);
    EXPECT_EQ(made.part.lines[1], line("nuts")); // in its old place, without hazelnuts
    ASSERT_EQ(made.part.steps.size(), 4U);
    EXPECT_EQ(findStep(made.part, "bake")->duration.likely, 50_min);
    EXPECT_THAT(findStep(made.part, "bake")->after, IsEmpty());
    EXPECT_THAT(findStep(made.part, "brown")->after, ElementsAre(StepId{"bake"}));
}

TEST(Resolve, LetsWhatCameAfterADroppedStepComeAfterItsPredecessors)
{
    Recipe recipe = gratin();
    other(recipe).dropSteps = {StepId{"slice"}};
    const ResolvedRecipe made = resolvedOther(recipe);
    EXPECT_EQ(findStep(made.part, "slice"), nullptr);
    EXPECT_THAT(findStep(made.part, "bake")->after, ElementsAre(StepId{"peel"}));
    EXPECT_THAT(made.part.waits, IsEmpty()); // both touched it
}

TEST(Resolve, MendsTiesAcrossSeveralDroppedStepsOnceEach)
{
    Recipe recipe = gratin();
    recipe.common.steps.push_back(step("salt", {StepId{"peel"}}));
    recipe.common.steps[2].after = {StepId{"slice"}, StepId{"salt"}};
    other(recipe).dropSteps = {StepId{"slice"}, StepId{"salt"}};
    EXPECT_THAT(findStep(resolvedOther(recipe).part, "bake")->after, ElementsAre(StepId{"peel"}));
    other(recipe).dropSteps.push_back(StepId{"peel"});
    EXPECT_THAT(findStep(resolvedOther(recipe).part, "bake")->after, IsEmpty());
}

TEST(Resolve, EndsThoughDroppedStepsStandInACircle)
{
    Recipe recipe = gratin();
    recipe.common.steps[0].after = {StepId{"slice"}};
    other(recipe).dropSteps = {StepId{"peel"}, StepId{"slice"}};
    EXPECT_THAT(findStep(resolvedOther(recipe).part, "bake")->after, IsEmpty());
}

TEST(Resolve, TakesADroppedLineFromTheStepsThatTookIt)
{
    Recipe recipe = gratin();
    other(recipe).dropLines = {LineId{"nuts"}};
    const ResolvedRecipe made = resolvedOther(recipe);
    EXPECT_THAT(findStep(made.part, "bake")->lines, IsEmpty());
    EXPECT_THAT(contentsOf(made).contains, IsEmpty());
}

TEST(Resolve, DropsWaitsAndSpansByName)
{
    Recipe recipe = gratin();
    other(recipe).dropWaits = {WaitId{"rests"}};
    EXPECT_THAT(resolvedOther(recipe).part.waits, ElementsAre(wait("stands", "peel", "slice")));
}

TEST(Resolve, KeepsTheTiesOfAStepThatIsDroppedAndAddedAgain)
{
    Recipe recipe = gratin();
    other(recipe).dropSteps = {StepId{"slice"}};
    other(recipe).adds.steps = {step("slice", {StepId{"peel"}}, 3_min)};
    const ResolvedRecipe made = resolvedOther(recipe);
    EXPECT_THAT(findStep(made.part, "bake")->after, ElementsAre(StepId{"slice"}));
    EXPECT_EQ(made.part.waits.size(), 2U);
}

TEST(Resolve, DropsAndMendsWithinMethodsToo)
{
    Recipe recipe = gratin();
    Method pan{MethodId{"pan"}, "in a pan", 0, {}};
    pan.part.steps = {step("heat", {StepId{"slice"}}), step("fry", {StepId{"heat"}})};
    pan.part.lines = {line("almonds", {Substance::Almond})};
    recipe.methods = {{MethodChoiceId{"how"}, "how it is cooked", {pan}}};
    other(recipe).dropSteps = {StepId{"heat"}, StepId{"slice"}};
    other(recipe).dropLines = {LineId{"almonds"}};
    const ResolvedRecipe made = resolvedOther(recipe);
    const RecipePart& part = made.methods[0].methods[0].part;
    EXPECT_EQ(findStep(part, "heat"), nullptr);
    EXPECT_THAT(findStep(part, "fry")->after, ElementsAre(StepId{"peel"}));
    EXPECT_THAT(contentsOf(made).contains, ElementsAre(Substance::Hazelnut));
}

TEST(Contents, TakeInWhatAnyMethodUses)
{
    Recipe recipe = gratin();
    Method pan{MethodId{"pan"}, "in a pan", 0, {}};
    pan.part.lines = {line("butter", {Substance::Milk})};
    Method oven{MethodId{"oven"}, "in the oven", 0, {}};
    oven.part.lines = {line("beer", {Substance::Barley, Substance::Alcohol})};
    recipe.methods = {{MethodChoiceId{"how"}, "how", {pan, oven}}};
    EXPECT_THAT(
        contentsOf(*resolve(recipe, VariantId{"plain"})).contains,
        ElementsAre(Substance::Barley, Substance::Milk, Substance::Hazelnut, Substance::Alcohol));
}

TEST(Contents, TellWhatNobodyHasSaidFromNothing)
{
    Recipe recipe = gratin();
    recipe.common.lines[0].contains.reset();
    recipe.common.lines[0].ingredient = "moon potatoes";
    const Contents contents = contentsOf(*resolve(recipe, VariantId{"plain"}));
    EXPECT_THAT(contents.unknown, ElementsAre("moon potatoes"));
    EXPECT_THAT(contents.contains, ElementsAre(Substance::Hazelnut));
}

TEST(Contents, AreLookedUpInTheTableWhereTheLineSaysNothing)
{
    Recipe recipe = gratin();
    recipe.common.lines[0].contains.reset();
    recipe.common.lines[0].ingredient = "Parmesan";
    const Contents contents = contentsOf(*resolve(recipe, VariantId{"plain"}));
    EXPECT_THAT(contents.unknown, IsEmpty());
    EXPECT_THAT(contents.contains,
                ElementsAre(Substance::Milk, Substance::Hazelnut, Substance::AnimalRennet));
}

} // namespace
} // namespace suppertide
