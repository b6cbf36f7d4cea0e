// PublishedTemperature: a limit in the unit in which its source prints it, and comparisons in that
// unit. Sources round differently (165 °F is printed as 74 °C, and is 73.9): a limit is never
// converted before it is compared.
#pragma once

namespace suppertide::safety {

enum class TemperatureUnit
{
    Celsius,
    Fahrenheit
};

/// °F = °C × 9/5 + 32, exact.
[[nodiscard]] constexpr double fahrenheitOf(double celsius)
{
    return celsius * 9.0 / 5.0 + 32.0;
}
[[nodiscard]] constexpr double celsiusOf(double fahrenheit)
{
    return (fahrenheit - 32.0) * 5.0 / 9.0;
}

/// How far, in either unit, a temperature may lie off a limit and still be taken to be on it: more
/// than what conversions in double lose, less than what any thermometer shows.
inline constexpr double onTheLimit = 1e-6;

struct PublishedTemperature
{
    double value = 0;
    TemperatureUnit unit = TemperatureUnit::Celsius;

    [[nodiscard]] constexpr double celsius() const
    {
        return unit == TemperatureUnit::Celsius ? value : celsiusOf(value);
    }
    /// What a thermometer in the source's unit shows for `celsius`.
    [[nodiscard]] constexpr double reading(double celsius) const
    {
        return unit == TemperatureUnit::Celsius ? celsius : fahrenheitOf(celsius);
    }
    [[nodiscard]] constexpr bool isReachedBy(double celsius) const
    {
        return reading(celsius) >= value - onTheLimit;
    }
    [[nodiscard]] constexpr bool isKeptUnderBy(double celsius) const
    {
        return reading(celsius) <= value + onTheLimit;
    }
    friend constexpr bool operator==(const PublishedTemperature&,
                                     const PublishedTemperature&) = default;
};

} // namespace suppertide::safety
