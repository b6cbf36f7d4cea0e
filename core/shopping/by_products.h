// ByProducts: who takes what others leave, in the order in which core/plan ties them. A part of a
// whole that another dish opens (the yolks of eggs whose whites are wanted) is no gift: the whole
// is bought for both, and the need is told in parts of it. Used by core/shopping alone.
#pragma once

#include "core/shopping/shopping_need.h"

namespace suppertide::shopping {

class ByProducts
{
public:
    /// `makings` must outlive it.
    ByProducts(const std::vector<Making>& makings, const Layout& layout);

    /// Marks the need if another making leaves enough of what the line may be taken from.
    void offer(std::size_t making, const IngredientLine& line, ShoppingNeed& need);
    /// What is left over, but for parts of wholes.
    [[nodiscard]] std::vector<SpareByProduct> spare() const;

private:
    struct Left
    {
        std::size_t making = 0;
        std::string name;
        Amount amount;
        std::string ingredient; // of which it is a part; empty: of none that is known
        IngredientPart part = IngredientPart::Whole;
    };

    [[nodiscard]] bool isDeclined(std::size_t making, const LineId& line) const;

    const std::vector<Making>& makings_;
    const Layout& layout_;
    std::vector<Left> left_;
};

} // namespace suppertide::shopping
