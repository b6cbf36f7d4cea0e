// OneSetting: what an oven costs at least if its program uses one setting throughout: the hotter
// the setting, the fewer minutes on, and the further from what the stays prefer.
//
//     225 °C, as all prefer    26 minutes on
//     230 °C                   24 minutes on + 3 stays · 5 °C
#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "core/planner/exact/oven_order.h"

namespace suppertide::exact {

class OneSetting
{
public:
    OneSetting(const Oven& oven, const std::vector<PossibleStay>& stays,
               const OvenProgramStyle& style,
               const std::shared_ptr<const StartDifferences>& differences);

    /// In whatever order stays that are surely in come, by their positions (see oven_order.h).
    /// `cost`: of the minutes on if settings are free.
    [[nodiscard]] std::int64_t leastInOrder(const std::vector<std::size_t>& inside,
                                            const engine::Trail& trail, std::int64_t cost);
    /// For stays at known times.
    [[nodiscard]] std::int64_t leastFor(const std::vector<std::size_t>& inside,
                                        const std::vector<OvenStay>& stays, std::int64_t cost);

private:
    /// Settings up to `hottest` and above the range before.
    struct Range
    {
        int coolest = 0;
        int hottest = 0;
        LeastHeat heat;
        OvenOrder order;
    };
    using CostOf = std::function<std::int64_t(Range&)>;

    [[nodiscard]] std::int64_t offPreferred(const std::vector<std::size_t>& inside,
                                            int setting) const;
    [[nodiscard]] std::int64_t least(const std::vector<std::size_t>& inside, std::int64_t cost,
                                     const CostOf& costOf);

    Oven oven_;
    std::vector<PossibleStay> stays_;
    OvenProgramStyle style_;
    std::vector<Range> ranges_;
};

} // namespace suppertide::exact
