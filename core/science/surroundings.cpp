#include "core/science/surroundings.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/base/contracts.h"
#include "core/science/table_numbers.h"

namespace suppertide::tables {

std::string_view surroundings();

} // namespace suppertide::tables

namespace suppertide::science {

namespace {

constexpr std::array<std::pair<std::string_view, Place>, 11> places{
    {{"still_oven", Place::StillOven},
     {"fan_oven", Place::FanOven},
     {"water_bath", Place::WaterBath},
     {"boiling_water", Place::BoilingWater},
     {"pan", Place::Pan},
     {"hot_oil", Place::HotOil},
     {"counter", Place::Counter},
     {"fridge", Place::Fridge},
     {"freezer", Place::Freezer},
     {"ice_bath", Place::IceBath},
     {"cold_water", Place::ColdWater}}};

} // namespace

Result<std::vector<Surroundings>> readSurroundings(std::string_view text)
{
    const auto table = TableText::read(
        "surroundings", text, {"id", "name", "temperature", "least", "likely", "most", "source"});
    if (!table) {
        return table.error();
    }
    std::vector<Surroundings> all;
    for (const TableRow& row : table->rows()) {
        const auto place =
            std::ranges::find(places, row.text("id"), &std::pair<std::string_view, Place>::first);
        if (place == places.end() ||
            std::ranges::find(all, place->second, &Surroundings::place) != all.end()) {
            return row.fault("id", "a place, and each once");
        }
        TableNumbers cells{row};
        const Spread spread{cells.number("least"), cells.number("likely"), cells.number("most")};
        const auto temperature = cells.optionalNumber("temperature");
        if (cells.fault()) {
            return *cells.fault();
        }
        if (!(0.0 < spread.least && spread.least <= spread.likely &&
              spread.likely <= spread.most)) {
            return row.fault("likely", "a number between the least and the most");
        }
        all.push_back({place->second, std::string{row.text("name")}, temperature, spread,
                       std::string{row.text("source")}});
    }
    if (all.size() != places.size()) {
        return Failure{FailureKind::NotFound, "The table of surroundings lacks a place.", {}};
    }
    return all;
}

const Surroundings& surroundingsOf(Place place)
{
    static const std::vector<Surroundings> all = readSurroundings(tables::surroundings()).value();
    const auto found = std::ranges::find(all, place, &Surroundings::place);
    ensures(found != all.end(), "each place stands in the table");
    return *found;
}

} // namespace suppertide::science
