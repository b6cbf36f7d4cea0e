// Water: air pressure by altitude, boiling point, heat of vaporisation, density, specific heat.
// Used by boiling, reduction and syrups.
#pragma once

#include "core/base/result.h"

namespace suppertide::science {

/// kPa of the standard atmosphere at −400…5000 m; a failure outside: higher kitchens are none.
/// p = 101.325 (1 − 2.25577e-5 h)^5.25588. The weather of a day moves it by 3 %.
/// Source: International Standard Atmosphere, ISO 2533:1975.
[[nodiscard]] Result<double> pressureAtAltitude(double metres);

/// kPa of saturated steam at 0…200 °C; a failure outside.
/// Source: IAPWS Industrial Formulation 1997, region 4, equation 30.
[[nodiscard]] Result<double> saturationPressure(double celsius);

/// °C at which water boils under 0.62…1500 kPa; a failure outside.
/// Source: IAPWS Industrial Formulation 1997, region 4, equation 31.
[[nodiscard]] Result<double> boilingPoint(double kilopascals);

/// °C at which water boils at an altitude; −400…5000 m.
[[nodiscard]] Result<double> boilingPointAtAltitude(double metres);

/// kg/m³ of liquid water at 0…200 °C (at its own steam pressure); a failure outside.
/// Source: W. Wagner, A. Pruß, International equations for the saturation properties of ordinary
/// water substance, J. Phys. Chem. Ref. Data 22 (1993), 783–787.
[[nodiscard]] Result<double> waterDensity(double celsius);

/// J/kg to turn boiling water into steam at 0.01…200 °C; a failure outside. By Clapeyron's equation
/// from the steam pressure and the densities of the sources above; within 0.25 kJ/kg of the steam
/// tables to 100 °C.
[[nodiscard]] Result<double> heatOfVaporisation(double celsius);

/// J/(kg·K) of liquid water at 0…100 °C; a failure outside. Straight between tabulated values.
/// Source: W. Wagner, A. Pruß, IAPWS-95, J. Phys. Chem. Ref. Data 31 (2002), 387–535, at 101.325
/// kPa (from memory).
[[nodiscard]] Result<double> waterHeatCapacity(double celsius);

/// J/kg that water takes up from `from` to `to`, 0…100 °C.
[[nodiscard]] Result<double> heatToWarmWater(double from, double to);

} // namespace suppertide::science
