#include "core/science/roast_scaling.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/science/table_numbers.h"
#include "core/science/valid_range.h"

namespace suppertide::tables {

std::string_view roastingTimes();

} // namespace suppertide::tables

namespace suppertide::science {

namespace {

constexpr double gramsInPound = 453.59237;
constexpr double mostRatio = 8.0;

Estimate scaled(double minutes, double ratio, const Spread& exponent)
{
    const double a = minutes * std::pow(ratio, exponent.least);
    const double b = minutes * std::pow(ratio, exponent.most);
    return {std::min(a, b), minutes * std::pow(ratio, exponent.likely), std::max(a, b), {}};
}

} // namespace

Result<Estimate> scaledByMass(double knownMinutes, double knownMass, double mass)
{
    if (auto fault = outsideRange({{"The time known", knownMinutes, 1.0, 3000.0, "minutes"},
                                   {"The mass known", knownMass, 0.05, 30.0, "kg"},
                                   {"The mass", mass, 0.05, 30.0, "kg"},
                                   {"The mass against the one known", mass / knownMass,
                                    1.0 / mostRatio, mostRatio, ""}})) {
        return *fault;
    }
    Estimate estimate = scaled(knownMinutes, mass / knownMass, {0.60, 2.0 / 3.0, 0.75});
    estimate.because = {{"known to take", knownMinutes, "minutes"},
                        {"at", knownMass, "kg"},
                        {"mass", mass, "kg"},
                        {"grows with the mass to the power of", 2.0 / 3.0, ""}};
    return estimate;
}

Result<Estimate> scaledByThickness(double knownMinutes, double knownThickness, double thickness)
{
    if (auto fault = outsideRange({{"The time known", knownMinutes, 1.0, 3000.0, "minutes"},
                                   {"The thickness known", knownThickness, 0.002, 0.5, "m"},
                                   {"The thickness", thickness, 0.002, 0.5, "m"},
                                   {"The thickness against the one known",
                                    thickness / knownThickness, 1.0 / mostRatio, mostRatio, ""}})) {
        return *fault;
    }
    Estimate estimate = scaled(knownMinutes, thickness / knownThickness, {1.6, 2.0, 2.0});
    estimate.because = {{"known to take", knownMinutes, "minutes"},
                        {"at a thickness of", 1000.0 * knownThickness, "mm"},
                        {"thickness", 1000.0 * thickness, "mm"},
                        {"grows with the thickness to the power of", 2.0, ""}};
    return estimate;
}

Result<std::vector<RoastChartRow>> readRoastChart(std::string_view text)
{
    const auto table = TableText::read("roasting times", text,
                                       {"id", "name", "pounds_least", "pounds_most", "oven_f",
                                        "per", "minutes_least", "minutes_most", "source"});
    if (!table) {
        return table.error();
    }
    std::vector<RoastChartRow> chart;
    for (const TableRow& row : table->rows()) {
        TableNumbers cells{row};
        RoastChartRow entry{std::string{row.text("id")},    std::string{row.text("name")},
                            cells.number("pounds_least"),   cells.number("pounds_most"),
                            cells.number("oven_f"),         row.text("per") == "a pound",
                            cells.number("minutes_least"),  cells.number("minutes_most"),
                            std::string{row.text("source")}};
        if (cells.fault()) {
            return *cells.fault();
        }
        if (!entry.isPerPound && row.text("per") != "in all") {
            return row.fault("per", "“in all” or “a pound”");
        }
        if (!(0.0 < entry.minutesLeast && entry.minutesLeast <= entry.minutesMost &&
              0.0 < entry.poundsLeast && entry.poundsLeast <= entry.poundsMost)) {
            return row.fault("minutes_most", "no less than the least");
        }
        chart.push_back(std::move(entry));
    }
    return chart;
}

const std::vector<RoastChartRow>& roastChart()
{
    static const std::vector<RoastChartRow> chart = readRoastChart(tables::roastingTimes()).value();
    return chart;
}

Result<Estimate> roastByChart(std::string_view id, double kilograms)
{
    const auto& chart = roastChart();
    const auto row = std::ranges::find(chart, id, &RoastChartRow::id);
    if (row == chart.end()) {
        return Failure{FailureKind::NotFound,
                       fmt::format("The roasting chart has no “{}”. Choose a roast that is like "
                                   "it, or enter the time.",
                                   id),
                       {}};
    }
    constexpr double beyond = 0.35;
    const double pounds = 1000.0 * kilograms / gramsInPound;
    if (auto fault =
            outsideRange({{fmt::format("The mass of this roast ({})", row->name), kilograms,
                           (1.0 - beyond) * row->poundsLeast * gramsInPound / 1000.0,
                           (1.0 + beyond) * row->poundsMost * gramsInPound / 1000.0, "kg"}})) {
        return *fault;
    }
    const double middle = 0.5 * (row->poundsLeast + row->poundsMost);
    const double factor = row->isPerPound ? pounds : std::pow(pounds / middle, 2.0 / 3.0);
    return Estimate{
        row->minutesLeast * factor,
        0.5 * (row->minutesLeast + row->minutesMost) * factor,
        row->minutesMost * factor,
        {{"mass", kilograms, "kg"},
         {"oven", (row->ovenFahrenheit - 32.0) / 1.8, "°C"},
         {row->isPerPound ? "the chart says, a pound, at least" : "the chart says at least",
          row->minutesLeast, "minutes"},
         {"at most", row->minutesMost, "minutes"}}};
}

Estimate stuffed(Estimate unstuffed)
{
    constexpr Spread longer{15.0, 22.0, 30.0}; // minutes
    unstuffed.least += longer.least;
    unstuffed.likely += longer.likely;
    unstuffed.most += longer.most;
    unstuffed.because.push_back({"longer for its stuffing by", longer.likely, "min"});
    return unstuffed;
}

} // namespace suppertide::science
