// What the reader says of files with faults: where, and what to do.
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/exchange/exchange.h"

namespace suppertide {

namespace {

using testing::HasSubstr;
using testing::Not;

std::string fileWith(std::string_view rest)
{
    return fmt::format(R"({{"format": "suppertide-exchange", "version": 1, {}}})", rest);
}

std::string recipeWith(std::string_view rest)
{
    return fileWith(fmt::format(R"("recipes": [{{"id": "roast-roots", "name": "Roast roots",
        "variants": [{{"id": "plain", "name": "plain"}}], {}}}])",
                                rest));
}

Failure failureOf(const std::string& json)
{
    const auto read = readExchange(json, "roots.json");
    EXPECT_FALSE(read) << json;
    return read ? Failure{} : read.error();
}

std::string sentenceOf(const std::string& json)
{
    return failureOf(json).forCook;
}

TEST(ExchangeFaults, NamesTheFileThePlaceAndWhatWouldDo)
{
    EXPECT_EQ(sentenceOf(recipeWith(R"("steps": [{"id": "peel"},
                                      {"id": "bake", "duration": "soon"}])")),
              "“roots.json” was not taken in, since one thing is wrong in it. Correct it, and try "
              "again.\n"
              "recipes[0] (roast-roots).steps[1] (bake).duration: “soon” is not a length of time. "
              "Write a number of minutes, or text like “1 h 30 min” or “3 days”");
}

TEST(ExchangeFaults, CollectsSeveral)
{
    const std::string sentence =
        sentenceOf(recipeWith(R"("portions": "some", "lines": [{"id": "a", "amount": "3 cups"}],
                                 "steps": [{"id": "b", "attention": "full"}], "sugar": 1)"));
    EXPECT_THAT(sentence, HasSubstr("4 things are wrong"));
    EXPECT_THAT(sentence, HasSubstr("recipes[0] (roast-roots).portions: “some”"));
    EXPECT_THAT(sentence, HasSubstr("recipes[0] (roast-roots).lines[0] (a).amount: “3 cups” is "
                                    "not an amount. Write it like “400 g”"));
    EXPECT_THAT(sentence, HasSubstr("steps[0] (b).attention: “full” is not known here. Write one "
                                    "of “undivided”, “hands-on”"));
    EXPECT_THAT(sentence, HasSubstr("recipes[0] (roast-roots): unknown key “sugar”"));
}

TEST(ExchangeFaults, StopsAtTwenty)
{
    std::string steps;
    for (int i = 0; i < 50; ++i) {
        steps += fmt::format("{}{{\"id\": \"s{}\", \"cooks\": -1}}", i == 0 ? "" : ", ", i);
    }
    const std::string sentence = sentenceOf(recipeWith(fmt::format("\"steps\": [{}]", steps)));
    EXPECT_EQ(std::ranges::count(sentence, '\n'), 20);
    EXPECT_THAT(sentence, HasSubstr("20 things and perhaps more are wrong"));
}

TEST(ExchangeFaults, SaysAMissingKeyOnce)
{
    const std::string sentence = sentenceOf(fileWith(R"("kitchens": [{"name": "Loft"}])"));
    EXPECT_THAT(sentence, HasSubstr("one thing is wrong"));
    EXPECT_THAT(sentence, HasSubstr("kitchens[0]: the key “id” is missing"));
}

TEST(ExchangeFaults, SaysWhatDoesNotMakeSense)
{
    EXPECT_THAT(sentenceOf(recipeWith(R"("steps": [{"id": "bake", "text": "Bake",
                                        "after": ["peel"]}])")),
                HasSubstr("recipes[0] (roast-roots), step “Bake”: It is tied to the step “peel”"));
    EXPECT_THAT(sentenceOf(recipeWith(R"("steps": [{"id": "bake", "duration": [30, 20, 10]}])")),
                HasSubstr("step “bake”, duration"));
}

TEST(ExchangeFaults, JudgesAnOccasionWhoseKitchenAndRecipesAreThere)
{
    const std::string occasion = R"("kitchens": [{"id": "loft", "name": "Loft"}], "occasions": [
        {"id": "supper", "name": "Supper", "kitchen": "loft", "courses": [
            {"id": "soup", "name": "Soup", "serving": "2027-06-19T19:30", "dishes": []},
            {"id": "early", "name": "Early", "serving": "2027-06-19T18:30"}]}])";
    EXPECT_THAT(sentenceOf(fileWith(occasion)), HasSubstr("occasions[0] (supper), course “Early”"));
}

TEST(ExchangeFaults, LeavesAnOccasionWithoutItsRecipesToTheLibrary)
{
    const std::string text = fileWith(R"("occasions": [
        {"id": "supper", "name": "Supper", "kitchen": "loft", "courses": [
            {"id": "soup", "name": "Soup", "serving": "2027-06-19T19:30",
             "dishes": [{"id": "d", "recipe": "beetroot"}]}]}])");
    const auto content = readExchange(text, "supper.json");
    ASSERT_TRUE(content) << content.error().forCook;
    const auto fit = checkFit({}, *content);
    ASSERT_FALSE(fit);
    EXPECT_THAT(fit.error().forCook, HasSubstr("occasion “Supper”: there is no kitchen “loft”"));
    LibraryState state;
    state.kitchens[KitchenId{"loft"}] = std::make_shared<const Kitchen>();
    EXPECT_THAT(checkFit(state, *content).error().forCook, HasSubstr("beetroot"));
}

TEST(ExchangeFaults, RefusesAnUnknownZoneEvenThen)
{
    EXPECT_THAT(sentenceOf(fileWith(R"("occasions": [
                    {"id": "supper", "kitchen": "loft", "zone": "Europe/Atlantis"}])")),
                HasSubstr("occasions[0] (supper).zone: There is no time zone called "
                          "“Europe/Atlantis”"));
}

TEST(ExchangeFaults, TakesEachIdOnce)
{
    EXPECT_THAT(sentenceOf(fileWith(R"("kitchens": [{"id": "loft", "name": "a"},
                                                     {"id": "loft", "name": "b"}])")),
                HasSubstr("kitchens[1]: the id “loft” stands twice in this list"));
}

TEST(ExchangeFaults, NamesTheLineOfWhatIsNoJson)
{
    EXPECT_THAT(sentenceOf("{\n  \"format\": oops}"), HasSubstr("line 2, column 1"));
    EXPECT_THAT(sentenceOf(""), HasSubstr("“roots.json” was not taken in."));
    EXPECT_THAT(sentenceOf(R"({"format": "a", "format": "b"})"),
                HasSubstr("the key “format” stands twice"));
    EXPECT_THAT(sentenceOf(std::string(100'000, '[')), HasSubstr("nested deeper than 64"));
}

TEST(ExchangeFaults, TellsOtherFilesFromOurs)
{
    EXPECT_THAT(sentenceOf(R"({"format": "suppertide-problem", "version": 1})"),
                HasSubstr("format: expected “suppertide-exchange”"));
    EXPECT_THAT(sentenceOf("[]"), HasSubstr("expected an object, found a list"));
    EXPECT_THAT(sentenceOf(R"({"name": "soup"})"), HasSubstr("the key “format” is missing"));
}

TEST(ExchangeFaults, TellsALaterVersion)
{
    const Failure failure = failureOf(R"({"format": "suppertide-exchange", "version": 2,
                                          "spices": []})");
    EXPECT_EQ(failure.kind, FailureKind::TooNew);
    EXPECT_THAT(failure.forCook, HasSubstr("later version of Suppertide"));
}

TEST(ExchangeFaults, ReadsWhatPeopleWrite)
{
    const auto content = readExchange(recipeWith(R"("portions": 0.5, "steps": [
            {"id": "peel", "duration": "1 h 30 min", "attention": 35},
            {"id": "rest", "duration": ["1 day", "2 days 3 h", "3 days"], "attention": "unattended"},
            {"id": "bake", "after": [], "uses": [{"oven": {"low": 139.5, "high": 160}}]}],
            "lines": [{"id": "a", "ingredient": "a", "amount": "2 1/2 tbsp"},
                      {"id": "b", "ingredient": "b", "amount": "1.25 kg"},
                      {"id": "c", "ingredient": "c", "amount": "pinch"},
                      {"id": "d", "ingredient": "d", "amount": "to taste", "contains": []}])"),
                                      "roots.json");
    ASSERT_TRUE(content) << content.error().forCook;
    const Recipe& recipe = content->recipes.front();
    EXPECT_EQ(recipe.portions, Rational(1, 2));
    EXPECT_EQ(recipe.common.steps[0].duration.most, 90_min);
    EXPECT_EQ(recipe.common.steps[1].duration.likely, 51_h);
    EXPECT_EQ(recipe.common.steps[1].after, std::vector{StepId{"peel"}});
    EXPECT_TRUE(recipe.common.steps[2].after.empty());
    EXPECT_EQ(std::get<OvenUse>(recipe.common.steps[2].uses[0]).low, Celsius::tenths(1395));
    EXPECT_EQ(recipe.common.lines[0].amount, (Amount{Rational{5, 2}, Unit::Tablespoon}));
    EXPECT_EQ(recipe.common.lines[1].amount, (Amount{Rational{5, 4}, Unit::Kilogram}));
    EXPECT_EQ(recipe.common.lines[2].amount, (Amount{Rational{1}, Unit::Pinch}));
    EXPECT_EQ(recipe.common.lines[2].contains, std::nullopt);
    EXPECT_EQ(recipe.common.lines[3].contains, std::vector<Substance>{});
}

} // namespace

} // namespace suppertide
