// PortionShare: which portions of a dish a task makes. The portions of a dish stand in a row,
// variant by variant; a share is a set of pieces of that row. Two steps follow each other in the
// kitchen exactly if their shares have portions in common, whatever batches they were cut into.
// Used by core/plan alone.
#pragma once

#include <vector>

#include "core/quantity/quantity.h"

namespace suppertide {

/// Half-open, as intervals of time are.
struct PortionRange
{
    Portions from;
    Portions to;

    friend bool operator==(const PortionRange&, const PortionRange&) = default;
};

class PortionShare
{
public:
    PortionShare() = default;
    explicit PortionShare(PortionRange range) : PortionShare(std::vector{range}) {}
    /// `ranges` must not overlap; empty ones are left out.
    explicit PortionShare(std::vector<PortionRange> ranges);

    [[nodiscard]] Portions total() const;
    [[nodiscard]] bool empty() const { return ranges_.empty(); }
    [[nodiscard]] PortionShare common(const PortionShare& other) const;
    [[nodiscard]] bool meets(const PortionShare& other) const { return !common(other).empty(); }
    /// Cut into consecutive shares of these sizes, which together are the total.
    [[nodiscard]] std::vector<PortionShare> cut(const std::vector<Portions>& sizes) const;
    [[nodiscard]] const std::vector<PortionRange>& ranges() const { return ranges_; }

    friend bool operator==(const PortionShare&, const PortionShare&) = default;

private:
    std::vector<PortionRange> ranges_; // rising
};

} // namespace suppertide
