// What is bought for the midsummer supper: wholes for their parts, what a dish leaves to another,
// what is at home, packs and trips.
#include <gmock/gmock.h>

#include <algorithm>
#include <stdexcept>

#include "core/shopping/ingredient_facts.h"
#include "core/shopping/shopping_text.h"
#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

using shopping::ShoppingLine;
using shopping::ShoppingList;
using testing::HasSubstr;
using testing::IsEmpty;

const ShoppingList& midsummer()
{
    static const ShoppingList list = [] {
        const OccasionRecord& record = occasion("midsummer-supper");
        shopping::ShoppingInput input;
        input.evening.occasion = std::make_shared<const Occasion>(record.occasion);
        input.evening.kitchen =
            std::make_shared<const Kitchen>(kitchen(record.occasion.kitchen.text()));
        input.evening.layout = std::make_shared<const Layout>(record.layout);
        for (const Recipe& each : content().recipes) {
            input.evening.recipes[each.id] = std::make_shared<const Recipe>(each);
        }
        input.repertoire = input.evening.recipes;
        input.larder = content().larder.value();
        return shopping::shoppingListOf(input);
    }();
    return list;
}

const ShoppingLine& line(const std::string& ingredient)
{
    const std::string key = shopping::factsOf(ingredient, content().larder.value()).key;
    const auto found = std::ranges::find(midsummer().lines, key, &ShoppingLine::key);
    if (found == midsummer().lines.end()) {
        throw std::out_of_range(ingredient);
    }
    return *found;
}

std::string tripOf(const ShoppingLine& line)
{
    return line.trip ? midsummer().trips.at(*line.trip).job.value_or(HouseJobId{"?"}).text()
                     : std::string("none");
}

TEST(MidsummerShopping, CountsEverything)
{
    EXPECT_THAT(midsummer().sentences, IsEmpty());
    EXPECT_GT(midsummer().lines.size(), 25U);
    EXPECT_GT(midsummer().cost, 5000);
    EXPECT_EQ(midsummer().unpriced, 0U);
    for (const ShoppingLine& each : midsummer().lines) {
        EXPECT_GE(each.fromHome.value + each.toBuy.value, each.needed.value) << each.ingredient;
    }
}

TEST(MidsummerShopping, BuysEggsOnceForMeringueAndCustard)
{
    // Six whites for the pavlova; the custard of eight tartlets takes 3.6 of their yolks.
    EXPECT_EQ(line("egg").needed, (Amount{Rational{6}, Unit::Piece}));
    EXPECT_EQ(line("egg").fromHome, (Amount{Rational{2}, Unit::Piece}));
    EXPECT_EQ(line("egg").packs.at(0).count, 1);
    EXPECT_THAT(line("egg").partsLeft, testing::Contains(HasSubstr("yolk of")));
}

TEST(MidsummerShopping, BuysOneLemonForItsZestAndJuice)
{
    const ShoppingLine& lemon = line("lemon");
    EXPECT_GE(lemon.needs.size(), 3U);
    EXPECT_LE(lemon.toBuy.value, Rational{2});
    EXPECT_TRUE(lemon.toBuy.value.isWhole());
}

TEST(MidsummerShopping, LeavesTheBonesOffAndTheSaltAtHome)
{
    EXPECT_EQ(tripOf(line("salt")), "none");
    EXPECT_EQ(tripOf(line("water")), "none");
    EXPECT_THAT(line("double cream").notes, testing::Contains(HasSubstr("to be used by")));
}

TEST(MidsummerShopping, BuysTheFishLateAndTheFlourEarly)
{
    EXPECT_EQ(tripOf(line("plain flour")), "dry-goods");
    EXPECT_EQ(tripOf(line("lamb shoulder on the bone")), "fresh");
    EXPECT_EQ(tripOf(line("hot-smoked trout fillet")), "fresh");
    EXPECT_EQ(tripOf(line("parsley")), "fresh");
}

} // namespace
} // namespace suppertide::demo
