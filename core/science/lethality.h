// Lethality: what a course of temperatures does to germs: D and z, minutes at a reference
// temperature, decimal reductions (resources/tables/heat_resistance.tsv).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace suppertide::science {

/// How a germ dies in a food.
struct HeatResistance
{
    std::string id;
    std::string organism;
    std::string food;
    double dMinutes = 0.0;      // for one decimal reduction, at `reference`
    double reference = 60.0;    // °C
    double z = 10.0;            // °C for a tenfold change of D
    double logReductions = 6.0; // that are asked for
    std::string source;

    /// Minutes for one decimal reduction at a temperature: D·10^((reference − T)/z).
    [[nodiscard]] double dAt(double celsius) const;
};

[[nodiscard]] const std::vector<HeatResistance>& heatResistances();
[[nodiscard]] Result<HeatResistance> findHeatResistance(std::string_view id);
/// Reads a table like heat_resistance.tsv. A fault names its line.
[[nodiscard]] Result<std::vector<HeatResistance>> readHeatResistances(std::string_view text);

/// Minutes D from counts: minutes/log₁₀(before/after). Fails unless before > after > 0 and minutes
/// > 0. Source: textbooks of food microbiology (definition).
[[nodiscard]] Result<double> dFromCounts(double minutes, double before, double after);

/// L = 10^((T − T_ref)/z), minutes at T_ref a minute. T −60…200 °C, z 1…30; a failure outside.
[[nodiscard]] Result<double> lethalRate(double celsius, double reference, double z);

/// A reading of a course of temperatures.
struct TimeTemperature
{
    double minute = 0.0;
    double celsius = 0.0;
};

/// F = ∫L dt in minutes at T_ref, exact for temperatures that go straight from reading to reading:
/// F = z/(r·ln 10)·(L₂ − L₁) of each stretch of slope r. Fails if fewer than two readings, if they
/// are not in the order of time, or outside the ranges of lethalRate.
[[nodiscard]] Result<double> lethality(const std::vector<TimeTemperature>& course, double reference,
                                       double z);

/// F/D of the germ over the course.
[[nodiscard]] Result<double> logReduction(const std::vector<TimeTemperature>& course,
                                          const HeatResistance& germ);

} // namespace suppertide::science
