// What is written reads back equal, whatever it is.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "core/exchange/exchange.h"
#include "tests/support/content/any_content.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {

namespace {

TEST(ExchangeRoundTrip, GivesTheSameContent)
{
    test::forEachSeed(300, [](test::Random& random) {
        const ExchangeContent content = test::anyContent(random);
        const std::string text = writeExchange(content);
        const auto read = readExchange(text, "kept.json");
        ASSERT_TRUE(read) << read.error().forCook << "\n" << text;
        EXPECT_EQ(*read, content) << text;
        EXPECT_EQ(writeExchange(*read), text);
    });
}

TEST(ExchangeRoundTrip, GivesTheSameSingleThings)
{
    test::forEachSeed(300, [](test::Random& random) {
        const Recipe recipe = test::anyRecipe(random, "r");
        const Kitchen kitchen = test::anyKitchen(random, "k");
        const OccasionRecord occasion = test::anyOccasion(random, "o", {recipe}, kitchen);
        const auto recipeRead = readRecipe(writeRecipe(recipe));
        ASSERT_TRUE(recipeRead) << recipeRead.error().forCook;
        EXPECT_EQ(*recipeRead, recipe);
        const auto kitchenRead = readKitchen(writeKitchen(kitchen));
        ASSERT_TRUE(kitchenRead) << kitchenRead.error().forCook;
        EXPECT_EQ(*kitchenRead, kitchen);
        const auto occasionRead = readOccasion(writeOccasion(occasion));
        ASSERT_TRUE(occasionRead) << occasionRead.error().forCook;
        EXPECT_EQ(*occasionRead, occasion);
        const Larder larder = test::anyLarder(random);
        const auto larderRead = readLarder(writeLarder(larder));
        ASSERT_TRUE(larderRead) << larderRead.error().forCook;
        EXPECT_EQ(*larderRead, larder);
    });
}

TEST(ExchangeRoundTrip, TakesALarderIntoAnEmptyLibraryAsItIsAndTwiceAsOnce)
{
    test::forEachSeed(200, [](test::Random& random) {
        ExchangeContent content;
        content.larder = test::anyLarder(random);
        const LibraryState once = imported({}, content);
        EXPECT_EQ(larderOf(once), *content.larder);
        const LibraryState twice = imported(once, content);
        EXPECT_EQ(larderOf(imported(twice, content)), larderOf(twice));
    });
}

TEST(ExchangeRoundTrip, RefusesPricesOfAnotherCurrency)
{
    Larder pounds;
    pounds.packs = {{"flour", {Rational{500}, Unit::Gram}, 120, "bag"}};
    LibraryState state;
    state.larder = std::make_shared<const Larder>(pounds);
    ExchangeContent content;
    content.larder = pounds;
    EXPECT_TRUE(checkFit(state, content));
    content.larder->currency = "EUR";
    const auto fits = checkFit(state, content);
    ASSERT_FALSE(fits);
    EXPECT_NE(fits.error().forCook.find("in EUR, those of the library in GBP"), std::string::npos)
        << fits.error().forCook;
    content.larder->packs.front().price.reset();
    EXPECT_TRUE(checkFit(state, content));
    EXPECT_EQ(larderOf(imported(state, content)).currency, "GBP");
}

TEST(ExchangeRoundTrip, KeepsTheDemo)
{
    namespace fs = std::filesystem;
    int files = 0;
    for (const auto& entry :
         fs::recursive_directory_iterator(fs::path(SUPPERTIDE_SOURCE_DIR) / "demo-db")) {
        if (entry.path().extension() == ".json") {
            const auto content = readExchangeFile(entry.path());
            ASSERT_TRUE(content) << content.error().forCook;
            const auto again = readExchange(writeExchange(*content), "again");
            ASSERT_TRUE(again) << again.error().forCook;
            EXPECT_EQ(*again, *content);
            ++files;
        }
    }
    RecordProperty("files", files);
}

} // namespace

} // namespace suppertide
