#include <gtest/gtest.h>

#include "core/base/table_text.h"

namespace suppertide {
namespace {

constexpr std::string_view good = "# what it is\nname\tvalue\tfoods\nsoup\t4.5\tstew, broth\n\n"
                                  "# more\nbread\t-\t-\n";

TEST(TableText, ReadsCellsByTheNameOfTheirColumn)
{
    const auto table = TableText::read("meals", good, {"name", "value"});
    ASSERT_TRUE(table);
    ASSERT_EQ(table->rows().size(), 2U);
    const TableRow& soup = table->rows()[0];
    EXPECT_EQ(soup.text("name"), "soup");
    EXPECT_EQ(soup.line(), 3U);
    EXPECT_EQ(soup.number("value").value(), 4.5);
    EXPECT_EQ(soup.list("foods"), (std::vector<std::string_view>{"stew", "broth"}));
    EXPECT_TRUE(table->rows()[1].isEmpty("value"));
    EXPECT_TRUE(table->rows()[1].list("foods").empty());
    EXPECT_EQ(table->rows()[1].optionalNumber("value").value(), std::nullopt);
}

TEST(TableText, NamesTheLineThatCannotBeRead)
{
    const auto few = TableText::read("meals", "a\tb\n1\t2\n# why\n3\n", {"a"});
    ASSERT_FALSE(few);
    EXPECT_EQ(few.error().kind, FailureKind::BadInput);
    EXPECT_NE(few.error().forCook.find("line 4 has 1 cells instead of 2"), std::string::npos)
        << few.error().forCook;
    const auto words = TableText::read("meals", "a\tb\nx\ttwo\n", {"a"});
    ASSERT_TRUE(words);
    EXPECT_NE(words->rows()[0].number("b").error().forCook.find("line 2 has “two” as b"),
              std::string::npos);
}

TEST(TableText, RefusesColumnsThatStandTwiceOrLack)
{
    EXPECT_FALSE(TableText::read("meals", "a\ta\n", {"a"}));
    EXPECT_FALSE(TableText::read("meals", "a\n1\n", {"b"}));
    EXPECT_FALSE(TableText::read("meals", "", {"a"}));
    EXPECT_TRUE(TableText::read("meals", "a\n", {"a"}));
}

TEST(TableText, AskingForAColumnThatIsNotThereIsADefect)
{
    const auto table = TableText::read("meals", good, {"name"});
    ASSERT_TRUE(table);
    EXPECT_THROW((void)table->rows()[0].text("weight"), ContractViolation);
}

TEST(TableText, TakesOnlyWholeFiniteDecimalsForNumbers)
{
    EXPECT_EQ(decimalNumber("-4"), -4.0);
    EXPECT_EQ(decimalNumber("22.5"), 22.5);
    for (const char* bad : {"", "4x", "nan", "inf", "1e999", " 4"}) {
        EXPECT_EQ(decimalNumber(bad), std::nullopt) << bad;
    }
}

TEST(TableText, RowsOutliveTheTableThatGaveThem)
{
    std::vector<TableRow> kept;
    {
        const auto table = TableText::read("meals", good, {"name"});
        ASSERT_TRUE(table);
        kept = table->rows();
    }
    EXPECT_EQ(kept.at(1).text("name"), "bread");
}

} // namespace
} // namespace suppertide
