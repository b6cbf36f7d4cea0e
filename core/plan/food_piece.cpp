#include "core/plan/food_piece.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/science/dinner_foods.h"
#include "core/science/valid_range.h"
#include "core/science/water.h"

namespace suppertide {

namespace {

constexpr double fridge = 4.0; // °C, where nobody has measured it
constexpr double freezer = -18.0;
constexpr double warm = 65.0; // kept warm by the rules, which want 60 or 63

double degrees(Celsius temperature)
{
    return temperature.tenths() / 10.0;
}

double metres(Length length)
{
    return static_cast<double>(length.smallest()) / 1000.0;
}

} // namespace

double temperatureAt(KeepPlace place, const Kitchen& kitchen)
{
    const auto cold = [&](ColdKind kind, double usual) {
        const auto found = std::ranges::find(kitchen.coldPlaces, kind, &ColdPlace::kind);
        return found != kitchen.coldPlaces.end() && found->temperature
                   ? degrees(*found->temperature)
                   : usual;
    };
    switch (place) {
    case KeepPlace::Fridge:
        return cold(ColdKind::Fridge, fridge);
    case KeepPlace::Freezer:
        return cold(ColdKind::Freezer, freezer);
    case KeepPlace::Warm:
        return warm;
    case KeepPlace::Nowhere:
    case KeepPlace::Counter:
        return degrees(kitchen.roomTemperature);
    }
    return degrees(kitchen.roomTemperature);
}

Result<void> FoodPiece::check()
{
    if (food_.mass.isZero()) {
        return science::cannotCompute(fmt::format(
            "It is not known how much “{}” weighs. Give its mass in grams.", food_.name));
    }
    const auto boils = science::boilingPointAtAltitude(kitchen_.altitudeMetres);
    if (!boils) {
        return boils.error();
    }
    boils_ = *boils;
    return {};
}

double FoodPiece::kilograms() const
{
    const double mass = static_cast<double>(food_.mass.smallest()) / 1e6;
    return food_.scaling == Scaling::PerPortion ? mass * share_ : mass;
}

double FoodPiece::thickness() const
{
    const double one = metres(food_.thickness);
    const bool grows = food_.isOnePiece && food_.scaling == Scaling::PerPortion;
    return grows && food_.shape != FoodShape::Stirred ? one * std::cbrt(share_) : one;
}

double FoodPiece::start() const
{
    if (keptIn_) {
        return temperatureAt(*keptIn_, kitchen_);
    }
    double temperature = temperatureAt(food_.from, kitchen_);
    for (std::size_t i = 0; i < before_; ++i) {
        const FoodTreatment& earlier = food_.steps[i];
        if (earlier.to) {
            temperature = degrees(*earlier.to);
        } else if (earlier.treatment == Treatment::Boil || earlier.treatment == Treatment::Simmer ||
                   earlier.treatment == Treatment::Reduce) {
            temperature = boils_;
        }
    }
    return temperature;
}

science::BodyShape FoodPiece::shapeFor(double density) const
{
    const double volume = kilograms() / density;
    const double size = thickness();
    switch (food_.shape) {
    case FoodShape::Stirred:
    case FoodShape::Flat: {
        const double side = std::max(size, std::sqrt(volume / size));
        return science::Block{size, side, side};
    }
    case FoodShape::Long: {
        const double section = std::numbers::pi * size * size / 4.0;
        return science::Roll{size, std::max(size, volume / section)};
    }
    case FoodShape::Round: {
        const double rest = 6.0 * volume / (std::numbers::pi * size * size);
        return science::Joint{size, size, food_.isOnePiece ? std::max(size, rest) : size};
    }
    }
    return science::Block{size, size, size};
}

Result<science::DinnerFood> FoodPiece::material() const
{
    return science::findDinnerFood(food_.material);
}

Result<science::CoreQuestion> FoodPiece::toCore(double target) const
{
    const auto known = material();
    if (!known) {
        return known.error();
    }
    const auto properties = science::foodProperties(known->composition, 20.0);
    if (!properties) {
        return properties.error();
    }
    science::CoreQuestion question;
    question.food = known->composition;
    question.freezesAt = known->freezesAt;
    question.shape = shapeFor(properties->density);
    question.start = start();
    question.target = target;
    return question;
}

} // namespace suppertide
