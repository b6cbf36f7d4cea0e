#include "core/science/lethality.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/science/table_numbers.h"
#include "core/science/valid_range.h"

namespace suppertide::tables {

std::string_view heatResistance();

} // namespace suppertide::tables

namespace suppertide::science {

namespace {

std::optional<Failure> faultOf(double celsius, double reference, double z)
{
    return outsideRange({{"The temperature", celsius, -60.0, 200.0, "°C"},
                         {"The reference temperature", reference, 30.0, 150.0, "°C"},
                         {"The z value", z, 1.0, 30.0, "°C"}});
}

double rateAt(double celsius, double reference, double z)
{
    return std::pow(10.0, (celsius - reference) / z);
}

} // namespace

double HeatResistance::dAt(double celsius) const
{
    return dMinutes * std::pow(10.0, (reference - celsius) / z);
}

Result<std::vector<HeatResistance>> readHeatResistances(std::string_view text)
{
    const auto table = TableText::read(
        "heat resistance", text,
        {"id", "organism", "food", "d_minutes", "at", "z", "log_reductions", "source"});
    if (!table) {
        return table.error();
    }
    std::vector<HeatResistance> germs;
    for (const TableRow& row : table->rows()) {
        TableNumbers cells{row};
        HeatResistance germ{std::string{row.text("id")},
                            std::string{row.text("organism")},
                            std::string{row.text("food")},
                            cells.number("d_minutes"),
                            cells.number("at"),
                            cells.number("z"),
                            cells.number("log_reductions"),
                            std::string{row.text("source")}};
        if (cells.fault()) {
            return *cells.fault();
        }
        if (!(germ.dMinutes > 0.0 && germ.z >= 1.0 && germ.logReductions > 0.0)) {
            return row.fault("d_minutes", "a positive number");
        }
        germs.push_back(std::move(germ));
    }
    return germs;
}

const std::vector<HeatResistance>& heatResistances()
{
    static const std::vector<HeatResistance> germs =
        readHeatResistances(tables::heatResistance()).value();
    return germs;
}

Result<HeatResistance> findHeatResistance(std::string_view id)
{
    const auto& germs = heatResistances();
    const auto found = std::ranges::find(germs, id, &HeatResistance::id);
    if (found == germs.end()) {
        return Failure{
            FailureKind::NotFound,
            fmt::format("How “{}” stands heat is not known here. Go by a published rule instead.",
                        id),
            {}};
    }
    return *found;
}

Result<double> dFromCounts(double minutes, double before, double after)
{
    if (!(minutes > 0.0 && after > 0.0 && before > after && std::isfinite(before) &&
          std::isfinite(minutes))) {
        return cannotCompute(
            "Germs must have become fewer, in more than no time, for their D value to be told.");
    }
    return minutes / std::log10(before / after);
}

Result<double> lethalRate(double celsius, double reference, double z)
{
    if (auto fault = faultOf(celsius, reference, z)) {
        return *fault;
    }
    return rateAt(celsius, reference, z);
}

Result<double> lethality(const std::vector<TimeTemperature>& course, double reference, double z)
{
    if (course.size() < 2) {
        return cannotCompute("A course of temperatures needs two readings or more. Add one.");
    }
    double total = 0.0;
    for (std::size_t i = 0; i < course.size(); ++i) {
        if (auto fault = faultOf(course[i].celsius, reference, z)) {
            return *fault;
        }
        if (i == 0) {
            continue;
        }
        const double minutes = course[i].minute - course[i - 1].minute;
        if (!(minutes >= 0.0 && std::isfinite(minutes))) {
            return cannotCompute("The readings of a course of temperatures must follow each other "
                                 "in time. Sort them.");
        }
        const double before = rateAt(course[i - 1].celsius, reference, z);
        // (e^x − 1)/x, which is 1 where the temperature stays.
        const double x = std::numbers::ln10 * (course[i].celsius - course[i - 1].celsius) / z;
        const double mean = std::abs(x) < 1e-9 ? 1.0 : std::expm1(x) / x;
        total += minutes * before * mean;
    }
    return total;
}

Result<double> logReduction(const std::vector<TimeTemperature>& course, const HeatResistance& germ)
{
    auto minutes = lethality(course, germ.reference, germ.z);
    return minutes ? Result<double>{*minutes / germ.dMinutes} : minutes;
}

} // namespace suppertide::science
