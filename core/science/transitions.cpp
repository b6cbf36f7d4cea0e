#include "core/science/transitions.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/science/table_numbers.h"
#include "core/science/valid_range.h"
#include "core/science/water.h"

namespace suppertide::tables {

std::string_view transitions();
std::string_view syrupStages();

} // namespace suppertide::tables

namespace suppertide::science {

namespace {

std::optional<PrintedRange> rangeOf(TableNumbers& cells, std::string_view from, std::string_view to)
{
    const auto low = cells.optionalNumber(from);
    const auto high = cells.optionalNumber(to);
    if (!low || !high) {
        return std::nullopt;
    }
    return PrintedRange{*low, *high};
}

} // namespace

Result<std::vector<Transition>> readTransitions(std::string_view text)
{
    const auto table = TableText::read("transitions", text, {"id", "what", "from", "to", "source"});
    if (!table) {
        return table.error();
    }
    std::vector<Transition> all;
    for (const TableRow& row : table->rows()) {
        TableNumbers cells{row};
        all.push_back({std::string{row.text("id")}, std::string{row.text("what")},
                       cells.number("from"), cells.number("to"), std::string{row.text("source")}});
        if (cells.fault()) {
            return *cells.fault();
        }
        if (all.back().from > all.back().to) {
            return row.fault("to", "no less than in the column before");
        }
    }
    return all;
}

const std::vector<Transition>& transitions()
{
    static const std::vector<Transition> all = readTransitions(tables::transitions()).value();
    return all;
}

Result<Transition> findTransition(std::string_view id)
{
    const auto& all = transitions();
    const auto found = std::ranges::find(all, id, &Transition::id);
    if (found == all.end()) {
        return Failure{FailureKind::NotFound,
                       fmt::format("At which temperature “{}” happens is not known here. Enter the "
                                   "temperature yourself.",
                                   id),
                       {}};
    }
    return *found;
}

Result<std::vector<SyrupStage>> readSyrupStages(std::string_view text)
{
    const auto table = TableText::read("syrup stages", text,
                                       {"id", "name", "from", "to", "from_f", "to_f", "other_from",
                                        "other_to", "sugar_percent", "source"});
    if (!table) {
        return table.error();
    }
    std::vector<SyrupStage> stages;
    for (const TableRow& row : table->rows()) {
        TableNumbers cells{row};
        SyrupStage stage;
        stage.id = row.text("id");
        stage.name = row.text("name");
        stage.celsius = {cells.number("from"), cells.number("to")};
        stage.fahrenheit = rangeOf(cells, "from_f", "to_f");
        stage.otherBooks = rangeOf(cells, "other_from", "other_to");
        stage.sugarPercent = cells.optionalNumber("sugar_percent");
        stage.source = row.text("source");
        if (cells.fault()) {
            return *cells.fault();
        }
        stages.push_back(std::move(stage));
    }
    return stages;
}

const std::vector<SyrupStage>& syrupStages()
{
    static const std::vector<SyrupStage> stages = readSyrupStages(tables::syrupStages()).value();
    return stages;
}

Result<PrintedRange> syrupStageAt(const SyrupStage& stage, double metres)
{
    const auto boils = boilingPointAtAltitude(metres);
    if (!boils) {
        return boils.error();
    }
    constexpr double noWaterLeft = 160.0; // °C
    if (stage.celsius.from >= noWaterLeft) {
        return stage.celsius;
    }
    const double lower = boilingPointAtAltitude(0.0).value() - *boils;
    return PrintedRange{stage.celsius.from - lower, stage.celsius.to - lower};
}

Result<double> timeByQ10(double time, double from, double to, double q10)
{
    if (auto fault = outsideRange({{"The time known", time, 1e-3, 1e5, ""},
                                   {"The temperature known", from, 5.0, 38.0, "°C"},
                                   {"The temperature of the dough", to, 5.0, 38.0, "°C"},
                                   {"The factor for ten degrees", q10, 1.0, 4.0, ""}})) {
        return *fault;
    }
    return time * std::pow(q10, (from - to) / 10.0);
}

Result<Estimate> risingTime(double minutes, double from, double to)
{
    constexpr double slow = 2.1;
    constexpr double usual = 2.3;
    constexpr double quick = 2.6;
    auto likely = timeByQ10(minutes, from, to, usual);
    if (!likely) {
        return likely.error();
    }
    const double a = timeByQ10(minutes, from, to, slow).value();
    const double b = timeByQ10(minutes, from, to, quick).value();
    if (std::max(a, b) > mostMinutes) {
        return cannotCompute(
            "Dough does not take longer than two weeks. Check the time and the temperatures.");
    }
    return Estimate{std::min(a, b),
                    *likely,
                    std::max(a, b),
                    {{"known to take", minutes, "minutes"},
                     {"at", from, "°C"},
                     {"dough", to, "°C"},
                     {"faster for ten degrees", usual, "times"}}};
}

Result<PrintedRange> gelatineHours(double celsius)
{
    if (auto fault = outsideRange({{"The temperature of the fridge", celsius, 2.0, 10.0, "°C"}})) {
        return *fault;
    }
    const double share = (celsius - 5.0) / 5.0;
    return PrintedRange{5.0 * std::pow(15.0 / 5.0, share), 8.0 * std::pow(20.0 / 8.0, share)};
}

} // namespace suppertide::science
