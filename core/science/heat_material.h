// HeatMaterial: what the solver of conduction needs to know of a food: heat content and
// conductivity by temperature. Made from figures or from a composition (food_properties.h).
#pragma once

#include <vector>

#include "core/base/result.h"

namespace suppertide::science {

class HeatMaterial
{
public:
    /// The same at all temperatures. `conductivity` 0.001…1000 W/(m·K), `heatCapacity` (ρ·cp)
    /// 1e4…1e8 J/(m³·K); a failure outside.
    static Result<HeatMaterial> constant(double conductivity, double heatCapacity);

    /// By temperature: heat content in J/m³ and conductivity in W/(m·K) at `first`, `first` +
    /// `step`, … °C, straight between; beyond the ends the last slope and the last conductivity go
    /// on. A failure if heat content does not rise strictly or a conductivity is not positive.
    /// Requires step > 0 and two or more points, as many of one as of the other.
    static Result<HeatMaterial> tabulated(double first, double step, std::vector<double> enthalpy,
                                          std::vector<double> conductivity);

    /// J/m³, above an arbitrary zero.
    [[nodiscard]] double enthalpy(double temperature) const;
    /// °C; the inverse of `enthalpy`.
    [[nodiscard]] double temperature(double enthalpy) const;
    /// J/(m³·K): the slope of `enthalpy`.
    [[nodiscard]] double heatCapacity(double temperature) const;
    /// W/(m·K).
    [[nodiscard]] double conductivity(double temperature) const;
    [[nodiscard]] bool isConstant() const { return enthalpy_.size() == 2; }

private:
    HeatMaterial(double first, double step, std::vector<double> enthalpy,
                 std::vector<double> conductivity);
    [[nodiscard]] std::size_t panelOf(double temperature) const;

    double first_;
    double step_;
    std::vector<double> enthalpy_;
    std::vector<double> conductivity_;
};

} // namespace suppertide::science
