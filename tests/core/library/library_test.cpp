#include <gtest/gtest.h>

#include "core/library/library.h"

namespace suppertide {

namespace {

RecipePtr recipe(const std::string& id, const std::string& name)
{
    Recipe result;
    result.id = RecipeId{id};
    result.name = name;
    return std::make_shared<const Recipe>(std::move(result));
}

KitchenPtr kitchen(const std::string& id)
{
    Kitchen result;
    result.id = KitchenId{id};
    return std::make_shared<const Kitchen>(std::move(result));
}

OccasionPtr occasion(const std::string& id)
{
    OccasionRecord result;
    result.occasion.id = OccasionId{id};
    return std::make_shared<const OccasionRecord>(std::move(result));
}

struct Pair
{
    LibraryState before;
    LibraryState after;
};

/// Of everything: one thing gone, one new, one changed, one the same.
Pair twoStates()
{
    Pair pair;
    const RecipePtr same = recipe("same", "Same");
    pair.before.recipes = {{RecipeId{"gone"}, recipe("gone", "Gone")},
                           {RecipeId{"same"}, same},
                           {RecipeId{"soup"}, recipe("soup", "Soup")}};
    pair.after.recipes = {{RecipeId{"new"}, recipe("new", "New")},
                          {RecipeId{"same"}, same},
                          {RecipeId{"soup"}, recipe("soup", "Cold soup")}};
    pair.before.kitchens = {{KitchenId{"loft"}, kitchen("loft")}};
    pair.after.occasions = {{OccasionId{"supper"}, occasion("supper")}};
    pair.after.larder = std::make_shared<const Larder>(Larder{.currency = "EUR"});
    pair.after.open = OccasionId{"supper"};
    return pair;
}

TEST(Library, FindsWhatDiffersPartByPart)
{
    const Pair pair = twoStates();
    const Change change = differenceOf(pair.before, pair.after, "Everything");
    EXPECT_EQ(change.text, "Everything");
    ASSERT_EQ(change.parts.size(), 7U);
    const auto& gone = std::get<RecipeChange>(change.parts[0]);
    EXPECT_EQ(gone.id, RecipeId{"gone"});
    EXPECT_NE(gone.before, nullptr);
    EXPECT_EQ(gone.after, nullptr);
    EXPECT_EQ(std::get<RecipeChange>(change.parts[1]).before, nullptr);
    EXPECT_EQ(std::get<RecipeChange>(change.parts[2]).after->name, "Cold soup");
    EXPECT_EQ(std::get<KitchenChange>(change.parts[3]).after, nullptr);
    EXPECT_EQ(std::get<OccasionChange>(change.parts[4]).before, nullptr);
    EXPECT_EQ(std::get<LarderChange>(change.parts[5]).before, nullptr);
    EXPECT_EQ(std::get<LarderChange>(change.parts[5]).after->currency, "EUR");
    EXPECT_EQ(std::get<OpenChange>(change.parts[6]).after, OccasionId{"supper"});
}

TEST(Library, AppliesAndRevertsADifference)
{
    const Pair pair = twoStates();
    const Change change = differenceOf(pair.before, pair.after, "");
    const LibraryState forward = applied(pair.before, change);
    EXPECT_EQ(forward.recipes.size(), 3U);
    EXPECT_TRUE(differenceOf(forward, pair.after, "").parts.empty());
    const LibraryState back = reverted(forward, change);
    EXPECT_TRUE(differenceOf(back, pair.before, "").parts.empty());
    EXPECT_EQ(larderOf(forward).currency, "EUR");
    EXPECT_TRUE(larderOf(back).empty());
}

TEST(Library, SharesWhatAChangeLeavesAlone)
{
    const Pair pair = twoStates();
    const LibraryState after = applied(pair.before, differenceOf(pair.before, pair.after, ""));
    EXPECT_EQ(after.recipes.at(RecipeId{"same"}), pair.before.recipes.at(RecipeId{"same"}));
}

TEST(Library, CallsEqualThingsTheSameEvenIfTheyAreNotShared)
{
    LibraryState a;
    LibraryState b;
    a.recipes = {{RecipeId{"soup"}, recipe("soup", "Soup")}};
    b.recipes = {{RecipeId{"soup"}, recipe("soup", "Soup")}};
    EXPECT_TRUE(differenceOf(a, b, "").parts.empty());
}

} // namespace

} // namespace suppertide
