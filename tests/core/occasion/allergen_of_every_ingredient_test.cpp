// An allergen cannot be missed: for every ingredient of the table that has one, a guest who avoids
// it is warned whichever way it comes into the dish, and is not once the line is dropped.
#include <gmock/gmock.h>

#include <algorithm>

#include "core/occasion/occasion.h"

namespace suppertide {
namespace {

IngredientLine line(const std::string& id, const std::string& ingredient)
{
    IngredientLine result;
    result.id = LineId{id};
    result.ingredient = ingredient;
    result.amount = {Rational{100}, Unit::Gram};
    return result;
}

Recipe recipe(const std::string& id)
{
    Recipe result;
    result.id = RecipeId{id};
    result.name = id;
    result.portions = Portions{4};
    result.common.lines = {line("water", "water")};
    Variant plain;
    plain.id = VariantId{"plain"};
    plain.name = "plain";
    result.variants = {plain};
    return result;
}

/// A course of one dish of which one guest eats, who avoids one substance.
class Table
{
public:
    explicit Table(std::vector<Recipe> recipes) : recipes_(std::move(recipes))
    {
        for (const Recipe& each : recipes_) {
            table_.emplace(each.id, &each);
        }
    }

    /// What of the dish, the last recipe, is said not to suit the guest.
    [[nodiscard]] Helping helping(Substance avoided, const std::string& variant = "plain") const
    {
        Occasion occasion;
        Guest guest;
        guest.id = GuestId{"guest"};
        guest.allergies = {avoided};
        occasion.guests = {guest};
        Course course;
        course.id = CourseId{"course"};
        Dish dish;
        dish.id = DishId{"dish"};
        dish.recipe = recipes_.back().id;
        dish.mix = {{VariantId{variant}, Portions{1}, {}}};
        course.dishes = {dish};
        occasion.courses = {course};
        const std::vector<Helping> helpings = helpingsOf(occasion, course, table_, book_);
        EXPECT_EQ(helpings.size(), 1U);
        return helpings.empty() ? Helping{} : helpings.front();
    }

    [[nodiscard]] bool warns(Substance avoided, const std::string& variant = "plain") const
    {
        return helping(avoided, variant).unsuitable == std::vector{avoided};
    }

    void know(const Ingredient& own) { book_ = IngredientBook(std::vector{own}); }

private:
    std::vector<Recipe> recipes_;
    std::map<RecipeId, const Recipe*> table_;
    IngredientBook book_;
};

template <typename Check>
void forEachAllergen(const Check& check)
{
    int pairs = 0;
    for (const Ingredient& ingredient : allIngredients()) {
        for (const Substance substance : ingredient.contains) {
            SCOPED_TRACE(ingredient.name + ": " + std::string(nameOf(substance)));
            check(ingredient.name, substance);
            ++pairs;
        }
    }
    EXPECT_GT(pairs, 200);
}

TEST(EveryAllergen, WarnsWhereTheDishUsesItDirectly)
{
    forEachAllergen([](const std::string& ingredient, Substance substance) {
        Recipe dish = recipe("dish");
        dish.common.lines.push_back(line("it", ingredient));
        EXPECT_TRUE(Table({dish}).warns(substance));
        // Not because everybody is warned of everything.
        EXPECT_FALSE(Table({recipe("dish")}).warns(substance));
    });
}

TEST(EveryAllergen, WarnsUnderEachOtherNameAndInThePlural)
{
    for (const Ingredient& ingredient : allIngredients()) {
        for (const std::string& name : ingredient.otherNames) {
            Recipe dish = recipe("dish");
            dish.common.lines.push_back(line("it", "Large " + name + "s"));
            for (const Substance substance : ingredient.contains) {
                const Helping helping = Table({dish}).helping(substance);
                // Some plurals are none ("couscouss"): then it is unknown, never free from it.
                EXPECT_TRUE(!helping.unsuitable.empty() || !helping.unknown.empty()) << name;
            }
        }
    }
}

TEST(EveryAllergen, WarnsThroughAPreparation)
{
    forEachAllergen([](const std::string& ingredient, Substance substance) {
        Recipe inner = recipe("inner");
        inner.common.lines.push_back(line("it", ingredient));
        Recipe outer = recipe("outer");
        outer.common.lines.push_back(line("inner", "the inner"));
        outer.common.lines.back().preparation = RecipeId{"inner"};
        Recipe dish = recipe("dish");
        dish.common.lines.push_back(line("outer", "the outer"));
        dish.common.lines.back().preparation = RecipeId{"outer"};
        EXPECT_TRUE(Table({inner, outer, dish}).warns(substance));
    });
}

TEST(EveryAllergen, WarnsThroughAByProduct)
{
    forEachAllergen([](const std::string& ingredient, Substance substance) {
        Recipe giver = recipe("giver");
        giver.common.lines.push_back(line("it", ingredient));
        Step warm;
        warm.id = StepId{"warm"};
        warm.lines = {LineId{"it"}};
        Step strain; // takes nothing itself: what was taken before is in what it leaves
        strain.id = StepId{"strain"};
        strain.after = {StepId{"warm"}};
        strain.leaves = {{"leavings", {Rational{50}, Unit::Gram}}};
        giver.common.steps = {warm, strain};
        Recipe dish = recipe("dish");
        dish.common.lines.push_back(line("leavings", "water"));
        dish.common.lines.back().byProduct = "leavings";
        EXPECT_TRUE(Table({giver, dish}).warns(substance));
    });
}

TEST(EveryAllergen, WarnsThroughALineThatAVariantAdds)
{
    forEachAllergen([](const std::string& ingredient, Substance substance) {
        Recipe dish = recipe("dish");
        Variant with = dish.variants.front();
        with.id = VariantId{"with"};
        with.adds.lines = {line("it", ingredient)};
        dish.variants.push_back(with);
        const Table table({dish});
        EXPECT_TRUE(table.warns(substance, "with"));
        EXPECT_FALSE(table.warns(substance, "plain"));
    });
}

TEST(EveryAllergen, WarnsThroughAMethodThatMayBeTaken)
{
    forEachAllergen([](const std::string& ingredient, Substance substance) {
        Recipe dish = recipe("dish");
        Method one;
        one.id = MethodId{"one"};
        Method other;
        other.id = MethodId{"other"};
        other.part.lines = {line("it", ingredient)};
        dish.methods = {{MethodChoiceId{"choice"}, "how", {one, other}}};
        EXPECT_TRUE(Table({dish}).warns(substance));
    });
}

TEST(EveryAllergen, StopsWarningOnceTheLineIsDropped)
{
    forEachAllergen([](const std::string& ingredient, Substance substance) {
        Recipe dish = recipe("dish");
        dish.common.lines.push_back(line("it", ingredient));
        Variant without = dish.variants.front();
        without.id = VariantId{"without"};
        without.dropLines = {LineId{"it"}};
        dish.variants.push_back(without);
        const Table table({dish});
        EXPECT_TRUE(table.warns(substance, "plain"));
        const Helping free = table.helping(substance, "without");
        EXPECT_THAT(free.unsuitable, testing::IsEmpty());
        EXPECT_THAT(free.unknown, testing::IsEmpty());
    });
}

TEST(Contents, OfWhatNobodyKnowsAreUnknownAndOfLabelledThingsToBeChecked)
{
    Recipe dish = recipe("dish");
    dish.common.lines.push_back(line("a", "moon dust"));
    dish.common.lines.push_back(line("b", "pesto"));
    const Helping helping = Table({dish}).helping(Substance::Peanut);
    EXPECT_THAT(helping.unsuitable, testing::IsEmpty());
    EXPECT_THAT(helping.unknown, testing::ElementsAre("moon dust", "pesto"));
    EXPECT_THAT(helping.checkLabel, testing::ElementsAre("pesto"));
    // What a labelled thing has for certain is warned of without looking.
    EXPECT_TRUE(Table({dish}).warns(Substance::Milk));
}

TEST(Contents, ThatACookHasConfirmedAreBelieved)
{
    Recipe dish = recipe("dish");
    dish.common.lines.push_back(line("b", "pesto"));
    dish.common.lines.back().contains = {{Substance::PineNut}};
    const Helping helping = Table({dish}).helping(Substance::Milk);
    EXPECT_THAT(helping.unsuitable, testing::IsEmpty());
    EXPECT_THAT(helping.unknown, testing::IsEmpty());
    EXPECT_TRUE(Table({dish}).warns(Substance::PineNut));
}

TEST(Shellfish, WarnsWhoAvoidsOneKindOfThatKindAlone)
{
    Recipe dish = recipe("dish");
    dish.common.lines.push_back(line("a", "crab meat"));
    const Table table({dish});
    EXPECT_TRUE(table.warns(Substance::Crab));
    EXPECT_TRUE(table.warns(Substance::Crustacean));
    EXPECT_FALSE(table.warns(Substance::Prawn));
    EXPECT_FALSE(table.warns(Substance::Mollusc));
}

TEST(Shellfish, WarnsOfAnyKindWhereNobodySaysWhichItIs)
{
    Recipe dish = recipe("dish");
    dish.common.lines.push_back(line("a", "seafood mix of the market"));
    dish.common.lines.back().contains = {{Substance::Mollusc}};
    const Table table({dish});
    for (const Substance kind : {Substance::Mussel, Substance::Oyster, Substance::Scallop,
                                 Substance::Squid, Substance::Mollusc}) {
        EXPECT_TRUE(table.warns(kind)) << nameOf(kind);
    }
    EXPECT_FALSE(table.warns(Substance::Crab));
}

TEST(Contents, AreLookedUpAmongTheUsersOwnFirst)
{
    Recipe dish = recipe("dish");
    dish.common.lines.push_back(line("b", "moon dust"));
    Table table({dish});
    Ingredient own;
    own.name = "moon dust";
    own.contains = {Substance::Sesame};
    table.know(own);
    EXPECT_TRUE(table.warns(Substance::Sesame));
    EXPECT_THAT(table.helping(Substance::Egg).unknown, testing::IsEmpty());
}

} // namespace
} // namespace suppertide
