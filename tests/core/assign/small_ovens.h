// Small ovens for tests: random stays, and exhaustive search over every program of whole-degree
// settings at whole minutes.
#pragma once

#include <optional>
#include <vector>

#include "core/assign/oven_program.h"
#include "core/problem/schedule.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::test {

[[nodiscard]] Oven smallOven(Random& random);
[[nodiscard]] OvenStay smallStay(Random& random, std::int64_t horizon);

/// Minute by minute, every temperature that some program reaches within all bands.
[[nodiscard]] bool someProgramKeeps(const Oven& oven, const std::vector<OvenStay>& stays,
                                    std::int64_t horizon);

/// What the cheapest of all programs costs; absent: none keeps the stays.
[[nodiscard]] std::optional<std::int64_t> leastProgramCost(const Oven& oven,
                                                           const std::vector<OvenStay>& stays,
                                                           std::int64_t horizon,
                                                           const OvenProgramStyle& style);

/// Whether this program keeps the stay, looked at minute by minute.
[[nodiscard]] bool programKeeps(const Oven& oven, const OvenProgram& program, const OvenStay& stay);

} // namespace suppertide::test
