// For tests of published rows: how far a computed figure lies off the printed one, kept as the
// worst of a test and recorded with its result.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace suppertide::test {

class WorstDeviation
{
public:
    /// `name` is that of the property; `tolerance` in the rows' own unit.
    WorstDeviation(std::string name, double tolerance)
        : name_(std::move(name)), tolerance_(tolerance)
    {}
    WorstDeviation(const WorstDeviation&) = delete;
    WorstDeviation& operator=(const WorstDeviation&) = delete;
    ~WorstDeviation()
    {
        ::testing::Test::RecordProperty(name_ + "_rows", rows_);
        ::testing::Test::RecordProperty(name_ + "_worst", std::to_string(worst_));
    }
    /// Expects `computed` within the tolerance of `printed`.
    void row(const std::string& id, double printed, double computed)
    {
        ++rows_;
        worst_ = std::max(worst_, std::abs(computed - printed));
        EXPECT_NEAR(printed, computed, tolerance_) << id;
    }

private:
    std::string name_;
    double tolerance_;
    double worst_ = 0;
    int rows_ = 0;
};

} // namespace suppertide::test
