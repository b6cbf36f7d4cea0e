#include <gtest/gtest.h>

#include "core/wording/phrases.h"

namespace suppertide {
namespace {

TEST(Phrases, TellOneThingFromSeveral)
{
    for (const char* several :
         {"creams", "Eggs in mustard", "carrots", "peas and mint", "beans, cooked"}) {
        EXPECT_TRUE(isPlural(several)) << several;
    }
    for (const char* one : {"chicken", "couscous", "side of carrots", "swiss", "stock (two pans)",
                            "cream with berries", ""}) {
        EXPECT_FALSE(isPlural(one)) << one;
    }
}

TEST(Phrases, SayOfSeveralWhatIsSaidOfOne)
{
    EXPECT_EQ(ofSeveral("is kept for"), "are kept for");
    EXPECT_EQ(ofSeveral("stands for"), "stand for");
    EXPECT_EQ(ofSeveral("gets in its middle to"), "get in their middle to");
    EXPECT_EQ(ofSeveral("does not keep to a rule"), "do not keep to a rule");
    EXPECT_EQ(ofSeveral("must"), "must");
}

} // namespace
} // namespace suppertide
