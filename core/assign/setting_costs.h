// SettingCosts: for stays in one oven, what settings away from those preferred, and changes, cost
// at least from each beginning of a stay on, whatever the temperatures. A step of
// cheapest_program.h; used by nothing else.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <utility>
#include <vector>

#include "core/assign/oven_heat.h"
#include "core/assign/oven_program.h"

namespace suppertide {

constexpr int noSetting = -100'000; // none so far; in a control: off

/// The last setting may be any of these: which one it was is left open until it matters, as all
/// that are above what a minute reaches do the same.
struct LastSettings
{
    int lowest = noSetting;
    int highest = noSetting;

    [[nodiscard]] bool none() const { return lowest == noSetting; }
    friend bool operator==(const LastSettings&, const LastSettings&) = default;
};

/// Of what being off at a beginning costs, the
/// part that makes it dearer than being on there by any setting is left to the balance of heat,
/// which then knows that the oven is on there.
class SettingCosts
{
public:
    SettingCosts(const Oven& oven, const std::vector<OvenStay>& stays, const OvenHeat& heat,
                 const OvenProgramStyle& style);

    /// What is left to the balance of heat, by minute.
    [[nodiscard]] const std::map<int, std::int64_t>& offCosts() const { return offCosts_; }

    /// What the setting in force (noSetting: off) in the minute costs the stays that begin in it.
    [[nodiscard]] std::int64_t atStart(int minute, int inForce) const;
    [[nodiscard]] std::int64_t least(int minute, const LastSettings& last) const;
    /// All settings that may be of use.
    [[nodiscard]] LastSettings all() const { return {lowest_, highest_}; }
    [[nodiscard]] bool isStart(int minute) const
    {
        const std::size_t group = nextGroup_[static_cast<std::size_t>(minute)];
        return group < groups_.size() && groups_[group].first == minute;
    }

private:
    void readPreferred(const std::vector<OvenStay>& stays, const OvenHeat& heat);
    void lookBack(std::int64_t change, bool onlyOn);
    void shareOffCosts();

    const Oven& oven_;
    std::int64_t preferC_ = 0;
    std::int64_t unit_ = 1; // of the costs of heat
    int lowest_ = 0;
    int highest_ = 0;
    std::size_t columns_ = 0;
    std::vector<std::pair<int, std::vector<int>>> groups_; // minute, what is preferred
    std::vector<std::pair<int, int>> mayBe_;               // settings of use there, by group
    std::vector<std::size_t> nextGroup_;
    std::map<int, std::int64_t> offCosts_;
    std::vector<std::int64_t> least_;
};

} // namespace suppertide
