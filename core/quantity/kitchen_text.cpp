#include "core/quantity/kitchen_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "core/base/contracts.h"

namespace suppertide {

namespace {

/// Fractions whose denominators have grown by scaling are rounded first, to a millionth, so that
/// they fit 64 bits in any unit.
Rational tamed(const Rational& value)
{
    constexpr std::int64_t million = 1'000'000;
    return value.denominator() <= million
               ? value
               : Rational{(value * Rational{million}).rounded(), million};
}

/// `base` in whole `step`s, at least one of what is not nothing.
std::int64_t stepsIn(const Rational& base, const Rational& step)
{
    const std::int64_t count = (base / step).rounded();
    return base > Rational{0} ? std::max<std::int64_t>(1, count) : count;
}

Measured single(std::int64_t steps, const Rational& step, Unit unit)
{
    return {{{Rational{steps} * step / sizeOf(unit), unit}}, step};
}

/// In a larger and a smaller unit, of which `ratio` make one.
Measured twofold(const Rational& base, const Rational& step, Unit large, Unit small)
{
    const Rational inSmall = Rational{stepsIn(base, step)} * step / sizeOf(small);
    const Rational ratio = sizeOf(large) / sizeOf(small);
    const Rational quotient = inSmall / ratio;
    const std::int64_t whole = quotient.numerator() / quotient.denominator();
    const Rational rest = inSmall - Rational{whole} * ratio;
    Measured result{{}, step};
    if (whole > 0) {
        result.parts.push_back({Rational{whole}, large});
    }
    if (rest > Rational{0} || whole == 0) {
        result.parts.push_back({rest, small});
    }
    return result;
}

Measured onScale(const Rational& base, Unit small, Unit large)
{
    const Rational step = base < Rational{10}     ? Rational{1, 2}
                          : base < Rational{100}  ? Rational{1}
                          : base < Rational{1000} ? Rational{5}
                                                  : Rational{10};
    const std::int64_t steps = stepsIn(base, step);
    const bool isLarge = Rational{steps} * step >= Rational{1000};
    return single(steps, step, isLarge ? large : small);
}

/// There are spoons of 1/8, 1/4 and 1/2; 3/8, 5/8 and 7/8 are two of them, 3/4 is read as it is.
Measured inEighths(std::int64_t eighths, const Rational& step, Unit teaspoon)
{
    const std::int64_t even = eighths - eighths % 2;
    if (even == 0 || even == eighths) {
        return single(eighths, step, teaspoon);
    }
    return {{{Rational{even, 8}, teaspoon}, {Rational{1, 8}, teaspoon}}, step};
}

Measured inSpoons(const Rational& base, Unit teaspoon, Unit tablespoon)
{
    const Rational tsp = sizeOf(teaspoon);
    const Rational inTsp = base / tsp;
    if (inTsp < Rational{1}) {
        return inEighths(stepsIn(base, tsp / Rational{8}), tsp / Rational{8}, teaspoon);
    }
    const Rational step = inTsp < Rational{3} ? tsp / Rational{4} : tsp / Rational{2};
    return twofold(base, step, tablespoon, teaspoon);
}

/// Cups in thirds or quarters if one of them is within half a tablespoon, else with tablespoons.
Measured inCups(const Rational& base)
{
    const Rational cup = sizeOf(Unit::UsCup);
    const Rational step = sizeOf(Unit::UsTablespoon);
    const Rational inCup = base / cup;
    for (const std::int64_t parts : {4, 3}) {
        const Rational near{(inCup * Rational{parts}).rounded(), parts};
        const Rational off = (near - inCup) * cup;
        const Rational close = step / Rational{4};
        if (off <= close && Rational{0} - off <= close) {
            return {{{near, Unit::UsCup}}, step};
        }
    }
    const Rational rounded = Rational{stepsIn(base, step)} * step;
    const Rational quarter = cup / Rational{4};
    const Rational count = rounded / quarter;
    const Rational whole{count.numerator() / count.denominator()};
    const Rational rest = rounded - whole * quarter;
    Measured result{{{whole / Rational{4}, Unit::UsCup}}, step};
    if (rest > Rational{0}) {
        result.parts.push_back({rest / step, Unit::UsTablespoon});
    }
    return result;
}

Measured usVolume(const Rational& base)
{
    const Rational cup = sizeOf(Unit::UsCup);
    if (base < cup / Rational{4} - sizeOf(Unit::UsTeaspoon) / Rational{4}) {
        return inSpoons(base, Unit::UsTeaspoon, Unit::UsTablespoon);
    }
    if (base < cup * Rational{4} - sizeOf(Unit::UsTablespoon) / Rational{2}) {
        return inCups(base);
    }
    return twofold(base, cup / Rational{4}, Unit::UsQuart, Unit::UsCup);
}

Measured imperialVolume(const Rational& base)
{
    const Rational ounce = sizeOf(Unit::ImperialFluidOunce);
    if (base < Rational{45}) {
        return inSpoons(base, Unit::Teaspoon, Unit::Tablespoon);
    }
    const Rational inOunces = base / ounce;
    const Rational step = inOunces < Rational{5}    ? ounce / Rational{4}
                          : inOunces < Rational{20} ? ounce / Rational{2}
                                                    : ounce;
    return twofold(base, step, Unit::ImperialPint, Unit::ImperialFluidOunce);
}

Measured inOunces(const Rational& base)
{
    const Rational ounce = sizeOf(Unit::Ounce);
    const Rational ounces = base / ounce;
    if (ounces < Rational{1}) { // scales that show ounces show grams too
        return onScale(base, Unit::Gram, Unit::Kilogram);
    }
    const Rational step = ounces < Rational{16}   ? ounce / Rational{4}
                          : ounces < Rational{80} ? ounce / Rational{2}
                                                  : ounce;
    return twofold(base, step, Unit::Pound, Unit::Ounce);
}

Measured measuredVolume(const Amount& amount, const Rational& base, MeasureSystem system)
{
    switch (system) {
    case MeasureSystem::Metric:
        // What a recipe gives in spoons is measured in spoons, as long as those are few.
        return (amount.unit == Unit::Teaspoon || amount.unit == Unit::Tablespoon ||
                amount.unit == Unit::UsTeaspoon || amount.unit == Unit::UsTablespoon) &&
                       base < Rational{100}
                   ? inSpoons(base, Unit::Teaspoon, Unit::Tablespoon)
                   : onScale(base, Unit::Millilitre, Unit::Litre);
    case MeasureSystem::UsCustomary:
        return usVolume(base);
    case MeasureSystem::Imperial:
        return imperialVolume(base);
    }
    return {};
}

std::string number(const Rational& value)
{
    struct Glyph
    {
        int numerator;
        int denominator;
        std::string_view text;
    };
    static constexpr std::array<Glyph, 9> glyphs{{{1, 4, "¼"},
                                                  {1, 2, "½"},
                                                  {3, 4, "¾"},
                                                  {1, 3, "⅓"},
                                                  {2, 3, "⅔"},
                                                  {1, 8, "⅛"},
                                                  {3, 8, "⅜"},
                                                  {5, 8, "⅝"},
                                                  {7, 8, "⅞"}}};
    const std::int64_t whole = value.numerator() / value.denominator();
    const Rational rest = value - Rational{whole};
    const auto glyph = std::ranges::find_if(glyphs, [&rest](const Glyph& each) {
        return rest == Rational{each.numerator, each.denominator};
    });
    if (glyph != glyphs.end()) {
        return whole == 0 ? std::string(glyph->text) : fmt::format("{}{}", whole, glyph->text);
    }
    if (rest == Rational{0}) {
        return fmt::format("{}", whole);
    }
    const std::int64_t hundredths = (value * Rational{100}).rounded();
    std::string digits = fmt::format("{}.{:02}", hundredths / 100, hundredths % 100);
    digits.erase(digits.find_last_not_of('0') + 1);
    return digits;
}

/// "US cups" is "cups" to whoever measures in them.
std::string_view nameIn(Unit unit, const Rational& value)
{
    std::string_view name = value > Rational{1} ? pluralOf(unit) : symbolOf(unit);
    for (const std::string_view country : {"US ", "imperial "}) {
        if (name.starts_with(country)) {
            name.remove_prefix(country.size());
        }
    }
    return name;
}

bool isMetricOnScale(Unit unit)
{
    return unit == Unit::Gram || unit == Unit::Kilogram || unit == Unit::Millilitre ||
           unit == Unit::Litre || unit == Unit::Centimetre;
}

std::string numberOf(const Amount& part)
{
    if (!isMetricOnScale(part.unit) || part.value.isWhole()) {
        return number(part.value);
    }
    // "1.2 kg", "2.5 g": a scale has no fractions.
    const std::int64_t hundredths = (part.value * Rational{100}).rounded();
    std::string digits = fmt::format("{}.{:02}", hundredths / 100, hundredths % 100);
    digits.erase(digits.find_last_not_of('0') + 1);
    return digits;
}

std::string partText(const Amount& part)
{
    if (part.unit == Unit::Piece) {
        return numberOf(part);
    }
    if (dimensionOf(part.unit) == Dimension::Inexact && part.value <= Rational{1}) {
        return fmt::format("a {}", symbolOf(part.unit));
    }
    return fmt::format("{} {}", numberOf(part), nameIn(part.unit, part.value));
}

std::string textOf(const Measured& measured)
{
    std::string text = partText(measured.parts.front());
    if (measured.parts.size() > 1) {
        const Unit large = measured.parts.front().unit;
        const bool isOneMeasure = large == Unit::Pound || large == Unit::ImperialPint;
        text += fmt::format("{}{}", isOneMeasure ? " " : " + ", partText(measured.parts[1]));
    }
    return text;
}

} // namespace

std::string_view nameOf(MeasureSystem system)
{
    switch (system) {
    case MeasureSystem::Metric:
        return "metric";
    case MeasureSystem::UsCustomary:
        return "US customary";
    case MeasureSystem::Imperial:
        return "imperial";
    }
    return "";
}

std::optional<MeasureSystem> findMeasureSystem(std::string_view name)
{
    const auto found = std::ranges::find_if(
        allMeasureSystems, [name](MeasureSystem system) { return nameOf(system) == name; });
    return found == allMeasureSystems.end() ? std::nullopt : std::optional{*found};
}

Measured measuredOut(const Amount& amount, MeasureSystem system)
{
    expects(!amount.upTo && amount.unit != Unit::ToTaste, "one end of an amount");
    const Rational base = tamed(amount.value) * sizeOf(amount.unit);
    switch (dimensionOf(amount.unit)) {
    case Dimension::Mass:
        return system == MeasureSystem::Metric ? onScale(base, Unit::Gram, Unit::Kilogram)
                                               : inOunces(base);
    case Dimension::Volume:
        return measuredVolume(amount, base, system);
    case Dimension::Distance: {
        const bool isMetric = system == MeasureSystem::Metric;
        const Rational step = isMetric ? Rational{1} : sizeOf(Unit::Inch) / Rational{4};
        return single(stepsIn(base, step), step, isMetric ? Unit::Centimetre : Unit::Inch);
    }
    case Dimension::Count:
    case Dimension::Inexact:
    case Dimension::ToTaste:
        break;
    }
    const Rational quarter{1, 4};
    return {{{Rational{stepsIn(base, quarter)} * quarter, amount.unit}}, quarter};
}

std::string kitchenText(const Amount& amount, MeasureSystem system)
{
    if (amount.unit == Unit::ToTaste) {
        return "to taste";
    }
    const Measured low = measuredOut({amount.value, amount.unit}, system);
    const Measured high = measuredOut(amount.atMost(), system);
    const std::string highText = textOf(high);
    if (low.parts == high.parts) {
        return highText;
    }
    const bool isOneUnit = low.parts.size() == 1 && high.parts.size() == 1 &&
                           low.parts.front().unit == high.parts.front().unit;
    return isOneUnit ? fmt::format("{}–{}", numberOf(low.parts.front()), highText)
                     : fmt::format("{} – {}", textOf(low), highText);
}

std::string kitchenText(const Amount& amount, const std::optional<MeasureSystem>& measures)
{
    return measures ? kitchenText(amount, *measures) : toText(amount);
}

} // namespace suppertide
