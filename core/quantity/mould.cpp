#include "core/quantity/mould.h"

#include <fmt/format.h>

#include "core/base/contracts.h"

namespace suppertide {

namespace {

bool isPossibleSide(Length side)
{
    return side >= centimetres(1) && side <= centimetres(150);
}

struct PossibleMould
{
    bool operator()(const RoundMould& mould) const { return isPossibleSide(mould.across); }
    bool operator()(const RectangularMould& mould) const
    {
        return isPossibleSide(mould.length) && isPossibleSide(mould.width);
    }
};

/// In mm².
struct AreaOf
{
    Rational operator()(const RoundMould& mould) const
    {
        const Rational pi{355, 113};
        const Rational across{mould.across.smallest()};
        return pi * across * across / Rational{4};
    }
    Rational operator()(const RectangularMould& mould) const
    {
        return Rational{mould.length.smallest()} * Rational{mould.width.smallest()};
    }
};

std::string centimetreText(Length side)
{
    const std::int64_t millimetres = side.smallest();
    return millimetres % 10 == 0 ? fmt::format("{}", millimetres / 10)
                                 : fmt::format("{}.{}", millimetres / 10, millimetres % 10);
}

struct MouldName
{
    std::string operator()(const RoundMould& mould) const
    {
        return fmt::format("round {} cm", centimetreText(mould.across));
    }
    std::string operator()(const RectangularMould& mould) const
    {
        return mould.length == mould.width
                   ? fmt::format("square {} cm", centimetreText(mould.length))
                   : fmt::format("{} × {} cm", centimetreText(mould.length),
                                 centimetreText(mould.width));
    }
};

} // namespace

bool isPossible(const Mould& mould)
{
    return std::visit(PossibleMould{}, mould);
}

Rational areaRatio(const Mould& to, const Mould& from)
{
    expects(isPossible(to) && isPossible(from), "moulds with sides of 1 to 150 cm");
    return std::visit(AreaOf{}, to) / std::visit(AreaOf{}, from);
}

std::string nameOf(const Mould& mould)
{
    return std::visit(MouldName{}, mould);
}

} // namespace suppertide
