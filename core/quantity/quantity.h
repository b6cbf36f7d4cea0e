// Strong types for what a kitchen measures. Each is an integer of a small unit, so that equality
// is exact and files are stable; constructors are named; nothing converts by itself.
// Grams and millilitres meet only through a density (core/food).
#pragma once

#include <compare>
#include <cstdint>

#include "core/quantity/rational.h"

namespace suppertide {

/// A temperature, in tenths of a degree Celsius. Two can be subtracted, not added.
class Celsius;

/// A difference between two temperatures, in tenths of a degree Celsius.
class TemperatureDelta
{
public:
    constexpr TemperatureDelta() = default;
    static constexpr TemperatureDelta degrees(int value) { return TemperatureDelta{value * 10}; }
    static constexpr TemperatureDelta tenths(int value) { return TemperatureDelta{value}; }
    [[nodiscard]] constexpr int tenths() const noexcept { return tenths_; }
    friend constexpr auto operator<=>(const TemperatureDelta&, const TemperatureDelta&) = default;

private:
    constexpr explicit TemperatureDelta(int tenths) : tenths_(tenths) {}
    int tenths_ = 0;
};

class Celsius
{
public:
    constexpr Celsius() = default;
    static constexpr Celsius degrees(int value) { return Celsius{value * 10}; }
    static constexpr Celsius tenths(int value) { return Celsius{value}; }
    [[nodiscard]] constexpr int tenths() const noexcept { return tenths_; }
    /// The nearest whole degree; a half goes away from zero, as a cook reads it.
    [[nodiscard]] constexpr int wholeDegrees() const noexcept
    {
        return (tenths_ >= 0 ? tenths_ + 5 : tenths_ - 5) / 10;
    }
    friend constexpr auto operator<=>(const Celsius&, const Celsius&) = default;
    friend constexpr TemperatureDelta operator-(Celsius a, Celsius b)
    {
        return TemperatureDelta::tenths(a.tenths_ - b.tenths_);
    }
    friend constexpr Celsius operator+(Celsius a, TemperatureDelta b)
    {
        return Celsius{a.tenths_ + b.tenths()};
    }

private:
    constexpr explicit Celsius(int tenths) : tenths_(tenths) {}
    int tenths_ = 0;
};

namespace detail {

/// A count of a small unit, told apart by `Tag`.
template <typename Tag>
class Measure
{
public:
    constexpr Measure() = default;
    static constexpr Measure ofSmallest(std::int64_t count) { return Measure{count}; }
    [[nodiscard]] constexpr std::int64_t smallest() const noexcept { return count_; }
    [[nodiscard]] constexpr bool isZero() const noexcept { return count_ == 0; }

    friend constexpr auto operator<=>(const Measure&, const Measure&) = default;
    friend constexpr Measure operator+(Measure a, Measure b)
    {
        return Measure{a.count_ + b.count_};
    }
    friend constexpr Measure operator-(Measure a, Measure b)
    {
        return Measure{a.count_ - b.count_};
    }
    constexpr Measure& operator+=(Measure other)
    {
        count_ += other.count_;
        return *this;
    }
    /// Rounded half to even.
    friend Measure operator*(Measure a, const Rational& factor)
    {
        return Measure{scaled(a.count_, factor)};
    }

private:
    constexpr explicit Measure(std::int64_t count) : count_(count) {}
    std::int64_t count_ = 0;
};

} // namespace detail

/// Mass, in milligrams.
using Grams = detail::Measure<struct GramsTag>;
/// Volume of food, in microlitres.
using Millilitres = detail::Measure<struct MillilitresTag>;
/// Power of a burner, in watts.
using Power = detail::Measure<struct PowerTag>;
/// A diameter or edge, in millimetres.
using Length = detail::Measure<struct LengthTag>;
/// Room in a cold place or vessel, in tenths of a litre (coarser than food: it holds boxes).
using Litres = detail::Measure<struct LitresTag>;

constexpr Grams grams(std::int64_t g)
{
    return Grams::ofSmallest(g * 1000);
}
constexpr Millilitres millilitres(std::int64_t ml)
{
    return Millilitres::ofSmallest(ml * 1000);
}
constexpr Power watts(std::int64_t w)
{
    return Power::ofSmallest(w);
}
constexpr Length centimetres(std::int64_t cm)
{
    return Length::ofSmallest(cm * 10);
}
constexpr Length millimetres(std::int64_t mm)
{
    return Length::ofSmallest(mm);
}
constexpr Litres litres(std::int64_t l)
{
    return Litres::ofSmallest(l * 10);
}
constexpr Litres decilitres(std::int64_t tenths)
{
    return Litres::ofSmallest(tenths);
}

/// How much of one cook a step takes, 0…100 percent.
class Attention
{
public:
    constexpr Attention() = default;
    static constexpr Attention percent(int value) { return Attention{value}; }
    [[nodiscard]] constexpr int percent() const noexcept { return percent_; }
    friend constexpr auto operator<=>(const Attention&, const Attention&) = default;

private:
    constexpr explicit Attention(int percent) : percent_(percent) {}
    int percent_ = 0;
};

/// The named grades that a step offers (formulate rule 1).
inline constexpr Attention undivided = Attention::percent(100);
inline constexpr Attention handsOn = Attention::percent(80);
inline constexpr Attention keepAnEye = Attention::percent(10);
inline constexpr Attention unattended = Attention::percent(0);

/// Portions of a dish: exact, since a child may have half of one.
using Portions = Rational;

inline namespace literals {
constexpr Celsius operator""_degC(unsigned long long value)
{
    return Celsius::degrees(static_cast<int>(value));
}
constexpr Grams operator""_g(unsigned long long value)
{
    return grams(static_cast<std::int64_t>(value));
}
constexpr Millilitres operator""_ml(unsigned long long value)
{
    return millilitres(static_cast<std::int64_t>(value));
}
constexpr Litres operator""_l(unsigned long long value)
{
    return litres(static_cast<std::int64_t>(value));
}
constexpr Length operator""_cm(unsigned long long value)
{
    return centimetres(static_cast<std::int64_t>(value));
}
} // namespace literals

} // namespace suppertide
