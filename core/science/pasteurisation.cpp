#include "core/science/pasteurisation.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

#include "core/science/dinner_foods.h"
#include "core/science/lethality.h"
#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

constexpr double bathCoefficient = 95.0; // W/(m²·K), Baldwin
constexpr double conductivity = 0.48;    // W/(m·K), Baldwin

double shapeFactorOf(PacketShape shape)
{
    switch (shape) {
    case PacketShape::SlabLike:
        return 0.0;
    case PacketShape::CylinderLike:
        return 0.7;
    case PacketShape::SphereLike:
        break;
    }
    return 1.25;
}

constexpr double frozenBelow = -2.0; // °C

Result<HeatMaterial> materialOf(double diffusivity, double start)
{
    if (start >= frozenBelow) {
        return HeatMaterial::constant(conductivity, conductivity / diffusivity);
    }
    const auto beef = findDinnerFood("beef_lean");
    return beef ? heatMaterial(beef->composition, beef->freezesAt)
                : Result<HeatMaterial>{beef.error()};
}

Result<HeatedBody> packet(double beta, double millimetres, double diffusivity, double start)
{
    auto material = materialOf(diffusivity, start);
    if (!material) {
        return material.error();
    }
    return HeatedBody::make(beta, millimetres / 2000.0, std::move(*material), start);
}

Result<double> minutesInBath(double beta, double millimetres, double diffusivity, double start,
                             double bath, double target)
{
    auto body = packet(beta, millimetres, diffusivity, start);
    if (!body) {
        return body.error();
    }
    const auto seconds = body->advanceToCentre({bath, bathCoefficient}, target, 60.0 * mostMinutes);
    if (!seconds) {
        return seconds.error();
    }
    if (!seconds->has_value()) {
        return cannotCompute(
            "The middle does not get there within two weeks. Take a thinner piece.");
    }
    return **seconds / 60.0;
}

/// Part of the reductions asked for that is done, for each germ.
struct Kill
{
    HeatResistance germ;
    double reductions = 0.0;

    [[nodiscard]] double part() const { return reductions / germ.logReductions; }
};

Result<std::vector<Kill>> germsOf(PasteurisedFood food)
{
    const std::vector<std::string_view> ids =
        food == PasteurisedFood::Meat
            ? std::vector<std::string_view>{"listeria_meat", "salmonella_meat", "e_coli_meat"}
            : std::vector<std::string_view>{"listeria_poultry"};
    std::vector<Kill> kills;
    for (const auto id : ids) {
        auto germ = findHeatResistance(id);
        if (!germ) {
            return germ.error();
        }
        kills.push_back({std::move(*germ), 0.0});
    }
    return kills;
}

/// Minutes until the last of the germs has fallen as far as is asked for.
Result<double> minutesToKill(HeatedBody body, std::vector<Kill> kills, double bath)
{
    const auto leastDone = [&kills] {
        return std::ranges::min_element(kills, {}, &Kill::part)->part();
    };
    double minute = 0.0;
    double before = 0.0;
    while (minute < mostMinutes) {
        // Between two points the temperature in the middle is taken to go straight.
        const double step = std::max(0.25, 0.02 * minute);
        const double from = body.centre();
        if (auto passed = body.advance({bath, bathCoefficient}, 60.0 * step); !passed) {
            return passed.error();
        }
        for (Kill& kill : kills) {
            auto more = logReduction({{0.0, from}, {step, body.centre()}}, kill.germ);
            if (!more) {
                return more.error();
            }
            kill.reductions += *more;
        }
        const double done = leastDone();
        if (done >= 1.0) {
            return minute + step * (1.0 - before) / (done - before);
        }
        before = done;
        minute += step;
    }
    return cannotCompute("This bath does not pasteurise within two weeks. Choose a hotter one.");
}

} // namespace

Result<Estimate> timeInBath(PacketShape shape, double millimetres, double start, double bath,
                            double below)
{
    if (auto fault =
            outsideRange({{"The thickness", millimetres, 3.0, 150.0, "mm"},
                          {"The temperature at the start", start, -30.0, 80.0, "°C"},
                          {"The temperature of the bath", bath, 0.0, 95.0, "°C"},
                          {"How near the middle shall come to the bath", below, 0.1, 10.0, "°C"},
                          {"The difference between bath and food", std::abs(bath - start), below,
                           100.0, "°C"}})) {
        return *fault;
    }
    const double beta = shapeFactorOf(shape);
    const double target = bath > start ? bath - below : bath + below;
    constexpr double likelyDiffusivity = 1.4e-7; // m²/s
    auto likely = minutesInBath(beta, millimetres, likelyDiffusivity, start, bath, target);
    if (!likely) {
        return likely.error();
    }
    // At the same Biot number time goes as 1/α.
    const bool isFrozen = start < frozenBelow;
    const double least = *likely * (isFrozen ? 0.8 : likelyDiffusivity / 1.6e-7);
    const double most = *likely * (isFrozen ? 1.2 : likelyDiffusivity / 1.1e-7);
    return Estimate{least,
                    *likely,
                    most,
                    {{"thickness", millimetres, "mm"},
                     {"shape (0 slab, 1 cylinder, 2 sphere)", beta, ""},
                     {"at the start", start, "°C"},
                     {"bath", bath, "°C"},
                     {"diffusivity", 1e6 * likelyDiffusivity, "mm²/s"},
                     {"heat transfer at the surface", bathCoefficient, "W/(m²·K)"}}};
}

Result<Estimate> timeToPasteurise(PasteurisedFood food, double millimetres, double start,
                                  double bath)
{
    if (auto fault = outsideRange({{"The thickness", millimetres, 3.0, 100.0, "mm"},
                                   {"The temperature at the start", start, 0.0, 20.0, "°C"},
                                   {"The temperature of the bath", bath, 54.4, 80.0, "°C"}})) {
        return *fault;
    }
    const double diffusivity = food == PasteurisedFood::Meat ? 1.11e-7 : 1.08e-7;
    const double beta = millimetres <= 30.0 ? 0.0 : 0.28;
    auto body = packet(beta, millimetres, diffusivity, start);
    if (!body) {
        return body.error();
    }
    auto kills = germsOf(food);
    if (!kills) {
        return kills.error();
    }
    auto minutes = minutesToKill(std::move(*body), std::move(*kills), bath);
    if (!minutes) {
        return minutes.error();
    }
    const double off = std::max(0.2 * *minutes, 15.0);
    return Estimate{std::max(*minutes - off, 0.0),
                    *minutes,
                    *minutes + off,
                    {{"thickness", millimetres, "mm"},
                     {"shape (0 slab, 1 cylinder, 2 sphere)", beta, ""},
                     {"at the start", start, "°C"},
                     {"bath", bath, "°C"},
                     {"diffusivity", 1e6 * diffusivity, "mm²/s"}}};
}

} // namespace suppertide::science
