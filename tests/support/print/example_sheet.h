// An evening on paper to draw and to test with: the supper at the lighthouse, with one of every
// form that a sheet has. All names, times and limits are invented.
#pragma once

#include "tests/support/print/sheet_builder.h"

namespace suppertide::ui::test {

/// Two days, two ovens, two cooks, four courses, no clash.
[[nodiscard]] PerHourPlan exampleSheet();
/// The same with clashes and with a third cook.
[[nodiscard]] PerHourPlan crowdedSheet();

/// Four ovens, and every text far too long.
[[nodiscard]] PerHourPlan wordySheet();

} // namespace suppertide::ui::test
