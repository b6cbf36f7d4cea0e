#include "core/science/valid_range.h"

#include <fmt/format.h>

#include <cmath>

namespace suppertide::science {

std::string plainNumber(double value)
{
    if (!std::isfinite(value)) {
        return "not a number";
    }
    const std::string digits = std::abs(value) >= 1000.0 ? fmt::format("{:.0f}", std::abs(value))
                                                         : fmt::format("{:.4g}", std::abs(value));
    return value < 0.0 ? "−" + digits : digits;
}

std::optional<Failure> outsideRange(std::initializer_list<Bounded> numbers)
{
    for (const Bounded& number : numbers) {
        // Written so that what is not a number lies outside too.
        if (number.value >= number.least && number.value <= number.most) {
            continue;
        }
        const std::string unit = number.unit.empty() ? "" : fmt::format(" {}", number.unit);
        return cannotCompute(fmt::format(
            "{} is {}{}, but this can be computed only from {}{} to {}{}. Enter a value within.",
            number.what, plainNumber(number.value), unit, plainNumber(number.least), unit,
            plainNumber(number.most), unit));
    }
    return std::nullopt;
}

Failure cannotCompute(std::string sentences, CallSite where)
{
    return Failure{FailureKind::BadInput, std::move(sentences), {}, where};
}

} // namespace suppertide::science
