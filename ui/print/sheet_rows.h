// Sheet rows: the per-hour plan as the rows of one sheet, for the cooks whose columns it has: an
// hour each, cut where a course is served, with what each column holds in order. Hours in which
// nothing of it happens become a fold. Decides what stands where, not how large it is; no Qt.
// Refers to the plan that it was made from.
#pragma once

#include <cstddef>
#include <variant>
#include <vector>

#include "core/sheet/per_hour_plan.h"

namespace suppertide::ui {

using SheetEntry =
    std::variant<const SheetStep*, const SheetNote*, const SheetFetch*, const SheetTable*>;

[[nodiscard]] PlanTime timeOf(const SheetEntry& entry);

/// Part of an hour without a serving in it.
struct Stretch
{
    Interval when;
    std::vector<std::vector<SheetEntry>> columns; // one a cook of the sheet, each by time
    std::vector<const SheetOvenTurn*> turns;
};

using RowPart = std::variant<Stretch, const SheetServing*>;

struct SheetRow
{
    std::size_t day = 0; // index into PerHourPlan::days
    Interval when;
    bool isFold = false; // nothing begins: one stretch without entries
    bool isBusy = false; // of a fold: something that began before still takes attention
    std::vector<RowPart> parts;
};

/// The cooks of a sheet, as positions in PerHourPlan::cookNames.
using SheetCooks = std::vector<std::size_t>;

/// Rows of all days in order. A step that names no cook stands with whoever last did something for
/// its dish, else with the first cook; so does a fetch; a note that names none is for every column.
[[nodiscard]] std::vector<SheetRow> sheetRowsOf(const PerHourPlan& plan, const SheetCooks& cooks);

/// One sheet for up to two cooks who read it in five minutes, else a sheet for each of them. At
/// least one.
[[nodiscard]] std::vector<SheetCooks> sheetsOf(const PerHourPlan& plan, bool isOneCookEach);

} // namespace suppertide::ui
