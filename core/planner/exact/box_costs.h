// BoxCosts: what stays of an oven cost at least in an order and at lengths (oven_box.h),
// remembered, since a search comes back to the same ones.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "core/assign/oven_box.h"

namespace suppertide::exact {

class BoxCosts
{
public:
    BoxCosts(const Oven& oven, const OvenProgramStyle& style) : oven_(oven), style_(style) {}

    /// Costs from `below` on are not told apart.
    [[nodiscard]] std::int64_t least(const OvenBox& box, std::int64_t below);
    /// The same, if it need not be looked for.
    [[nodiscard]] std::optional<std::int64_t> known(const OvenBox& box, std::int64_t below) const;
    /// The box as wide as can be shown to cost so much at least (box_widening.h).
    [[nodiscard]] OvenBox widened(const OvenBox& box, const std::vector<StretchLengths>& open,
                                  std::int64_t least);

    /// Levels found so far (setting_levels.h): what has been spent.
    [[nodiscard]] std::int64_t work() const { return work_; }
    [[nodiscard]] const Oven& oven() const { return oven_; }

private:
    struct Known
    {
        std::int64_t below = 0;
        std::int64_t least = 0;
    };
    /// The least and the most length of each stretch.
    using Lengths = std::vector<std::int64_t>;
    using Shape = std::vector<std::int64_t>; // all else
    using OfShape = std::map<Lengths, Known>;

    Oven oven_;
    OvenProgramStyle style_;
    std::map<Shape, OfShape> known_;
    std::size_t count_ = 0;
    std::int64_t work_ = 0;
};

} // namespace suppertide::exact
