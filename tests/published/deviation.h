// Deviation: compares rows of a published source and says at the end how many there were and how
// far the worst was off, so that a reader of the log sees how well each source is met.
#pragma once

#include <string>
#include <vector>

namespace suppertide::test {

/// What was found of one source: a line of tests/published/sources.tsv.
struct SourceChecked
{
    std::string source;
    int rows = 0;
    double worst = 0.0;      // in the unit of its row
    double worstShare = 0.0; // of the published value
    std::string worstRow;
};

/// Of all that have been compared so far, in the order in which they ended.
[[nodiscard]] const std::vector<SourceChecked>& sourcesChecked();

class Deviation
{
public:
    explicit Deviation(std::string source) : source_(std::move(source)) {}
    Deviation(const Deviation&) = delete;
    Deviation& operator=(const Deviation&) = delete;
    ~Deviation(); // prints "[published] source: rows, worst deviation, at its row"

    /// |value − published| ≤ tolerance, in the unit of the source.
    void near(double value, double published, double tolerance, const std::string& row);
    /// The same for a tolerance that is a share of the published value.
    void nearShare(double value, double published, double share, const std::string& row);
    /// least ≤ value ≤ most: a source that prints a range.
    void within(double value, double least, double most, const std::string& row);

private:
    void record(double deviation, double share, const std::string& row);

    std::string source_;
    int rows_ = 0;
    double worst_ = 0.0;
    double worstShare_ = 0.0;
    std::string worstRow_;
};

} // namespace suppertide::test
