// The planner over a set of small problems that are kept as files, with their answers: a minimal
// conflict, or the least cost that any search has found so far. In a build that asserts
// explanations this is what it asserts them on.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "core/check/check.h"
#include "core/exchange/problem_json.h"
#include "core/planner/planner.h"

namespace suppertide {

namespace {

namespace fs = std::filesystem;

std::vector<fs::path> problems()
{
    std::vector<fs::path> files;
    for (const auto& entry :
         fs::directory_iterator(SUPPERTIDE_SOURCE_DIR "/tests/fixtures/planner")) {
        if (entry.path().string().ends_with(".problem.json")) {
            files.push_back(entry.path());
        }
    }
    std::sort(files.begin(), files.end());
    return files;
}

std::string answerBeside(const fs::path& problem)
{
    std::string name = problem.string();
    name.resize(name.size() - std::string(".problem.json").size());
    std::ifstream file(name + ".answer.txt");
    std::string line;
    std::getline(file, line);
    return line;
}

std::string answerOf(const Schedule& schedule)
{
    if (schedule.cost) {
        return fmt::format("cost {}", *schedule.cost);
    }
    std::vector<std::string> conflict = schedule.conflict;
    std::sort(conflict.begin(), conflict.end());
    return fmt::format("infeasible {}", fmt::join(conflict, " "));
}

} // namespace

TEST(Answers, AreThoseThatAreKnown)
{
    int seen = 0;
    for (const fs::path& file : problems()) {
        SCOPED_TRACE(file.filename().string());
        const auto problem = loadProblem(file.string());
        ASSERT_TRUE(problem) << problem.error().forCook;
        PlannerLimits limits;
        limits.wallClock = std::chrono::minutes{10};
        limits.steps = 30'000;
        const Schedule schedule = solve(*problem, limits).schedule;
        const std::string known = answerBeside(file);
        EXPECT_EQ(answerOf(schedule), known);
        EXPECT_TRUE(!schedule.cost || check(*problem, schedule).empty());
        EXPECT_LE(schedule.bound.value_or(0), schedule.cost.value_or(0));
        ++seen;
    }
    EXPECT_GE(seen, 10);
}

} // namespace suppertide
