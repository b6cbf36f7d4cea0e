#include "core/quantity/rational.h"

#include <limits>
#include <numeric>

#include "core/base/contracts.h"

namespace suppertide {

namespace {

// __int128 is wide enough for any product of two 64-bit numbers and their sum.
__extension__ using Wide = __int128;

std::int64_t narrow(Wide value)
{
    expects(value >= std::numeric_limits<std::int64_t>::min() + 1 &&
                value <= std::numeric_limits<std::int64_t>::max(),
            "a fraction of numbers that fit 64 bits");
    return static_cast<std::int64_t>(value);
}

Wide gcd(Wide a, Wide b)
{
    a = a < 0 ? -a : a;
    b = b < 0 ? -b : b;
    while (b != 0) {
        const Wide rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

Rational make(Wide numerator, Wide denominator)
{
    const Wide divisor = gcd(numerator, denominator);
    if (divisor > 1) {
        numerator /= divisor;
        denominator /= divisor;
    }
    return Rational{narrow(numerator), narrow(denominator)};
}

std::int64_t floorDiv(std::int64_t a, std::int64_t b)
{
    const std::int64_t quotient = a / b;
    return a % b < 0 ? quotient - 1 : quotient;
}

} // namespace

Rational::Rational(std::int64_t numerator, std::int64_t denominator)
{
    expects(denominator != 0, "a denominator other than 0");
    Wide n = numerator;
    Wide d = denominator;
    if (d < 0) {
        n = -n;
        d = -d;
    }
    const Wide divisor = gcd(n, d);
    numerator_ = narrow(divisor > 1 ? n / divisor : n);
    denominator_ = narrow(divisor > 1 ? d / divisor : d);
}

double Rational::toDouble() const noexcept
{
    return static_cast<double>(numerator_) / static_cast<double>(denominator_);
}

std::int64_t Rational::rounded() const
{
    const std::int64_t below = floorDiv(numerator_, denominator_);
    const Wide twice = 2 * (Wide{numerator_} - Wide{below} * denominator_);
    if (twice < denominator_) {
        return below;
    }
    if (twice > denominator_) {
        return below + 1;
    }
    return below % 2 == 0 ? below : below + 1;
}

std::int64_t Rational::ceiled() const
{
    return -floorDiv(-numerator_, denominator_);
}

std::string Rational::text() const
{
    return isWhole() ? std::to_string(numerator_)
                     : std::to_string(numerator_) + "/" + std::to_string(denominator_);
}

Rational operator+(const Rational& a, const Rational& b)
{
    return make(Wide{a.numerator_} * b.denominator_ + Wide{b.numerator_} * a.denominator_,
                Wide{a.denominator_} * b.denominator_);
}

Rational operator-(const Rational& a, const Rational& b)
{
    return make(Wide{a.numerator_} * b.denominator_ - Wide{b.numerator_} * a.denominator_,
                Wide{a.denominator_} * b.denominator_);
}

Rational operator*(const Rational& a, const Rational& b)
{
    return make(Wide{a.numerator_} * b.numerator_, Wide{a.denominator_} * b.denominator_);
}

Rational operator/(const Rational& a, const Rational& b)
{
    expects(b.numerator_ != 0, "a divisor other than 0");
    Wide n = Wide{a.numerator_} * b.denominator_;
    Wide d = Wide{a.denominator_} * b.numerator_;
    if (d < 0) {
        n = -n;
        d = -d;
    }
    return make(n, d);
}

std::strong_ordering operator<=>(const Rational& a, const Rational& b)
{
    const Wide left = Wide{a.numerator_} * b.denominator_;
    const Wide right = Wide{b.numerator_} * a.denominator_;
    return left < right   ? std::strong_ordering::less
           : left > right ? std::strong_ordering::greater
                          : std::strong_ordering::equal;
}

std::int64_t scaled(std::int64_t n, const Rational& factor)
{
    return (Rational{n} * factor).rounded();
}

} // namespace suppertide
