// Storage: how long a class of food keeps in fridge and freezer, from the published chart. In the
// fridge it is a matter of safety, in the freezer of quality alone.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/plan_time.h"
#include "core/base/result.h"
#include "core/safety/rules.h"

namespace suppertide::safety {

/// "3–4 days".
struct KeepingTime
{
    Minutes least{0};
    Minutes most{0};

    friend bool operator==(const KeepingTime&, const KeepingTime&) = default;
};

/// One row of resources/tables/storage_days.tsv.
struct StorageRow
{
    std::string id;
    std::string label;            // as on the chart
    std::vector<FoodClass> foods; // empty: stands for comparison
    std::vector<RuleBook> books;
    std::optional<KeepingTime> fridge;  // of 40 °F (4.4 °C) or below
    std::optional<KeepingTime> freezer; // of 0 °F (−18 °C) or below; a month is 30 days
    Strength strength = Strength::ConsumerAdvice;
    Weight weight = Weight::Unsafe;
    RowStatus status = RowStatus::Confirmed;
    std::string source;
    std::string section;
};

[[nodiscard]] const std::vector<StorageRow>& allStorageRows();
/// Null if there is none of that id.
[[nodiscard]] const StorageRow* findStorageRow(std::string_view id);
/// Null if the book has no row for this food (dry goods, dairy).
[[nodiscard]] const StorageRow* storageOf(RuleBook book, FoodClass food);
/// BadInput names the line that cannot be read.
[[nodiscard]] Result<std::vector<StorageRow>> readStorageRows(std::string_view table);

} // namespace suppertide::safety
