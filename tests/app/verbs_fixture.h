// The command line on the demo, as a person at a terminal uses it, in a folder of its own.
#pragma once

#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

#include "app/verbs.h"

namespace suppertide::app {

constexpr const char* supper = "Midsummer supper at Skerry Light";
constexpr const char* lunch = "Sunday lunch at Mill Loft";

/// A folder of its own for each test, which is also the home that the program sees.
class Verbs : public testing::Test
{
protected:
    void SetUp() override
    {
        folder_ = std::filesystem::temp_directory_path() /
                  (std::string("suppertide-verbs-") + std::to_string(getpid()) + "-" +
                   testing::UnitTest::GetInstance()->current_test_info()->name());
        std::filesystem::remove_all(folder_);
        std::filesystem::create_directories(folder_);
        setenv("XDG_DATA_HOME", folder_.c_str(), 1); // NOLINT(concurrency-mt-unsafe): one thread
    }
    void TearDown() override { std::filesystem::remove_all(folder_); }

    Exit run(std::vector<std::string> words)
    {
        out_.str({});
        err_.str({});
        const auto line = parseCommandLine(words);
        if (!line) {
            ADD_FAILURE() << line.error().forCook;
            return Exit::BadInput;
        }
        const VerbContext context{out_, err_, clock_};
        switch (line->verb) {
        case Verb::Check:
            return runCheck(*line, context);
        case Verb::Plan:
            return runPlan(*line, context);
        case Verb::Print:
            return runPrint(*line, context);
        case Verb::Shop:
            return runShop(*line, context);
        case Verb::Compare:
            return runCompare(*line, context);
        case Verb::Import:
            return runImport(*line, context);
        case Verb::Export:
            return runExport(*line, context);
        case Verb::Window:
        case Verb::Demo:
        case Verb::Help:
        case Verb::Version:
            break;
        }
        ADD_FAILURE() << "no verb for this test";
        return Exit::BadInput;
    }

    void importDemo()
    {
        std::vector<std::string> words{"import"};
        for (const auto& entry : std::filesystem::recursive_directory_iterator(
                 std::filesystem::path(SUPPERTIDE_SOURCE_DIR) / "demo-db")) {
            if (entry.path().extension() == ".json") {
                words.push_back(entry.path().string());
            }
        }
        ASSERT_EQ(run(words), Exit::Done) << err_.str();
    }

    std::filesystem::path file(const char* name) const { return folder_ / name; }

    std::filesystem::path folder_;
    std::ostringstream out_;
    std::ostringstream err_;
    // Before the demo's evening, so that it is not in the past.
    FixedClock clock_{*parseInstant("2027-05-01T09:00Z")};
};

} // namespace suppertide::app
