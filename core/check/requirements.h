// Requirements: all requirements of a problem in one row, in the order in which `check` names
// them, so that each has a number. `judge` asks the judge of the right kind.
#pragma once

#include <array>
#include <cstddef>

#include "core/check/judges.h"

namespace suppertide {

using RequirementNumber = std::size_t;

class Requirements
{
public:
    Requirements(const Problem& problem, const Ties& ties);

    [[nodiscard]] std::size_t size() const { return first_.back(); }
    template <typename Index>
    [[nodiscard]] RequirementNumber number(BrokenKind kind, Index index) const
    {
        return first_[static_cast<std::size_t>(kind)] + index.value();
    }
    [[nodiscard]] RequirementNumber number(const Ties& ties, const UnitPlace& place) const
    {
        return first_[static_cast<std::size_t>(BrokenKind::Unit)] + ties.firstUnit[place.pool] +
               place.unit.value();
    }
    [[nodiscard]] Verdict judge(const Evidence& evidence, RequirementNumber number) const;

private:
    static constexpr std::size_t kinds = 12;
    std::array<RequirementNumber, kinds + 1> first_{}; // where a kind begins, and the end
};

} // namespace suppertide
