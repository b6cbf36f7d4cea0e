// Rational: an exact fraction of 64-bit numbers in lowest terms. Recipe amounts and portions are
// kept in it, so that scaling by a and then by b equals scaling by ab; rounding happens once, for
// display. Arithmetic that would overflow throws ContractViolation.
#pragma once

#include <compare>
#include <cstdint>
#include <string>

namespace suppertide {

class Rational
{
public:
    constexpr Rational() = default;
    /// `denominator` must not be 0.
    explicit Rational(std::int64_t numerator, std::int64_t denominator = 1);

    [[nodiscard]] std::int64_t numerator() const noexcept { return numerator_; }
    [[nodiscard]] std::int64_t denominator() const noexcept { return denominator_; }
    [[nodiscard]] bool isWhole() const noexcept { return denominator_ == 1; }
    [[nodiscard]] double toDouble() const noexcept;
    /// The nearest whole number; a half goes to the even one.
    [[nodiscard]] std::int64_t rounded() const;
    /// The least whole number not below it.
    [[nodiscard]] std::int64_t ceiled() const;
    /// "3", "5/2".
    [[nodiscard]] std::string text() const;

    friend Rational operator+(const Rational& a, const Rational& b);
    friend Rational operator-(const Rational& a, const Rational& b);
    friend Rational operator*(const Rational& a, const Rational& b);
    /// `b` must not be 0.
    friend Rational operator/(const Rational& a, const Rational& b);
    friend bool operator==(const Rational&, const Rational&) = default;
    friend std::strong_ordering operator<=>(const Rational& a, const Rational& b);

private:
    std::int64_t numerator_ = 0;
    std::int64_t denominator_ = 1;
};

/// n·f rounded to a whole number, half to even: the one function by which integers are scaled.
[[nodiscard]] std::int64_t scaled(std::int64_t n, const Rational& factor);

} // namespace suppertide
