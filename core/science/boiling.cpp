#include "core/science/boiling.h"

#include <fmt/format.h>

#include <array>

#include "core/base/contracts.h"
#include "core/science/table_numbers.h"
#include "core/science/valid_range.h"
#include "core/science/water.h"

namespace suppertide::tables {

std::string_view hobs();

} // namespace suppertide::tables

namespace suppertide::science {

namespace {

constexpr std::array<std::string_view, 3> hobIds{"gas", "electric", "induction"};

// Common practice: 5 to 10 % more for a pot on its way to the boil; more without a lid.
constexpr Spread lossUnderLid{0.03, 0.05, 0.10};
constexpr Spread lossInTheOpen{0.08, 0.12, 0.25};

std::optional<Failure> faultOf(const BoilQuestion& q)
{
    return outsideRange(
        {{"What is to boil", q.litres, 0.05, 60.0, "litres"},
         {"The temperature of the water", q.start, 0.0, 100.0, "°C"},
         {"The power of the burner", q.burner, 100.0, 10000.0, "W"},
         {"The part of the power that gets into the pot", q.efficiency.least, 0.05, 1.0, ""},
         {"The part of the power that gets into the pot", q.efficiency.likely, q.efficiency.least,
          1.0, ""},
         {"The part of the power that gets into the pot", q.efficiency.most, q.efficiency.likely,
          1.0, ""},
         {"The mass of the pot", q.potMass, 0.0, 50.0, "kg"},
         {"The specific heat of the pot", q.potHeat, 100.0, 2000.0, "J/(kg·K)"}});
}

} // namespace

Result<std::vector<Spread>> readHobs(std::string_view text)
{
    const auto table =
        TableText::read("hobs", text, {"id", "name", "least", "likely", "most", "source"});
    if (!table) {
        return table.error();
    }
    std::vector<Spread> spreads;
    for (const TableRow& row : table->rows()) {
        if (spreads.size() >= hobIds.size() || row.text("id") != hobIds.at(spreads.size())) {
            return row.fault("id", "gas, electric, induction in this order");
        }
        TableNumbers cells{row};
        spreads.push_back({cells.number("least"), cells.number("likely"), cells.number("most")});
        if (cells.fault()) {
            return *cells.fault();
        }
    }
    if (spreads.size() != hobIds.size()) {
        return Failure{FailureKind::NotFound, "The table of hobs lacks one.", {}};
    }
    return spreads;
}

const Spread& efficiencyOf(Hob hob)
{
    static const std::vector<Spread> spreads = readHobs(tables::hobs()).value();
    return spreads.at(static_cast<std::size_t>(hob));
}

Result<Estimate> timeToBoil(const BoilQuestion& question)
{
    if (auto fault = faultOf(question)) {
        return *fault;
    }
    auto boils = boilingPointAtAltitude(question.altitude);
    if (!boils) {
        return boils.error();
    }
    if (question.start >= *boils) {
        return cannotCompute(fmt::format("At {} m water boils at {:.1f} °C, so water of {} °C "
                                         "boils already. Enter how warm it is at the start.",
                                         plainNumber(question.altitude), *boils,
                                         plainNumber(question.start)));
    }
    const double top = std::min(*boils, 100.0); // below the sea by a degree at most
    const double water = question.litres / 1000.0 * waterDensity(question.start).value();
    const double heat = water * heatToWarmWater(question.start, top).value() +
                        question.potMass * question.potHeat * (*boils - question.start);
    const Spread& loss = question.hasLid ? lossUnderLid : lossInTheOpen;
    const auto minutes = [&](double efficiency, double lost) {
        return heat / (question.burner * efficiency * (1.0 - lost)) / 60.0;
    };
    Estimate estimate{minutes(question.efficiency.most, loss.least),
                      minutes(question.efficiency.likely, loss.likely),
                      minutes(question.efficiency.least, loss.most),
                      {{"water", water, "kg"},
                       {"at the start", question.start, "°C"},
                       {"boils at", *boils, "°C"},
                       {"altitude", question.altitude, "m"},
                       {"pot", question.potMass, "kg"},
                       {"heat to be brought in", heat / 1000.0, "kJ"},
                       {"burner", question.burner, "W"},
                       {"of which gets into the pot", 100.0 * question.efficiency.likely, "%"},
                       {"of which is lost on the way", 100.0 * loss.likely, "%"}}};
    if (estimate.most > mostMinutes) {
        return cannotCompute(
            "This burner never brings so much to the boil. Use a stronger one or less water.");
    }
    return estimate;
}

Result<double> secondsToWarmWater(double litres, double from, double to, double watts,
                                  double efficiency)
{
    if (auto fault = outsideRange(
            {{"The water", litres, 0.01, 100.0, "litres"},
             {"The power", watts, 1.0, 50000.0, "W"},
             {"The part of the power that gets into the pot", efficiency, 0.05, 1.0, ""},
             {"The temperature at the start", from, 0.0, 100.0, "°C"},
             {"The temperature at the end", to, from, 100.0, "°C"}})) {
        return *fault;
    }
    const double mass = litres / 1000.0 * waterDensity(from).value();
    return mass * heatToWarmWater(from, to).value() / (watts * efficiency);
}

} // namespace suppertide::science
