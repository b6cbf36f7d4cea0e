// Guests and amounts that cannot be meant: each gives a sentence that says what is wrong and where,
// and loses nothing.
#include "tests/app/bad_evening.h"

namespace suppertide::app {
namespace {

using nlohmann::json;
using testing::HasSubstr;

class BadAmounts : public BadEvening
{
protected:
    json& mix() { return course(0)["dishes"][0]["mix"][0]; }
    /// The first line of the chicken asks for something else.
    void ask(const std::string& ingredient, const std::string& amount)
    {
        json& line = recipe("roast-chicken")["lines"][0];
        line["ingredient"] = ingredient;
        line["amount"] = amount;
        line["contains"] = json::array();
        for (const char* key : {"part", "also", "note", "preparation", "by_product", "scaling"}) {
            line.erase(key);
        }
    }
    /// Shops, and keeps every dish of the list.
    std::string shopped()
    {
        EXPECT_EQ(runOn(evening_, {"shop"}), Exit::Done) << err_.str();
        EXPECT_THAT(out_.str(), HasSubstr("potato")) << "the rest is bought as ever";
        return out_.str();
    }
};

TEST_F(BadAmounts, NegativePortionsAreRefusedWithThePlace)
{
    mix()["portions"] = -2;
    expectRefused("dishes[0] (chicken).mix[0].portions", "-2 is not within 0");
}

TEST_F(BadAmounts, NoPortionsAreNoDish)
{
    mix()["portions"] = 0;
    mix().erase("guests");
    EXPECT_EQ(runOn(evening_), Exit::Clashes) << err_.str();
    EXPECT_THAT(out_.str(), HasSubstr("Orla")) << "who gets nothing now";
    EXPECT_THAT(shopped(), HasSubstr("“Roast chicken with lemon” has 0 portions"));
}

TEST_F(BadAmounts, AGuestWhoEatsNothingOrLessIsRefused)
{
    evening_["occasions"][0]["guests"][0]["portion"] = -1;
    expectRefused("guests[0] (orla).portion", "-1 is not within 0");
    evening_["occasions"][0]["guests"][0]["portion"] = 0;
    expectRefused("Orla", "more than 0");
}

TEST_F(BadAmounts, ANegativeAmountIsRefusedWithTheLine)
{
    ask("chicken", "-500 g");
    EXPECT_EQ(runOn(evening_, {"shop"}), Exit::BadInput) << out_.str();
    EXPECT_THAT(err_.str(), HasSubstr("-500 g"));
}

TEST_F(BadAmounts, LitresOfEggsStandApartFromCountedOnesAndAreAskedAbout)
{
    ask("egg", "3 l");
    EXPECT_THAT(shopped(), HasSubstr("Nobody has said how 2.25 l of it compares with"));
}

TEST_F(BadAmounts, KilogramsOfWhatIsSoldByThePieceAreSaid)
{
    ask("lemon", "2 kg");
    EXPECT_THAT(shopped(), HasSubstr("lemon"));
    ask("a fruit nobody knows", "2 kg");
    EXPECT_THAT(shopped(), HasSubstr("a fruit nobody knows"));
}

TEST_F(BadAmounts, AnUnknownIngredientIsNeverFreeFromAnything)
{
    ask("a thing nobody knows", "200 g");
    recipe("roast-chicken")["lines"][0].erase("contains");
    EXPECT_EQ(runOn(evening_), Exit::Clashes) << err_.str();
    EXPECT_THAT(out_.str(), HasSubstr("a thing nobody knows"));
    EXPECT_THAT(shopped(), HasSubstr("a thing nobody knows"));
}

TEST_F(BadAmounts, DietsThatContradictEachOtherAreAllKeptAndAskedAbout)
{
    evening_["occasions"][0]["guests"][3]["diets"] = {"pescatarian", "vegan"};
    EXPECT_EQ(runOn(evening_), Exit::Clashes) << err_.str();
    EXPECT_THAT(out_.str(),
                HasSubstr("Rosa is said to be vegan and pescatarian, which contradict"));
    EXPECT_THAT(out_.str(), HasSubstr("Rosa")) << "cheese is not for her now";
}

TEST_F(BadAmounts, AreComparedAsFarAsTheyCan)
{
    ask("a thing nobody knows", "2 kg");
    EXPECT_EQ(runOn(evening_, {"compare", "--seconds", "20"}), Exit::Done) << err_.str();
    mix()["portions"] = -2;
    EXPECT_EQ(runOn(evening_, {"compare"}), Exit::BadInput);
    EXPECT_THAT(err_.str(), HasSubstr("-2 is not within 0"));
}

} // namespace
} // namespace suppertide::app
