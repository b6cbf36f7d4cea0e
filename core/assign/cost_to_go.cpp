#include "core/assign/cost_to_go.h"

#include <algorithm>
#include <map>
#include <utility>

namespace suppertide {

namespace {

constexpr std::size_t mostLevels = 12'000'000;

} // namespace

CostToGo::CostToGo(const Oven& oven, const std::vector<OvenStay>& stays, const OvenHeat& heat,
                   const OvenProgramStyle& style, std::int64_t below)
    : levels_(oven, stays, style, below,
              heat.least(0, std::int64_t{oven.startC} * 1000, false, false))
{
    std::map<int, std::vector<int>> preferred; // by minute
    for (const OvenStay& stay : stays) {
        if (stay.prefer && style.preferC > 0) {
            preferred[static_cast<int>(minuteOf(stay.during.start))].push_back(*stay.prefer);
        }
    }
    rowOf_.assign(static_cast<std::size_t>(heat.last()) + 1, 0);
    rows_.push_back(levels_.atEnd(heat.leastAt(heat.last())));
    std::size_t size = 0;
    for (int minute = heat.last(); minute-- > 0;) {
        const auto here = static_cast<std::size_t>(minute);
        if (heat.isAsNext(minute) && rowOf_[here + 1] == rowOf_[here + 2]) {
            rowOf_[here] = rowOf_[here + 1];
            continue;
        }
        const auto begins = preferred.find(minute);
        const AskedOfMinute asked{heat.leastAt(minute), heat.mostAt(minute),
                                  heat.mostAt(minute + 1), heat.mustBeOff(minute),
                                  begins == preferred.end() ? std::vector<int>{} : begins->second};
        SettingLevels::Row row = levels_.before(asked, rows_[rowOf_[here + 1]], below);
        if (row == rows_[rowOf_[here + 1]]) {
            rowOf_[here] = rowOf_[here + 1];
            continue;
        }
        size += row.size();
        if (row.isUnknown() || size > mostLevels) {
            rows_.clear();
            return;
        }
        rows_.push_back(std::move(row));
        rowOf_[here] = rows_.size() - 1;
    }
}

} // namespace suppertide
