// Schedules in files, against what another implementation of the format says of them.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "core/check/check.h"
#include "core/exchange/problem_json.h"

namespace suppertide {
namespace {

namespace fs = std::filesystem;

const fs::path folder = fs::path(SUPPERTIDE_SOURCE_DIR) / "tests/fixtures/problems";

std::string contentOf(const fs::path& file)
{
    std::ostringstream text;
    text << std::ifstream(file).rdbuf();
    return text.str();
}

/// "supper.all-at-once", and so on.
std::vector<std::string> cases()
{
    const std::string ending = ".schedule.json";
    std::vector<std::string> result;
    for (const auto& entry : fs::directory_iterator(folder)) {
        const std::string name = entry.path().filename().string();
        if (name.ends_with(ending)) {
            result.push_back(name.substr(0, name.size() - ending.size()));
        }
    }
    std::ranges::sort(result);
    return result;
}

std::string judged(const Problem& problem, const Schedule& schedule)
{
    std::set<std::string> names;
    for (const Broken& broken : check(problem, schedule)) {
        names.insert(broken.name());
    }
    std::string text;
    for (const std::string& name : names) {
        text += name + "\n";
    }
    return text + fmt::format("cost {}\n", costOf(problem, schedule).total());
}

class CheckFixture : public testing::TestWithParam<std::string>
{};

TEST_P(CheckFixture, BreaksWhatIsExpected)
{
    const std::string name = GetParam();
    const std::string problemName = name.substr(0, name.find('.'));
    const auto problem = loadProblem((folder / (problemName + ".problem.json")).string());
    ASSERT_TRUE(problem) << problem.error().forCook;
    const auto schedule = loadSchedule((folder / (name + ".schedule.json")).string(), *problem);
    ASSERT_TRUE(schedule) << schedule.error().forCook;
    EXPECT_EQ(judged(*problem, *schedule), contentOf(folder / (name + ".expected.txt")));
}

INSTANTIATE_TEST_SUITE_P(All, CheckFixture, testing::ValuesIn(cases()), [](const auto& each) {
    std::string name = each.param;
    std::ranges::replace_if(
        name, [](unsigned char c) { return std::isalnum(c) == 0; }, '_');
    return name;
});

} // namespace
} // namespace suppertide
