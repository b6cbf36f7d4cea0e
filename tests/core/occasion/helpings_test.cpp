// Who eats what, and what a dish contains.
#include <gmock/gmock.h>

#include <algorithm>
#include <set>

#include "tests/core/occasion/suppers.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {
namespace {

using test::entry;
using test::guest;
using test::recipeOf;
using test::Supper;
using test::variantThatAdds;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::UnorderedElementsAre;

std::vector<std::string> eatersOf(const std::vector<Helping>& helpings, const std::string& dish,
                                  const std::string& variant)
{
    std::vector<std::string> names;
    for (const Helping& helping : helpings) {
        if (helping.dish == DishId{dish} && helping.variant == VariantId{variant}) {
            names.push_back(helping.guest.text());
        }
    }
    return names;
}

TEST(Avoided, JoinsDietsAndAllergiesEachOnce)
{
    EXPECT_THAT(avoidedBy(guest("Fay", {Diet::NoDairy}, {Substance::Milk, Substance::Egg})),
                ElementsAre(Substance::Milk, Substance::Egg));
    EXPECT_THAT(avoidedBy(guest("Ada")), IsEmpty());
}

TEST(Helpings, GiveEachGuestTheVariantThatSuits)
{
    const Supper supper;
    const auto helpings = helpingsOf(supper.occasion, supper.occasion.courses[0], supper.table());
    EXPECT_EQ(helpings.size(), 3U);
    EXPECT_THAT(eatersOf(helpings, "tart", "free"), ElementsAre("Bea"));
    EXPECT_THAT(eatersOf(helpings, "tart", "wheat"), UnorderedElementsAre("Ada", "Dov"));
}

TEST(Helpings, ShareAMainAndItsAlternativeOutAndGiveSidesToAll)
{
    const Supper supper;
    const auto helpings = helpingsOf(supper.occasion, supper.occasion.courses[1], supper.table());
    EXPECT_EQ(helpings.size(), 6U);
    EXPECT_THAT(eatersOf(helpings, "squash", "plain"), ElementsAre("Dov"));
    EXPECT_THAT(eatersOf(helpings, "lamb", "plain"), UnorderedElementsAre("Ada", "Bea"));
    EXPECT_EQ(eatersOf(helpings, "potatoes", "plain").size(), 3U);
    EXPECT_THAT(leftOut(supper.occasion, supper.occasion.courses[1], supper.table()), IsEmpty());
}

TEST(Helpings, FollowTheMixEvenWhereItDoesNotSuitAndSayWhyItMustNot)
{
    Supper supper;
    supper.occasion.courses[0].dishes[0].mix = {entry("wheat", Portions{2}, {GuestId{"Bea"}}),
                                                entry("free", Portions{1})};
    const auto helpings = helpingsOf(supper.occasion, supper.occasion.courses[0], supper.table());
    const auto beas = std::ranges::find(helpings, GuestId{"Bea"}, &Helping::guest);
    ASSERT_NE(beas, helpings.end());
    EXPECT_EQ(beas->variant, VariantId{"wheat"});
    EXPECT_THAT(beas->unsuitable, ElementsAre(Substance::Wheat));
    EXPECT_THAT(leftOut(supper.occasion, supper.occasion.courses[0], supper.table()),
                ElementsAre(GuestId{"Bea"}));
}

TEST(Helpings, ReshuffleSoThatTheLastGuestIsServedToo)
{
    // Ada could eat either; taken in order she would have Bea's only portion.
    Supper supper;
    supper.occasion.courses[0].dishes[0].mix = {entry("free", Portions{1}),
                                                entry("wheat", Portions{2})};
    const auto helpings = helpingsOf(supper.occasion, supper.occasion.courses[0], supper.table());
    EXPECT_THAT(eatersOf(helpings, "tart", "free"), ElementsAre("Bea"));
}

TEST(Helpings, CountAHalfPortionAsAChildsHelping)
{
    Supper supper;
    supper.occasion.courses[0].dishes[0].mix = {entry("free", Portions(1, 2)),
                                                entry("wheat", Portions(3, 2))};
    EXPECT_EQ(helpingsOf(supper.occasion, supper.occasion.courses[0], supper.table()).size(), 3U);
}

TEST(Helpings, AreNoneWithoutGuestsOrPortions)
{
    Supper supper;
    supper.occasion.guests.clear();
    EXPECT_THAT(helpingsOf(supper.occasion, supper.occasion.courses[1], supper.table()), IsEmpty());
    Supper empty;
    for (Dish& dish : empty.occasion.courses[1].dishes) {
        dish.mix = {entry("plain", Portions{0})};
    }
    EXPECT_THAT(helpingsOf(empty.occasion, empty.occasion.courses[1], empty.table()), IsEmpty());
    EXPECT_THAT(leftOut(empty.occasion, empty.occasion.courses[1], empty.table()), IsEmpty());
}

TEST(Helpings, ServeFiveHundredGuests)
{
    Supper supper;
    supper.occasion.guests.clear();
    for (int i = 0; i < 500; ++i) {
        supper.occasion.guests.push_back(guest(
            std::to_string(i), i % 5 == 0 ? std::vector{Diet::Coeliac} : std::vector<Diet>{}));
    }
    supper.occasion.courses[0].dishes[0].mix = {entry("free", Portions{100}),
                                                entry("wheat", Portions{400})};
    const auto helpings = helpingsOf(supper.occasion, supper.occasion.courses[0], supper.table());
    EXPECT_EQ(helpings.size(), 500U);
    EXPECT_TRUE(std::ranges::all_of(
        helpings, [](const Helping& helping) { return helping.unsuitable.empty(); }));
}

/// The most guests that can be served with something suitable, by trying every way.
std::size_t mostServed(const std::vector<std::vector<std::size_t>>& suitable,
                       std::vector<std::size_t>& left, std::size_t guestIndex)
{
    if (guestIndex == suitable.size()) {
        return 0;
    }
    std::size_t best = mostServed(suitable, left, guestIndex + 1);
    for (const std::size_t serving : suitable[guestIndex]) {
        if (left[serving] > 0) {
            --left[serving];
            best = std::max(best, 1 + mostServed(suitable, left, guestIndex + 1));
            ++left[serving];
        }
    }
    return best;
}

TEST(Helpings, SuitAsManyGuestsAsAnyWayOfSharingOut)
{
    constexpr std::array substances{Substance::Wheat, Substance::Milk, Substance::Egg,
                                    Substance::Fish};
    test::forEachSeed(300, [&](test::Random& random) {
        const auto some = [&] {
            std::vector<Substance> chosen;
            for (const Substance each : substances) {
                if (random.oneIn(3)) {
                    chosen.push_back(each);
                }
            }
            return chosen;
        };
        Supper supper;
        const auto guests = static_cast<std::size_t>(random.between(1, 5));
        supper.occasion.guests.clear();
        for (std::size_t i = 0; i < guests; ++i) {
            supper.occasion.guests.push_back(guest("g" + std::to_string(i), {}, some()));
        }
        supper.recipes[0] =
            recipeOf("tart", {variantThatAdds("a", some()), variantThatAdds("b", some()),
                              variantThatAdds("c", some())});
        std::vector<std::size_t> left;
        std::vector<MixEntry> mix;
        for (const char* name : {"a", "b", "c"}) {
            left.push_back(static_cast<std::size_t>(random.between(0, 3)));
            mix.push_back(entry(name, Portions{static_cast<std::int64_t>(left.back())}));
        }
        supper.occasion.courses[0].dishes[0].mix = mix;
        const auto table = supper.table();
        std::vector<std::vector<std::size_t>> suitable(guests);
        for (std::size_t i = 0; i < guests; ++i) {
            for (std::size_t v = 0; v < 3; ++v) {
                const Contents contents = contentsOf(supper.recipes[0], mix[v].variant, table);
                const auto avoided = avoidedBy(supper.occasion.guests[i]);
                const bool suits = std::ranges::none_of(avoided, [&](Substance each) {
                    return std::ranges::find(contents.contains, each) != contents.contains.end();
                });
                if (suits) {
                    suitable[i].push_back(v);
                }
            }
        }
        const auto helpings = helpingsOf(supper.occasion, supper.occasion.courses[0], table);
        const auto served = std::ranges::count_if(
            helpings, [](const Helping& helping) { return helping.unsuitable.empty(); });
        EXPECT_EQ(static_cast<std::size_t>(served), mostServed(suitable, left, 0));
        std::set<GuestId> eaters;
        for (const Helping& helping : helpings) {
            EXPECT_TRUE(eaters.insert(helping.guest).second); // one each
        }
    });
}

IngredientLine preparationLine(const std::string& recipe)
{
    IngredientLine line;
    line.id = LineId{recipe};
    line.ingredient = recipe;
    line.contains = std::vector<Substance>{};
    line.preparation = RecipeId{recipe};
    return line;
}

TEST(ContentsOfADish, TakeInItsPreparationsAndTheirs)
{
    Supper supper;
    supper.recipes[0].common.lines = {preparationLine("dough")};
    Recipe dough = recipeOf("dough", {variantThatAdds("plain", {Substance::Rye})});
    dough.common.lines = {preparationLine("leaven")};
    supper.recipes.push_back(dough);
    supper.recipes.push_back(recipeOf("leaven", {variantThatAdds("plain", {Substance::Barley})}));
    const Contents contents = contentsOf(supper.recipes[0], VariantId{"free"}, supper.table());
    EXPECT_THAT(contents.contains, ElementsAre(Substance::Rye, Substance::Barley));
    EXPECT_THAT(contents.unknown, IsEmpty());
}

TEST(ContentsOfADish, AreUnknownWhereAPreparationIsMissing)
{
    Supper supper;
    supper.recipes[0].common.lines = {preparationLine("dough")};
    EXPECT_THAT(contentsOf(supper.recipes[0], VariantId{"free"}, supper.table()).unknown,
                ElementsAre("dough"));
}

TEST(ContentsOfADish, EndThoughPreparationsNeedEachOther)
{
    Supper supper;
    supper.recipes[0].common.lines = {preparationLine("dough")};
    Recipe dough = recipeOf("dough", {variantThatAdds("plain", {Substance::Rye})});
    dough.common.lines = {preparationLine("tart")};
    supper.recipes.push_back(dough);
    EXPECT_THAT(contentsOf(supper.recipes[0], VariantId{"free"}, supper.table()).contains,
                ElementsAre(Substance::Rye));
}

TEST(ContentsOfADish, NameAGuestsHarmFromAPreparation)
{
    Supper supper;
    supper.recipes[0].common.lines = {preparationLine("dough")};
    supper.recipes.push_back(recipeOf("dough", {variantThatAdds("plain", {Substance::Rye})}));
    EXPECT_THAT(leftOut(supper.occasion, supper.occasion.courses[0], supper.table()),
                ElementsAre(GuestId{"Bea"}));
}

} // namespace
} // namespace suppertide
