#include "core/assign/setting_costs.h"

#include <algorithm>
#include <cstdlib>
#include <numeric>

namespace suppertide {

namespace {

constexpr std::int64_t unbounded = std::int64_t{1} << 50;

} // namespace

SettingCosts::SettingCosts(const Oven& oven, const std::vector<OvenStay>& stays,
                           const OvenHeat& heat, const OvenProgramStyle& style)
    : oven_(oven), preferC_(style.preferC),
      unit_(std::max<std::int64_t>(1, std::gcd(style.onMinute, style.switchOn))),
      lowest_(oven.minC), highest_(oven.maxC),
      columns_(static_cast<std::size_t>(std::max(0, oven.maxC - oven.minC) + 2))
{
    readPreferred(stays, heat);
    lookBack(style.change, true);
    if (style.onMinute > 0) {
        shareOffCosts();
    }
    lookBack(style.change, false);
}

void SettingCosts::readPreferred(const std::vector<OvenStay>& stays, const OvenHeat& heat)
{
    std::map<int, std::vector<int>> preferred;
    for (const OvenStay& stay : stays) {
        if (stay.prefer && preferC_ > 0) {
            preferred[static_cast<int>(minuteOf(stay.during.start))].push_back(*stay.prefer);
        }
    }
    groups_.assign(preferred.begin(), preferred.end());
    for (const auto& [minute, degrees] : groups_) {
        mayBe_.push_back(heat.mustBeOff(minute) ? std::pair(1, 0) : heat.settingsAt(minute));
    }
    nextGroup_.resize(static_cast<std::size_t>(heat.last()) + 1);
    std::size_t group = 0;
    for (std::size_t at = 0; at < nextGroup_.size(); ++at) {
        while (group < groups_.size() && groups_[group].first < static_cast<int>(at)) {
            ++group;
        }
        nextGroup_[at] = group;
    }
}

/// `onlyOn`: off only where the oven must be.
void SettingCosts::lookBack(std::int64_t change, bool onlyOn)
{
    least_.assign((groups_.size() + 1) * columns_, 0);
    for (std::size_t g = groups_.size(); g-- > 0;) {
        const int minute = groups_[g].first;
        const std::int64_t* after = &least_[(g + 1) * columns_];
        std::int64_t* here = &least_[g * columns_];
        const auto [from, to] = mayBe_[g];
        const auto shared = offCosts_.find(minute);
        const std::int64_t off =
            from <= to && onlyOn
                ? unbounded
                : atStart(minute, noSetting) - (shared == offCosts_.end() ? 0 : shared->second);
        std::int64_t anySetting = unbounded;
        std::fill_n(here, columns_, unbounded);
        for (int degrees = from; degrees <= to; ++degrees) {
            const auto column = static_cast<std::size_t>(degrees - lowest_);
            here[column] = atStart(minute, degrees) + after[column];
            anySetting = std::min(anySetting, here[column]);
        }
        for (std::size_t column = 0; column < columns_; ++column) {
            const bool none = column + 1 == columns_;
            const std::int64_t other = anySetting + (none ? 0 : change);
            const std::int64_t fewest = std::min({off + after[column], here[column], other});
            here[column] = fewest;
        }
    }
}

/// No more is left to the balance of heat than it can tell apart in reasonable time.
void SettingCosts::shareOffCosts()
{
    constexpr std::int64_t mostMinutes = 40;
    const std::int64_t allOn = least_[columns_ - 1];
    for (std::size_t g = 0; g < groups_.size(); ++g) {
        const int minute = groups_[g].first;
        const std::int64_t dearer = atStart(minute, noSetting) - allOn;
        const std::int64_t share = std::min(dearer, mostMinutes * unit_) / unit_ * unit_;
        if (mayBe_[g].first <= mayBe_[g].second && share > 0) {
            offCosts_.emplace(minute, share);
        }
    }
}

std::int64_t SettingCosts::least(int minute, const LastSettings& last) const
{
    const std::int64_t* row = &least_[nextGroup_[static_cast<std::size_t>(minute)] * columns_];
    if (last.none()) {
        return row[columns_ - 1];
    }
    const auto from = static_cast<std::size_t>(last.lowest - lowest_);
    const auto to = static_cast<std::size_t>(last.highest - lowest_);
    return *std::min_element(row + from, row + to + 1);
}

std::int64_t SettingCosts::atStart(int minute, int inForce) const
{
    const std::size_t group = nextGroup_[static_cast<std::size_t>(minute)];
    if (group == groups_.size() || groups_[group].first != minute) {
        return 0;
    }
    const int degrees = inForce == noSetting ? oven_.ambientC : inForce;
    std::int64_t sum = 0;
    for (const int preferred : groups_[group].second) {
        sum += preferC_ * std::abs(std::int64_t{degrees} - preferred);
    }
    return sum;
}

} // namespace suppertide
