#include "core/science/moist_heat.h"

#include <algorithm>

#include "core/science/surroundings.h"
#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

constexpr Spread wetBath{0.12, 0.21, 0.32};
/// In a cooler bath than one that gets there, it takes so many times as long, or is not done.
constexpr double muchLonger = 2.0;
/// A bath is no hotter than this below the boil: it simmers.
constexpr double belowTheBoil = 1.0;

} // namespace

Result<MoistPlace> inClosedPot(const ClosedPot& pot)
{
    if (auto fault =
            outsideRange({{"The oven", pot.oven, 30.0, 350.0, "°C"},
                          {"The temperature of the food at the start", pot.start, -5.0, 95.0, "°C"},
                          {"The boiling point", pot.boils, 80.0, 105.0, "°C"}})) {
        return *fault;
    }
    const double around = std::min(pot.oven, pot.boils);
    if (pot.start >= around) {
        return cannotCompute("The food is as warm as the pot gets. Change the temperature of the "
                             "oven, or say how cold the food is at the start.");
    }
    if (pot.oven <= pot.boils) {
        return MoistPlace{around, pot.air};
    }
    const auto towards = [&pot](double air, double share) {
        const double surface = pot.start + share * (pot.boils - pot.start);
        return air * (pot.oven - surface) / (pot.boils - surface);
    };
    const double mostOfAll = surroundingsOf(Place::BoilingWater).coefficient.most;
    MoistPlace place{around, {}};
    place.coefficient.least = std::min(towards(pot.air.least, 0.0), mostOfAll);
    place.coefficient.likely = std::min(towards(pot.air.likely, 0.5), mostOfAll);
    place.coefficient.most = std::min(towards(pot.air.most, 0.75), mostOfAll);
    return place;
}

Result<Spread> waterBathInOven(double oven, double boils)
{
    if (auto fault = outsideRange({{"The oven", oven, 90.0, 300.0, "°C"},
                                   {"The boiling point", boils, 80.0, 105.0, "°C"}})) {
        return *fault;
    }
    const double air = surroundingsOf(Place::StillOven).coefficient.likely; // it cancels out
    const auto at = [&](double wetness) {
        const auto felt = withEvaporation({oven, air}, wetness);
        return felt ? std::min(felt->temperature, boils - belowTheBoil) : boils - belowTheBoil;
    };
    return Spread{at(wetBath.most), at(wetBath.likely), at(wetBath.least)};
}

Result<Estimate> timeToCoreInBath(CoreQuestion question, const Spread& bath)
{
    question.coefficient = surroundingsOf(Place::WaterBath).coefficient;
    question.wetness = coveredSurface;
    const auto in = [&question](double celsius) {
        question.surroundings = celsius;
        return timeToCore(question);
    };
    Result<Estimate> likely = in(bath.likely);
    if (!likely) {
        return likely;
    }
    const Result<Estimate> hottest = in(bath.most);
    const Result<Estimate> coolest = in(bath.least);
    const double longest = std::min(muchLonger * likely->likely, mostMinutes);
    if (hottest) {
        likely->least = std::min(likely->least, hottest->least);
    }
    likely->most = std::max(likely->most, coolest ? std::min(coolest->most, longest) : longest);
    likely->because.push_back({"water of the bath, likely", bath.likely, "°C"});
    likely->because.push_back({"water of the bath, coolest", bath.least, "°C"});
    likely->because.push_back({"water of the bath, hottest", bath.most, "°C"});
    return likely;
}

} // namespace suppertide::science
