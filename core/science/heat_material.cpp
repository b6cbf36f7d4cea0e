#include "core/science/heat_material.h"

#include <algorithm>
#include <cmath>

#include "core/base/contracts.h"
#include "core/science/valid_range.h"

namespace suppertide::science {

HeatMaterial::HeatMaterial(double first, double step, std::vector<double> enthalpy,
                           std::vector<double> conductivity)
    : first_(first), step_(step), enthalpy_(std::move(enthalpy)),
      conductivity_(std::move(conductivity))
{}

Result<HeatMaterial> HeatMaterial::constant(double conductivity, double heatCapacity)
{
    if (auto fault = outsideRange(
            {{"The thermal conductivity", conductivity, 1e-3, 1e3, "W/(m·K)"},
             {"The heat capacity of a cubic metre", heatCapacity, 1e4, 1e8, "J/(m³·K)"}})) {
        return *fault;
    }
    return HeatMaterial{0.0, 1.0, {0.0, heatCapacity}, {conductivity, conductivity}};
}

Result<HeatMaterial> HeatMaterial::tabulated(double first, double step,
                                             std::vector<double> enthalpy,
                                             std::vector<double> conductivity)
{
    expects(step > 0.0 && enthalpy.size() >= 2 && enthalpy.size() == conductivity.size(),
            "two or more points of both");
    const bool rises = std::adjacent_find(enthalpy.begin(), enthalpy.end(), [](double a, double b) {
                           return !(a < b);
                       }) == enthalpy.end();
    const bool conducts = std::all_of(conductivity.begin(), conductivity.end(),
                                      [](double k) { return k > 0.0 && std::isfinite(k); });
    if (!rises || !conducts || !std::isfinite(enthalpy.front()) ||
        !std::isfinite(enthalpy.back())) {
        return cannotCompute(
            "The thermal properties of this food make no sense: its heat content must rise "
            "with temperature, and it must conduct heat. Check its composition.");
    }
    return HeatMaterial{first, step, std::move(enthalpy), std::move(conductivity)};
}

std::size_t HeatMaterial::panelOf(double temperature) const
{
    const double at = (temperature - first_) / step_;
    const auto last = static_cast<double>(enthalpy_.size() - 2);
    return static_cast<std::size_t>(std::clamp(at, 0.0, last));
}

double HeatMaterial::enthalpy(double temperature) const
{
    const std::size_t panel = panelOf(temperature);
    const double within = (temperature - first_) / step_ - static_cast<double>(panel);
    return enthalpy_[panel] + within * (enthalpy_[panel + 1] - enthalpy_[panel]);
}

double HeatMaterial::temperature(double enthalpy) const
{
    const auto above = std::upper_bound(enthalpy_.begin() + 1, enthalpy_.end() - 1, enthalpy);
    const auto panel = static_cast<std::size_t>(above - enthalpy_.begin()) - 1;
    const double within = (enthalpy - enthalpy_[panel]) / (enthalpy_[panel + 1] - enthalpy_[panel]);
    return first_ + step_ * (static_cast<double>(panel) + within);
}

double HeatMaterial::heatCapacity(double temperature) const
{
    const std::size_t panel = panelOf(temperature);
    return (enthalpy_[panel + 1] - enthalpy_[panel]) / step_;
}

double HeatMaterial::conductivity(double temperature) const
{
    const std::size_t panel = panelOf(temperature);
    const double within =
        std::clamp((temperature - first_) / step_ - static_cast<double>(panel), 0.0, 1.0);
    return conductivity_[panel] + within * (conductivity_[panel + 1] - conductivity_[panel]);
}

} // namespace suppertide::science
