// Literal: "view ≤ bound" of an integer variable. A variable x has two signed views, +x and −x, so
// x ≥ 3 is the literal "−x ≤ −3", and the negation of a literal is one of the other view. Any
// minute of a week is a literal at no cost; a Boolean is a variable of 0…1.
// Source: O. Ohrimenko, P. Stuckey, M. Codish, Propagation via lazy clause generation, Constraints
// 14 (2009), for the literals; the two views are the usual device to say everything once.
#pragma once

#include <compare>
#include <cstdint>
#include <vector>

namespace suppertide::engine {

using Bound = std::int32_t;
using View = std::uint32_t; // 2 × variable, + 1 for the negated one

struct Variable
{
    std::uint32_t index = 0;

    [[nodiscard]] View plus() const { return 2 * index; }
    [[nodiscard]] View minus() const { return 2 * index + 1; }
    friend auto operator<=>(const Variable&, const Variable&) = default;
};

[[nodiscard]] constexpr View opposite(View view)
{
    return view ^ 1U;
}

/// view ≤ bound.
struct Literal
{
    View view = 0;
    Bound bound = 0;

    [[nodiscard]] Variable variable() const { return {view / 2}; }
    [[nodiscard]] constexpr Literal operator~() const { return {opposite(view), -bound - 1}; }
    friend auto operator<=>(const Literal&, const Literal&) = default;
};

using Literals = std::vector<Literal>;

[[nodiscard]] inline Literal atMost(Variable x, Bound value)
{
    return {x.plus(), value};
}
[[nodiscard]] inline Literal atLeast(Variable x, Bound value)
{
    return {x.minus(), -value};
}
[[nodiscard]] inline Literal isTrue(Variable boolean)
{
    return atLeast(boolean, 1);
}
[[nodiscard]] inline Literal isFalse(Variable boolean)
{
    return atMost(boolean, 0);
}

/// A variable plus a constant: the start or the end of a task, or a constant of one that is fixed.
struct Term
{
    Variable variable;
    Bound plus = 0;

    friend bool operator==(const Term&, const Term&) = default;
};

[[nodiscard]] inline Literal atMost(const Term& term, Bound value)
{
    return atMost(term.variable, value - term.plus);
}
[[nodiscard]] inline Literal atLeast(const Term& term, Bound value)
{
    return atLeast(term.variable, value - term.plus);
}

} // namespace suppertide::engine
