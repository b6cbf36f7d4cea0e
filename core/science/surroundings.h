// Surroundings: where food gets warm or cold in a kitchen, how hot it is there and how well heat
// gets into the food's surface (resources/tables/surroundings.tsv).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/science/estimate.h"

namespace suppertide::science {

enum class Place
{
    StillOven,
    FanOven,
    WaterBath,
    BoilingWater,
    Pan,
    HotOil,
    Counter,
    Fridge,
    Freezer,
    IceBath,
    ColdWater,
};

struct Surroundings
{
    Place place = Place::Counter;
    std::string name;
    std::optional<double> temperature; // °C, usual; nothing where the cook sets it
    Spread coefficient;                // W/(m²·K), radiation included
    std::string source;
};

[[nodiscard]] const Surroundings& surroundingsOf(Place place);

/// Reads a table like surroundings.tsv, in which each place stands once. A fault names its line.
[[nodiscard]] Result<std::vector<Surroundings>> readSurroundings(std::string_view text);

} // namespace suppertide::science
