#include "core/science/high_altitude_cakes.h"

#include "core/science/table_numbers.h"
#include "core/science/valid_range.h"

namespace suppertide::tables {

std::string_view altitudeCakes();

} // namespace suppertide::tables

namespace suppertide::science {

namespace {

std::optional<CakeChange> changeOf(TableNumbers& cells, std::string_view least,
                                   std::string_view most)
{
    const auto from = cells.optionalNumber(least);
    const auto to = cells.optionalNumber(most);
    if (!from || !to) {
        return std::nullopt;
    }
    return CakeChange{*from, *to};
}

} // namespace

Result<std::vector<HighAltitudeCake>> readHighAltitudeCakes(std::string_view text)
{
    const auto table =
        TableText::read("altitude cakes", text,
                        {"feet", "powder_least", "powder_most", "sugar_least", "sugar_most",
                         "liquid_least", "liquid_most", "oven_f_least", "oven_f_most", "source"});
    if (!table) {
        return table.error();
    }
    std::vector<HighAltitudeCake> cakes;
    for (const TableRow& row : table->rows()) {
        TableNumbers cells{row};
        HighAltitudeCake cake;
        cake.feet = cells.number("feet");
        cake.lessPowder = {cells.number("powder_least"), cells.number("powder_most")};
        cake.lessSugar = changeOf(cells, "sugar_least", "sugar_most");
        cake.moreLiquid = {cells.number("liquid_least"), cells.number("liquid_most")};
        cake.hotterOven = changeOf(cells, "oven_f_least", "oven_f_most");
        cake.source = row.text("source");
        if (cells.fault()) {
            return *cells.fault();
        }
        if (!cakes.empty() && cakes.back().feet >= cake.feet) {
            return row.fault("feet", "a higher altitude than the line before");
        }
        cakes.push_back(std::move(cake));
    }
    return cakes;
}

const std::vector<HighAltitudeCake>& highAltitudeCakes()
{
    static const std::vector<HighAltitudeCake> cakes =
        readHighAltitudeCakes(tables::altitudeCakes()).value();
    return cakes;
}

Result<std::optional<HighAltitudeCake>> cakeChangesAt(double metres)
{
    if (auto fault = outsideRange({{"The altitude", metres, -400.0, 5000.0, "m"}})) {
        return *fault;
    }
    constexpr double footInMetres = 0.3048;
    constexpr double near = 500.0; // feet
    std::optional<HighAltitudeCake> found;
    for (const HighAltitudeCake& cake : highAltitudeCakes()) {
        if (metres / footInMetres >= cake.feet - near) {
            found = cake;
        }
    }
    return found;
}

} // namespace suppertide::science
