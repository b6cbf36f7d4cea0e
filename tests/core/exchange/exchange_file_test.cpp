// Files written whole or not at all, and what stands in them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "core/exchange/exchange.h"
#include "tests/support/temporary_folder.h"

namespace suppertide {

namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;

class ExchangeFile : public testing::Test
{
protected:
    [[nodiscard]] fs::path in(const std::string& name) const { return folder_.path() / name; }

private:
    test::TemporaryFolder folder_;
};

ExchangeContent small()
{
    ExchangeContent content;
    Recipe recipe;
    recipe.id = RecipeId{"soup"};
    recipe.name = "Soup “of the house” 🥣";
    recipe.variants = {{.id = VariantId{"plain"}, .name = "plain"}};
    Step boil;
    boil.id = StepId{"boil"};
    boil.duration = {5_min, 6_min, 8_min};
    boil.uses = {BurnerUse{22_cm}};
    Step serve;
    serve.id = StepId{"pour"};
    serve.after = {boil.id};
    recipe.common.steps = {boil, serve};
    content.recipes = {recipe};
    return content;
}

std::string textOf(const fs::path& file)
{
    std::ifstream stream(file);
    std::stringstream text;
    text << stream.rdbuf();
    return text.str();
}

TEST(ExchangeText, LeavesOutWhatIsAtItsDefault)
{
    EXPECT_EQ(writeExchange(small()), R"({
  "format": "suppertide-exchange",
  "version": 1,
  "recipes": [
    {
      "id": "soup",
      "name": "Soup “of the house” 🥣",
      "steps": [
        {"id": "boil", "duration": [5, 6, 8], "uses": [{"burner": {"pan": 22}}]},
        {"id": "pour"}
      ],
      "variants": [{"id": "plain", "name": "plain"}]
    }
  ]
}
)");
    EXPECT_EQ(writeExchange({}), "{\"format\": \"suppertide-exchange\", \"version\": 1}\n");
}

TEST_F(ExchangeFile, ReadsBackWhatWasWritten)
{
    const fs::path file = in("soup.json");
    ASSERT_TRUE(writeExchangeFile(small(), file));
    const auto read = readExchangeFile(file);
    ASSERT_TRUE(read) << read.error().forCook;
    EXPECT_EQ(*read, small());
    EXPECT_EQ(std::distance(fs::directory_iterator(file.parent_path()), {}), 1);
}

TEST_F(ExchangeFile, ReplacesAFileAndKeepsItsPermissions)
{
    const fs::path file = in("soup.json");
    std::ofstream(file) << "old";
    ASSERT_EQ(::chmod(file.c_str(), 0640), 0);
    fs::create_symlink(file, in("link.json"));
    ASSERT_TRUE(writeExchangeFile(small(), in("link.json")));
    EXPECT_TRUE(fs::is_symlink(in("link.json")));
    EXPECT_EQ(textOf(file), writeExchange(small()));
    EXPECT_EQ(fs::status(file).permissions(), fs::perms{0640});
}

TEST_F(ExchangeFile, SaysWhenItCannotBeWrittenAndLeavesNothing)
{
    const auto written = writeExchangeFile(small(), in("no-such-folder/soup.json"));
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().kind, FailureKind::Io);
    EXPECT_THAT(written.error().forCook, HasSubstr("could not be written: No such file"));
    fs::create_directory(in("folder.json"));
    std::ofstream(in("folder.json/a")) << "a";
    EXPECT_FALSE(writeExchangeFile(small(), in("folder.json")));
    EXPECT_EQ(std::distance(fs::directory_iterator(in("")), {}), 1);
}

TEST_F(ExchangeFile, SaysWhenItCannotBeRead)
{
    const auto read = readExchangeFile(in("nothing.json"));
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().kind, FailureKind::NotFound);
    fs::create_directory(in("folder.json"));
    EXPECT_FALSE(readExchangeFile(in("folder.json")));
    std::ofstream(in("binary.json")) << std::string("\x00\xff\xfe", 3);
    EXPECT_THAT(readExchangeFile(in("binary.json")).error().forCook, HasSubstr("“binary.json”"));
}

TEST(ExchangeImport, ReplacesWhatHasTheSameId)
{
    LibraryState state = imported({}, small());
    ExchangeContent newer = small();
    newer.recipes[0].name = "Cold soup";
    state = imported(std::move(state), newer);
    ASSERT_EQ(state.recipes.size(), 1U);
    EXPECT_EQ(state.recipes.begin()->second->name, "Cold soup");
}

} // namespace

} // namespace suppertide
