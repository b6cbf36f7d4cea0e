// Names compared word by word.
#include <gmock/gmock.h>

#include "core/food/name_words.h"

namespace suppertide {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(NameWords, AreInTheSingularWithoutAccentsOrCase)
{
    EXPECT_THAT(nameWords("Egg Whites, chilled"), ElementsAre("egg", "white", "chilled"));
    EXPECT_THAT(nameWords("purée of leaves"), ElementsAre("puree", "of", "leaf"));
    EXPECT_THAT(nameWords(" , "), IsEmpty());
}

TEST(NameWords, StandInOthersAsWholeWordsOneAfterTheOther)
{
    EXPECT_TRUE(hasWords(nameWords("chestnut mushrooms"), nameWords("Mushroom")));
    EXPECT_TRUE(hasWords(nameWords("slow side of salmon"), nameWords("side of salmon")));
    EXPECT_FALSE(hasWords(nameWords("nutmeg"), nameWords("nuts")));
    EXPECT_FALSE(hasWords(nameWords("salmon side"), nameWords("side salmon")));
    EXPECT_FALSE(hasWords(nameWords("salmon"), nameWords("")));
}

} // namespace
} // namespace suppertide
