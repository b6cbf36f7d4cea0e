// The listing of all published sources that are checked (sources.tsv): how many rows of each, and
// how far the worst is off. Held against what the tests of one whole run have found; written anew
// with SUPPERTIDE_UPDATE_GOLDEN=1.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

#include "tests/published/deviation.h"

namespace suppertide::test {
namespace {

const std::string listing = std::string{SUPPERTIDE_SOURCE_DIR} + "/tests/published/sources.tsv";

/// In the order of the sources' names; of a source that is compared twice both.
std::vector<SourceChecked> inOrder(std::vector<SourceChecked> checked)
{
    std::ranges::stable_sort(checked, {}, &SourceChecked::source);
    return checked;
}

std::string lineOf(const SourceChecked& checked)
{
    return fmt::format("{}\t{}\t{:.3g}\t{:.3g} %\t{}", checked.source, checked.rows, checked.worst,
                       100.0 * checked.worstShare, checked.worstRow);
}

std::vector<SourceChecked> readListing()
{
    std::ifstream file(listing);
    std::vector<SourceChecked> rows;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line.front() == '#' || line.starts_with("source\t")) {
            continue;
        }
        std::istringstream cells(line);
        SourceChecked row;
        std::string number;
        std::getline(cells, row.source, '\t');
        std::getline(cells, number, '\t');
        row.rows = std::stoi(number);
        std::getline(cells, number, '\t');
        row.worst = std::stod(number);
        std::getline(cells, number, '\t');
        row.worstShare = std::stod(number) / 100.0;
        std::getline(cells, row.worstRow);
        rows.push_back(std::move(row));
    }
    return rows;
}

void writeListing(const std::vector<SourceChecked>& checked)
{
    std::ofstream file(listing);
    file << "# What tests/published checks: each source, how many of its rows, and of the worst of "
            "them how far it is off,\n# in its own unit and of the published value. Tolerances "
            "stand in the tests beside the rows.\nsource\trows\tworst\tshare\tworst row\n";
    for (const SourceChecked& row : checked) {
        file << lineOf(row) << '\n';
    }
}

/// To a fiftieth: the last digits are the compiler's.
bool isAlike(double one, double other)
{
    return std::abs(one - other) <= 0.02 * std::max(std::abs(one), std::abs(other)) + 1e-6;
}

class ListingHolds : public testing::Environment
{
public:
    void TearDown() override
    {
        const auto& unit = *testing::UnitTest::GetInstance();
        if (unit.test_to_run_count() != unit.total_test_count()) {
            return; // only some were asked for
        }
        const std::vector<SourceChecked> checked = inOrder(sourcesChecked());
        if (std::getenv("SUPPERTIDE_UPDATE_GOLDEN") != nullptr) {
            writeListing(checked);
        }
        const std::vector<SourceChecked> listed = inOrder(readListing());
        ASSERT_EQ(listed.size(), checked.size()) << "sources.tsv lists other sources";
        for (std::size_t i = 0; i < listed.size(); ++i) {
            EXPECT_EQ(listed[i].source, checked[i].source);
            EXPECT_EQ(listed[i].rows, checked[i].rows) << listed[i].source;
            EXPECT_TRUE(isAlike(listed[i].worst, checked[i].worst)) << lineOf(listed[i]) << "\n"
                                                                    << lineOf(checked[i]);
            EXPECT_TRUE(isAlike(listed[i].worstShare, checked[i].worstShare))
                << lineOf(listed[i]) << "\n"
                << lineOf(checked[i]);
        }
    }
};

/// What is not reproduced is said with its reason, and where it is held elsewhere that file is
/// there.
TEST(PublishedGaps, AreListedOnceEachWithTheirReason)
{
    const std::string root = std::string{SUPPERTIDE_SOURCE_DIR} + "/";
    std::ifstream file(root + "tests/published/gaps.tsv");
    std::set<std::string> rows;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line.front() == '#' || line.starts_with("row\t")) {
            continue;
        }
        std::istringstream cells(line);
        std::string row;
        std::string source;
        std::string reason;
        std::string elsewhere;
        std::getline(cells, row, '\t');
        std::getline(cells, source, '\t');
        std::getline(cells, reason, '\t');
        std::getline(cells, elsewhere);
        EXPECT_TRUE(rows.insert(row).second) << row;
        EXPECT_FALSE(source.empty()) << row;
        EXPECT_GT(reason.size(), 10U) << row;
        EXPECT_TRUE(elsewhere == "-" || std::ifstream(root + elsewhere).good()) << elsewhere;
    }
    EXPECT_GE(rows.size(), 10U);
}

[[maybe_unused]] const testing::Environment* const held =
    testing::AddGlobalTestEnvironment(new ListingHolds); // which gtest deletes

} // namespace
} // namespace suppertide::test
