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

/// From … to, in thousandths of a degree a minute.
struct OvenRates
{
    std::int64_t slowestHeating = 5'000;
    std::int64_t fastestHeating = 20'000;
    std::int64_t slowestCooling = 800;
    std::int64_t fastestCooling = 6'000;
};

/// As a kitchen has it, cold to begin with, that heats and cools as fast as is drawn.
[[nodiscard]] inline Oven coldOven(Random& random, int shelves, int maxC, const OvenRates& rates)
{
    Oven oven;
    oven.shelves = shelves;
    oven.minC = 50;
    oven.maxC = maxC;
    oven.startC = oven.ambientC = 20;
    oven.heatMilliCPerMin = random.between(rates.slowestHeating, rates.fastestHeating);
    oven.coolMilliCPerMin = random.between(rates.slowestCooling, rates.fastestCooling);
    return oven;
}

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
