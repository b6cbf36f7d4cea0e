// The command line on the demo, as a person at a terminal uses it: import, check, plan, check
// again, print, export. The window has tests of its own (tests/gui).
#include <gmock/gmock.h>

#include <fstream>

#include "tests/app/verbs_fixture.h"

namespace suppertide::app {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;
using testing::Not;

TEST_F(Verbs, CheckNamesTheClashOfTheDemoAndPlanSettlesIt)
{
    importDemo();
    EXPECT_EQ(run({"check", supper}), Exit::Clashes);
    EXPECT_THAT(out_.str(), HasSubstr("150 °C"));
    EXPECT_THAT(out_.str(), HasSubstr("220 °C"));
    EXPECT_THAT(out_.str(), HasSubstr("gratin"));
    EXPECT_THAT(out_.str(), HasSubstr("roots"));
    ASSERT_EQ(run({"plan", supper}), Exit::Done) << err_.str();
    EXPECT_THAT(out_.str(), HasSubstr("Kept in the library."));
    EXPECT_EQ(run({"check", supper}), Exit::Done) << out_.str();
    EXPECT_THAT(out_.str(), HasSubstr("Nothing collides."));
}

TEST_F(Verbs, PlanSaysWhyADinnerCannotBeCookedAndWhatWouldHelp)
{
    importDemo();
    EXPECT_EQ(run({"plan", "Midsummer supper, first idea", "--seconds", "60"}), Exit::NoPlanInTime);
    EXPECT_EQ(out_.str(), "");
    EXPECT_THAT(err_.str(), HasSubstr("This evening cannot be cooked as it stands.\n"));
    EXPECT_THAT(err_.str(), HasSubstr("The slow-roast side of salmon: 42 min on a shelf of the "
                                      "oven"));
    EXPECT_THAT(err_.str(), HasSubstr("Looking for a way out"));
    EXPECT_THAT(err_.str(), HasSubstr("\n1. "));
}

TEST_F(Verbs, PrintGivesTheHoursAsTextAndAsPdf)
{
    importDemo();
    ASSERT_EQ(run({"plan", lunch}), Exit::Done) << err_.str();
    ASSERT_EQ(run({"print", lunch}), Exit::Done) << err_.str();
    EXPECT_THAT(out_.str(), HasSubstr("Serve"));
    for (const char* paper : {"a4", "letter"}) {
        const fs::path pdf = file(paper);
        ASSERT_EQ(run({"print", lunch, "--pdf", pdf.string(), "--paper", paper}), Exit::Done)
            << err_.str();
        std::ifstream stream(pdf, std::ios::binary);
        std::string head(5, '\0');
        stream.read(head.data(), 5);
        EXPECT_EQ(head, "%PDF-");
    }
}

TEST_F(Verbs, ShopGivesTheListAsTextAndAsCsv)
{
    importDemo();
    ASSERT_EQ(run({"shop", supper}), Exit::Done) << err_.str();
    EXPECT_THAT(out_.str(), HasSubstr("Dry goods, roots and dairy"));
    EXPECT_THAT(out_.str(), HasSubstr("for Potato gratin"));
    EXPECT_THAT(out_.str(), HasSubstr("Check the label"));
    const fs::path csv = file("list.csv");
    ASSERT_EQ(run({"shop", supper, "--csv", csv.string()}), Exit::Done) << err_.str();
    std::ifstream stream(csv, std::ios::binary);
    std::string head;
    std::getline(stream, head);
    EXPECT_EQ(head.substr(0, 17), "Trip,Day,Section,");
    EXPECT_EQ(head.back(), '\r');
}

TEST_F(Verbs, ShopSaysWhatIsWrongInOneSentence)
{
    importDemo();
    EXPECT_EQ(run({"shop", "No such supper"}), Exit::BadInput);
    EXPECT_EQ(out_.str(), "");
    EXPECT_NE(err_.str(), "");
    EXPECT_EQ(run({"shop", supper, "--csv", (file("missing") / "list.csv").string()}),
              Exit::BadInput);
    EXPECT_THAT(err_.str(), HasSubstr("could not be written"));
}

TEST_F(Verbs, CompareListsEveryMenuBestFirstAndWritesThemForOtherPrograms)
{
    importDemo();
    const fs::path csv = file("menus.csv");
    ASSERT_EQ(run({"compare", supper, "--by", "ahead", "--seconds", "20", "--csv", csv.string()}),
              Exit::Done)
        << err_.str();
    EXPECT_THAT(out_.str(), HasSubstr("81 menus: "));
    EXPECT_THAT(out_.str(), HasSubstr("Smoked trout, Braised shoulder, Rhubarb pavlova"));
    EXPECT_THAT(out_.str(), HasSubstr("Written to "));
    std::ifstream stream(csv);
    std::string line;
    int lines = 0;
    while (std::getline(stream, line)) {
        ++lines;
    }
    EXPECT_EQ(lines, 82);
}

TEST_F(Verbs, CompareSaysWhatItDoesNotFind)
{
    importDemo();
    EXPECT_EQ(run({"compare", "No such supper"}), Exit::BadInput);
    EXPECT_THAT(err_.str(), HasSubstr("No such supper"));
    EXPECT_EQ(run({"compare", lunch, "--csv", "/nowhere/menus.csv"}), Exit::BadInput);
    EXPECT_THAT(err_.str(), HasSubstr("could not be written"));
}

TEST_F(Verbs, PlanOfAFileIsKeptInTheFileNamed)
{
    importDemo();
    const std::string all = file("all.json").string();
    const std::string planned = file("planned.json").string();
    ASSERT_EQ(run({"export", supper, "--out", all}), Exit::Done) << err_.str();
    ASSERT_EQ(run({"plan", all, "--out", planned}), Exit::Done) << err_.str();
    EXPECT_EQ(run({"check", planned}), Exit::Done) << out_.str();
    // The library has not been touched: its own occasion clashes as before.
    EXPECT_EQ(run({"check", supper}), Exit::Clashes);
}

TEST_F(Verbs, ExportThenImportGivesTheSameLibrary)
{
    importDemo();
    const std::string first = file("first.json").string();
    const std::string second = file("second.json").string();
    ASSERT_EQ(run({"export", "--out", first}), Exit::Done);
    ASSERT_EQ(run({"import", first}), Exit::Done) << err_.str();
    ASSERT_EQ(run({"export", "--out", second}), Exit::Done);
    std::stringstream a;
    std::stringstream b;
    a << std::ifstream(first).rdbuf();
    b << std::ifstream(second).rdbuf();
    EXPECT_EQ(a.str(), b.str());
    EXPECT_GT(a.str().size(), 10'000U);
}

TEST_F(Verbs, OneBadFileAndNothingIsImported)
{
    std::ofstream(file("bad.json"))
        << R"({"format": "suppertide-exchange", "version": 1, "recipes": [{"id": 3}]})";
    const fs::path good =
        fs::path(SUPPERTIDE_SOURCE_DIR) / "demo-db" / "recipes" / "potato-gratin.json";
    EXPECT_EQ(run({"import", good.string(), file("bad.json").string()}), Exit::BadInput);
    EXPECT_THAT(err_.str(), HasSubstr("recipes[0]"));
    ASSERT_EQ(run({"export", "--out", file("out.json").string()}), Exit::Done) << err_.str();
    EXPECT_THAT(out_.str(), HasSubstr(" 0 recipes"));
}

TEST_F(Verbs, SaysWhatIsThereWhenAnOccasionIsNot)
{
    importDemo();
    EXPECT_EQ(run({"check", "Christmas"}), Exit::BadInput);
    EXPECT_THAT(err_.str(), HasSubstr("“Christmas”"));
    EXPECT_THAT(err_.str(), HasSubstr(supper));
}

TEST_F(Verbs, SaysThatALibraryIsMissingOrUnreadable)
{
    EXPECT_EQ(run({"--library", file("none.suppertide").string(), "check", supper}),
              Exit::BadInput);
    EXPECT_THAT(err_.str(), HasSubstr("none.suppertide"));
    std::ofstream(file("noise.suppertide")) << "this is no library";
    EXPECT_EQ(run({"--library", file("noise.suppertide").string(), "check", supper}),
              Exit::BadInput);
    EXPECT_THAT(err_.str(), HasSubstr("noise.suppertide"));
}

TEST_F(Verbs, WarnsOfAnOccasionInThePast)
{
    importDemo();
    EXPECT_NE(run({"check", supper}), Exit::BadInput);
    EXPECT_THAT(out_.str(), Not(HasSubstr("in the past")));
    clock_.set(*parseInstant("2030-01-01T00:00Z"));
    EXPECT_NE(run({"check", supper}), Exit::BadInput);
    EXPECT_THAT(out_.str(), HasSubstr("in the past"));
}

} // namespace
} // namespace suppertide::app
