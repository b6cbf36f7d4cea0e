#include "core/assign/grid_to_go.h"

#include <utility>

namespace suppertide {

namespace {

constexpr std::size_t mostCosts = 24'000'000; // in all rows

/// What heat and, beside it, settings leave to be told apart.
std::vector<SettingColumn> columnsOf(const Oven& oven, const std::vector<OvenStay>& stays,
                                     const OvenHeat& heat, const OvenProgramStyle& style,
                                     std::int64_t below)
{
    const std::int64_t heating = heat.least(0, std::int64_t{oven.startC} * 1000, false, false);
    return settingColumns(oven, stays, style, below - heating);
}

} // namespace

GridToGo::GridToGo(const Oven& oven, const std::vector<OvenStay>& stays, const OvenHeat& heat,
                   const OvenProgramStyle& style, std::int64_t below)
    : heat_(&heat), below_(below),
      grid_(oven, style, columnsOf(oven, stays, heat, style, below), below, GridRows::Steps::Exact)
{
    for (const OvenStay& stay : stays) {
        if (stay.prefer && style.preferC > 0) {
            preferred_[static_cast<int>(minuteOf(stay.during.start))].push_back(*stay.prefer);
        }
    }
    if (grid_.isKnown()) {
        lookBack();
    }
}

/// Of temperatures from which what follows can be kept.
AskedOfMinute GridToGo::askedOf(int minute) const
{
    AskedOfMinute asked{
        heat_->leastAt(minute), heat_->mostAt(minute), 0, heat_->mustBeOff(minute), {},
        heat_->isWithin(minute)};
    if (const auto begins = preferred_.find(minute); begins != preferred_.end()) {
        asked.preferred = begins->second;
    }
    return asked;
}

void GridToGo::lookBack()
{
    const int last = heat_->last();
    rowOf_.assign(static_cast<std::size_t>(last) + 1, 0);
    rows_.push_back(grid_.atEnd(heat_->leastAt(last), heat_->mostAt(last)));
    for (int minute = last; minute-- > 0;) {
        const auto here = static_cast<std::size_t>(minute);
        rowOf_[here] = rowOf_[here + 1];
        if (heat_->isAsNext(minute) && rowOf_[here + 1] == rowOf_[here + 2]) {
            continue;
        }
        GridRows::Row row = grid_.before(askedOf(minute), rowAt(minute + 1), below_);
        if (grid_.isSame(row, rowAt(minute + 1))) {
            grid_.dropLast(row);
            continue;
        }
        if (grid_.size() > mostCosts) {
            rows_.clear();
            return;
        }
        rows_.push_back(std::move(row));
        rowOf_[here] = rows_.size() - 1;
    }
}

std::int64_t GridToGo::least(int minute, std::int64_t milliC, bool on, int lowest,
                             int highest) const
{
    return grid_.least(rowAt(minute), milliC, on, lowest, highest);
}

std::int64_t GridToGo::least(int minute, std::int64_t milliC) const
{
    return grid_.least(rowAt(minute), milliC);
}

} // namespace suppertide
