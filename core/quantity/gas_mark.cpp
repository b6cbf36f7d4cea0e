#include "core/quantity/gas_mark.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>

namespace suppertide {

namespace {

struct Dial
{
    int quarters; // of the mark
    int least;    // °C
    int most;
};

constexpr std::array dials{
    Dial{1, 110, 110},  Dial{2, 120, 130},  Dial{4, 140, 140},  Dial{8, 150, 150},
    Dial{12, 160, 170}, Dial{16, 180, 180}, Dial{20, 190, 190}, Dial{24, 200, 210},
    Dial{28, 220, 220}, Dial{32, 230, 230}, Dial{36, 240, 250},
};

/// Tenths of a degree between a temperature and the dial's settings.
int distance(const Dial& dial, Celsius temperature)
{
    return std::max(
        {0, dial.least * 10 - temperature.tenths(), temperature.tenths() - dial.most * 10});
}

} // namespace

std::optional<Celsius> dialOfGasMark(const Rational& mark)
{
    const auto dial = std::ranges::find_if(dials, [&mark](const Dial& each) {
        return Rational{each.quarters, 4} == mark;
    });
    return dial == dials.end() ? std::nullopt : std::optional{Celsius::degrees(dial->least)};
}

std::optional<Rational> gasMarkNear(Celsius temperature)
{
    if (temperature < 95_degC || temperature > 260_degC) {
        return std::nullopt;
    }
    const auto nearest = std::ranges::min_element(
        dials, {}, [temperature](const Dial& dial) { return distance(dial, temperature); });
    return Rational{nearest->quarters, 4};
}

std::string gasMarkText(const Rational& mark)
{
    return fmt::format("gas mark {}", mark == Rational{1, 4}   ? "¼"
                                      : mark == Rational{1, 2} ? "½"
                                                               : mark.text());
}

} // namespace suppertide
