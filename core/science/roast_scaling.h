// Roast scaling: how long a roast of another size takes at the same oven and end temperature; and
// the published roasting chart as a starting point.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/science/estimate.h"

namespace suppertide::science {

/// Minutes for `mass` kg if a roast of the same form and `knownMass` takes `knownMinutes`: t ∝
/// m^(2/3), for t ∝ L² and m ∝ L³. Range: exponents 0.60 and 0.75 (common practice). Masses 0.05…30
/// kg, at most eight times one another, 1…3000 minutes; a failure outside. Long thin roasts scale
/// by thickness instead. Source: dimension analysis of conduction, α·t/L² alike.
[[nodiscard]] Result<Estimate> scaledByMass(double knownMinutes, double knownMass, double mass);

/// Minutes for another thickness (m, 2 mm…0.5 m, at most eight times one another): t ∝ d². Range:
/// exponents 1.6 and 2, for where the surface hinders as much as the inside, t ∝ d.
[[nodiscard]] Result<Estimate> scaledByThickness(double knownMinutes, double knownThickness,
                                                 double thickness);

/// One row of resources/tables/roasting_times.tsv, in the units of its source.
struct RoastChartRow
{
    std::string id;
    std::string name;
    double poundsLeast = 0.0;
    double poundsMost = 0.0;
    double ovenFahrenheit = 0.0;
    bool isPerPound = false;
    double minutesLeast = 0.0; // in all, or a pound
    double minutesMost = 0.0;
    std::string source;
};

[[nodiscard]] const std::vector<RoastChartRow>& roastChart();

/// Reads a table like roasting_times.tsv. A fault names its line.
[[nodiscard]] Result<std::vector<RoastChartRow>> readRoastChart(std::string_view text);

/// Minutes by the chart for a row and a mass within ±35 % of its range; a failure outside or for an
/// unknown id. Minutes a pound are multiplied; minutes in all are scaled by m^(2/3) from the middle
/// of the row.
[[nodiscard]] Result<Estimate> roastByChart(std::string_view id, double kilograms);

/// A whole bird with its stuffing in it: 15, 22 and 30 minutes longer. Its stuffing must get as hot
/// as the bird. Source: USDA FSIS, Let's Talk Turkey, timetables for roasting, stuffed against
/// unstuffed.
[[nodiscard]] Estimate stuffed(Estimate unstuffed);

} // namespace suppertide::science
