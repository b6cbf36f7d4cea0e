// BoxCosts: what stays of an oven cost at least in an order and at lengths (oven_box.h),
// remembered, since a search comes back to the same ones.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <unordered_map>
#include <vector>

#include "core/assign/oven_box.h"

namespace suppertide::exact {

class BoxCosts
{
public:
    BoxCosts(const Oven& oven, const OvenProgramStyle& style) : oven_(oven), style_(style) {}

    /// Costs from `below` on are not told apart. Asked with a higher `below` a brief look may say
    /// less.
    [[nodiscard]] std::int64_t least(const OvenBox& box, std::int64_t below, BoxLook look);
    /// The same of a brief look, if it need not be looked for.
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
        BoxLook look = BoxLook::Brief;
    };
    struct HashOfWords
    {
        std::size_t operator()(const std::vector<std::int64_t>& words) const;
    };
    [[nodiscard]] OvenBox withWiderGaps(OvenBox box, const std::vector<StretchLengths>& open,
                                        std::int64_t enough);
    [[nodiscard]] std::optional<std::int64_t> knownOf(const std::vector<std::int64_t>& words,
                                                      std::int64_t below, BoxLook look) const;

    Oven oven_;
    OvenProgramStyle style_;
    std::unordered_map<std::vector<std::int64_t>, Known, HashOfWords> known_;
    std::int64_t work_ = 0;
};

} // namespace suppertide::exact
