// SettingColumns: which settings of an oven need not be told apart in the tables of its programs.
#pragma once

#include <cstdint>
#include <vector>

#include "core/assign/oven_program.h"

namespace suppertide {

/// Settings that are not told apart.
struct SettingColumn
{
    int coolest = 0;
    int hottest = 0;
};

/// All settings, rising. They are told apart one by one where they can be in force as a stay begins
/// while all that is preferred, and changes, cost less than `below`, else only by what is accepted.
[[nodiscard]] std::vector<SettingColumn> settingColumns(const Oven& oven,
                                                        const std::vector<OvenStay>& stays,
                                                        const OvenProgramStyle& style,
                                                        std::int64_t below);

/// The same, fewer: told apart one by one only where stays that prefer different ones can share
/// them.
[[nodiscard]] std::vector<SettingColumn> sharedColumns(const Oven& oven,
                                                       const std::vector<OvenStay>& stays);

/// What stays prefer, and changes, cost at least up to the beginning of each, in order of time.
[[nodiscard]] std::vector<std::int64_t> leastForSettings(const Oven& oven,
                                                         const std::vector<int>& preferred,
                                                         const OvenProgramStyle& style);

} // namespace suppertide
