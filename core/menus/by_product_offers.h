// By-product offers: what a dish of the evening leaves (egg whites, bones, flavoured oil) that an
// ingredient line of another dish could take, though its recipe does not say so yet. The line is
// told of it by `withByProduct`; from then on the plan may tie the two steps, and what is taken
// need not be bought.
#pragma once

#include <string>
#include <vector>

#include "core/plan/formulation.h"

namespace suppertide::menus {

struct ByProductOffer
{
    std::string name; // of the by-product: "egg whites"
    Amount left;      // of it, at the evening's portions, by all that leave it
    std::string from; // recipe that leaves it
    RecipeId taker;   // recipe whose line could take it
    std::string takerName;
    LineId line;
    std::string ingredient; // of the line: "egg white"
    Amount wanted;          // by the line, at the evening's portions

    friend bool operator==(const ByProductOffer&, const ByProductOffer&) = default;
};

/// Of all that is cooked, in order of the menu. A line may take it if it names it (in the singular
/// or plural, whole words), or names the whole and asks for that part (egg, white), in a unit that
/// converts, and there is enough. Lines that name a by-product already are not offered another.
[[nodiscard]] std::vector<ByProductOffer> byProductOffers(const PlanInput& input);

/// The recipe with the line taking that by-product, wherever it stands in it.
[[nodiscard]] Recipe withByProduct(Recipe recipe, const LineId& line, const std::string& name);

} // namespace suppertide::menus
