// How long food takes to thaw, by published rules of thumb. (How long a piece of given shape takes
// by its physics is core/science's.)
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/safety/rules.h"
#include "core/safety/storage_days.h"

namespace suppertide::safety {

enum class ThawBy
{
    Fridge,
    ColdWater,    // changed every 30 minutes
    RunningWater, // at 70 °F (21 °C) or below
    Microwave,
    Cooking, // from frozen, as part of cooking
    Counter, // which no rule allows
};

[[nodiscard]] std::string_view nameOf(ThawBy method);

/// One row of resources/tables/thaw_times.tsv.
struct ThawRow
{
    std::string id;
    ThawBy method = ThawBy::Fridge;
    double fromPounds = 0;
    double toPounds = 0;
    KeepingTime time;
    RowStatus status = RowStatus::Confirmed;
    std::string source;
    std::string section;
};

[[nodiscard]] const std::vector<ThawRow>& allThawRows();
[[nodiscard]] Result<std::vector<ThawRow>> readThawRows(std::string_view table);

/// Any food of `kilograms` in the fridge (24 h for each 4 to 5 lb) or in cold water (30 minutes a
/// pound), rounded up to whole minutes. BadInput outside 0…25 kg, and for other methods, which have
/// no published time. Source: USDA FSIS, The Big Thaw.
[[nodiscard]] Result<KeepingTime> thawTime(ThawBy method, double kilograms);

/// A whole turkey; of two rows that meet, the heavier. BadInput outside 4…24 lb.
/// Source: USDA, Turkey Basics: Safe Thawing.
[[nodiscard]] Result<KeepingTime> turkeyThawTime(ThawBy method, double pounds);

/// 1 lb = 0.45359237 kg, exact.
inline constexpr double kilogramsPerPound = 0.45359237;

} // namespace suppertide::safety
