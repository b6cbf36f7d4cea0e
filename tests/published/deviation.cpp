#include "tests/published/deviation.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>

namespace suppertide::test {

namespace {

std::vector<SourceChecked>& checked()
{
    static std::vector<SourceChecked> all;
    return all;
}

} // namespace

const std::vector<SourceChecked>& sourcesChecked()
{
    return checked();
}

Deviation::~Deviation()
{
    checked().push_back({source_, rows_, worst_, worstShare_, worstRow_});
    ::testing::Test::RecordProperty(source_ + ", rows", rows_);
    ::testing::Test::RecordProperty(source_ + ", worst", fmt::format("{:.4g}", worst_));
    fmt::print("[published] {}\t{} rows\tworst {:.4g} ({:.3g} %)\t{}\n", source_, rows_, worst_,
               100.0 * worstShare_, worstRow_);
}

void Deviation::record(double deviation, double share, const std::string& row)
{
    ++rows_;
    if (share >= worstShare_) {
        worst_ = deviation;
        worstShare_ = share;
        worstRow_ = row;
    }
}

void Deviation::near(double value, double published, double tolerance, const std::string& row)
{
    EXPECT_NEAR(value, published, tolerance) << source_ << ": " << row;
    const double off = std::abs(value - published);
    record(off, off / std::max(std::abs(published), 1e-12), row);
}

void Deviation::nearShare(double value, double published, double share, const std::string& row)
{
    near(value, published, share * std::abs(published), row);
}

void Deviation::within(double value, double least, double most, const std::string& row)
{
    EXPECT_TRUE(value >= least && value <= most)
        << source_ << ": " << row << ": " << value << " is not in " << least << "…" << most;
    const double off = std::max({least - value, value - most, 0.0});
    record(off, off / std::max(std::abs(most), 1e-12), row);
}

} // namespace suppertide::test
