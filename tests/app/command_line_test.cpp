#include <gtest/gtest.h>

#include "app/command_line.h"

namespace suppertide::app {
namespace {

TEST(CommandLine, OpensTheWindowWhenNothingIsSaid)
{
    const auto line = parseCommandLine({});
    ASSERT_TRUE(line);
    EXPECT_EQ(line->verb, Verb::Window);
    EXPECT_FALSE(line->library);
}

TEST(CommandLine, TakesALibraryBeforeOrAfterTheVerb)
{
    for (const std::vector<std::string>& words :
         {std::vector<std::string>{"--library", "a.suppertide", "check", "Supper"},
          std::vector<std::string>{"check", "Supper", "--library", "a.suppertide"}}) {
        const auto line = parseCommandLine(words);
        ASSERT_TRUE(line);
        EXPECT_EQ(line->verb, Verb::Check);
        EXPECT_EQ(line->library, std::filesystem::path("a.suppertide"));
        EXPECT_EQ(line->arguments, std::vector<std::string>{"Supper"});
    }
}

TEST(CommandLine, ReadsTheOptionsOfPlanAndPrint)
{
    const auto plan = parseCommandLine({"plan", "Supper", "--seconds", "12", "--out", "p.json"});
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->seconds, 12);
    EXPECT_EQ(plan->out, std::filesystem::path("p.json"));
    const auto print = parseCommandLine({"print", "Supper", "--pdf", "p.pdf", "--paper", "letter"});
    ASSERT_TRUE(print);
    EXPECT_EQ(print->paper, Paper::Letter);
    EXPECT_EQ(print->measures, std::nullopt);
    EXPECT_EQ(parseCommandLine({"print", "Supper", "--measures", "us"})->measures,
              MeasureSystem::UsCustomary);
    EXPECT_EQ(parseCommandLine({"print", "Supper", "--measures", "imperial"})->measures,
              MeasureSystem::Imperial);
}

TEST(CommandLine, NamesTheWordItDoesNotUnderstand)
{
    const struct
    {
        std::vector<std::string> words;
        std::string named;
    } cases[] = {
        {{"cook", "Supper"}, "“cook”"},
        {{"check"}, "check wants the name of an occasion"},
        {{"check", "Sunday", "lunch"}, "“lunch”"},
        {{"plan", "Supper", "--seconds", "0"}, "“0”"},
        {{"plan", "Supper", "--seconds", "five"}, "“five”"},
        {{"print", "Supper", "--paper", "a5"}, "“a5”"},
        {{"print", "Supper", "--measures", "cubits"}, "“cubits”"},
        {{"print", "Supper", "--pdf"}, "--pdf wants a value"},
        {{"shop", "Supper", "--csv"}, "--csv wants a value"},
        {{"shop"}, "shop wants the name of an occasion"},
        {{"--frobnicate"}, "“--frobnicate”"},
        {{"import"}, "at least one file"},
        {{"export", "Supper"}, "--out"},
        {{"compare"}, "compare wants the name of an occasion"},
        {{"compare", "Supper", "--by", "calm"}, "“calm”"},
    };
    for (const auto& each : cases) {
        const auto line = parseCommandLine(each.words);
        ASSERT_FALSE(line) << each.named;
        EXPECT_NE(line.error().forCook.find(each.named), std::string::npos) << line.error().forCook;
    }
}

TEST(CommandLine, HelpWinsOverEverythingElse)
{
    const auto line = parseCommandLine({"check", "--help"});
    ASSERT_TRUE(line);
    EXPECT_EQ(line->verb, Verb::Help);
}

} // namespace
} // namespace suppertide::app
