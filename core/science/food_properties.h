// Thermal properties of a food from what it consists of: density, specific heat, conductivity by
// temperature, frozen or not. Used wherever heat goes through food.
#pragma once

#include "core/base/result.h"
#include "core/science/heat_material.h"

namespace suppertide::science {

enum class Component
{
    Water,
    Ice,
    Protein,
    Fat,
    Carbohydrate,
    Fibre,
    Ash,
};

/// At one temperature.
struct ComponentProperties
{
    double conductivity = 0.0; // W/(m·K)
    double density = 0.0;      // kg/m³
    double heatCapacity = 0.0; // J/(kg·K)
};

/// Of one component at −40…150 °C; a failure outside.
/// Source: Y. Choi, M. R. Okos, Effects of temperature and composition on the thermal properties of
/// foods, in Food Engineering and Process Applications 1 (1986), 93–101; as in ASHRAE Handbook,
/// Refrigeration, “Thermal properties of foods”, Tables 1 and 2.
[[nodiscard]] Result<ComponentProperties> componentProperties(Component component,
                                                              double temperature);

/// Parts of the whole by mass; `carbohydrate` without fibre. Parts that are not named (alcohol) are
/// left out.
struct Composition
{
    double water = 0.0;
    double protein = 0.0;
    double fat = 0.0;
    double carbohydrate = 0.0;
    double fibre = 0.0;
    double ash = 0.0;

    [[nodiscard]] double sum() const { return water + protein + fat + carbohydrate + fibre + ash; }
};

/// Where ice begins to form in a food of which that is not known; foods lie at −0.3…−2.5 °C.
inline constexpr double usualFreezingPoint = -1.5;

struct FoodProperties
{
    double density = 0.0;            // kg/m³
    double heatCapacity = 0.0;       // J/(kg·K), without the heat of melting
    double conductivity = 0.0;       // W/(m·K), heat along the components: the upper bound
    double conductivityAcross = 0.0; // W/(m·K), heat across them: the lower bound
    double iceFraction = 0.0;        // by mass

    /// m²/s.
    [[nodiscard]] double diffusivity() const { return conductivity / (density * heatCapacity); }
};

/// Of a food at −40…150 °C. Below `freezesAt` (−5…0 °C) a part of its water is ice.
/// Mixing: cp = Σxᵢcpᵢ; 1/ρ = Σxᵢ/ρᵢ; conductivity Σvᵢkᵢ by volume (along), 1/Σ(vᵢ/kᵢ) (across).
/// Measured conductivities lie up to 10 % lower than the former.
/// Fails if a part is negative or the parts do not make 0.95…1.05; within that they are scaled
/// to 1. Source: as above; ice: H. G. Schwartzberg, Effective heat capacities for the freezing and
/// thawing of food, J. Food Science 41 (1976), 152–156, with bound water 0.4 of the protein: Q. T.
/// Pham, J. Food Science 52 (1987), 210–212.
[[nodiscard]] Result<FoodProperties> foodProperties(const Composition& composition,
                                                    double temperature,
                                                    double freezesAt = usualFreezingPoint);

/// The food for the solver: heat content with the heat of melting, and conductivity, −40…150 °C.
/// The density is that at 20 °C throughout, so that a body keeps its mass.
[[nodiscard]] Result<HeatMaterial> heatMaterial(const Composition& composition,
                                                double freezesAt = usualFreezingPoint);

/// J/(kg·K) from the parts alone: 1424 c + 1549 p + 1675 f + 837 a + 4187 w, c with fibre.
/// Source: D. R. Heldman, R. P. Singh, Food Process Engineering, 2nd ed. (1981).
[[nodiscard]] Result<double> heatCapacityOfParts(const Composition& composition);

/// W/(m·K) of meat along the fibres' mean, 0.148 + 0.493 w, for parts of water w 0.60…0.80 at 0…60
/// °C; a failure outside. Source: V. E. Sweat, Modeling the thermal conductivity of meats, Trans.
/// ASAE 18 (1975), 564–568.
[[nodiscard]] Result<double> conductivityOfMeat(double water);

} // namespace suppertide::science
