// FoodBody: the solver's body of a followed food, carried from stay to stay, with the samples of
// each. Used by food_temperatures alone.
#pragma once

#include <optional>
#include <vector>

#include "core/plan/food_passages.h"

namespace suppertide {

/// What a food is for the solver.
struct BodyOf
{
    double beta = 0;
    double halfThickness = 0; // m
    science::HeatMaterial material;
};
/// A failure without a material of the table, a thickness, or figures that can be computed with.
[[nodiscard]] Result<BodyOf> bodyOf(const TrackedFood& food);

/// Temperatures of one stay in minutes after its beginning, and the body at its end; without a body
/// nobody knows what comes after.
struct PassageCurve
{
    std::vector<safety::TemperatureSample> samples; // at most 40; empty: not known
    std::optional<science::HeatedBody> after;
};
/// `before` absent: how warm it was is not known. A stay brought to a temperature by heat of which
/// nothing is known goes straight up to it, all through.
[[nodiscard]] PassageCurve curveOf(const PassageHeat& heat, const BodyOf& body,
                                   const std::optional<science::HeatedBody>& before);

} // namespace suppertide
