#include "core/menus/by_product_offers.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/food/name_words.h"
#include "core/plan/making.h"

namespace suppertide::menus {

namespace {

/// Whether each word of the by-product stands in the line's ingredient, or is the part it takes.
bool couldTake(const IngredientLine& line, const std::string& product)
{
    const bool isOfPartOnly =
        line.part != IngredientPart::Whole && line.part != IngredientPart::Meat;
    const std::string part = isOfPartOnly ? nameKey(nameOf(line.part)) : std::string();
    std::vector<std::string> offered = nameWords(line.ingredient);
    if (isOfPartOnly) {
        offered.push_back(part);
    }
    const std::vector<std::string> wanted = nameWords(product);
    const bool hasAll =
        !wanted.empty() && std::ranges::all_of(wanted, [&offered](const std::string& word) {
            return std::ranges::find(offered, word) != offered.end();
        });
    // Yolks are not for a line of whole eggs, nor whole eggs for one of yolks.
    const bool isOfPart = !isOfPartOnly || std::ranges::find(wanted, part) != wanted.end();
    return hasAll && isOfPart;
}

struct Leaving
{
    std::size_t making = 0;
    Amount amount;
};

using Leavings = std::map<std::string, std::vector<Leaving>>;

/// What methods alone leave is not counted upon.
Leavings leavingsOf(const std::vector<Making>& makings)
{
    Leavings leavings;
    for (std::size_t i = 0; i < makings.size(); ++i) {
        const Making& making = makings[i];
        for (const Batch& batch : making.batches) {
            const MadeStep& made = making.steps[batch.step];
            if (made.method || making.onlyWith) {
                continue;
            }
            for (const ByProduct& product : made.step.leaves) {
                leavings[product.name].push_back(
                    {i, scaled(product.amount, batch.share.total() / making.recipe->portions)});
            }
        }
    }
    return leavings;
}

class OfferFinder
{
public:
    explicit OfferFinder(const PlanInput& input)
        : makings_(makingsOf(input)), leavings_(leavingsOf(makings_))
    {
        takeWhatIsNamed();
    }

    std::vector<ByProductOffer> find()
    {
        for (std::size_t i = 0; i < makings_.size(); ++i) {
            for (const MadeStep& made : makings_[i].steps) {
                for (const IngredientLine& line : made.lines) {
                    if (!line.byProduct && !line.preparation) {
                        offerTo(i, made, line);
                    }
                }
            }
        }
        return std::move(offers_);
    }

private:
    [[nodiscard]] Amount wanted(const Making& making, const MadeStep& made,
                                const IngredientLine& line) const
    {
        const Portions all = making.shareOf(made.variants).total();
        return amountFor(line, making, all, all);
    }

    /// What lines name already is gone.
    void takeWhatIsNamed()
    {
        for (std::size_t i = 0; i < makings_.size(); ++i) {
            for (const MadeStep& made : makings_[i].steps) {
                for (const IngredientLine& line : made.lines) {
                    const auto there =
                        line.byProduct ? leavings_.find(*line.byProduct) : leavings_.end();
                    if (there != leavings_.end()) {
                        takeFrom(there->second, i, wanted(makings_[i], made, line));
                    }
                }
            }
        }
    }

    /// The first that has enough of it, of another dish.
    Leaving* takeFrom(std::vector<Leaving>& leavings, std::size_t making, const Amount& amount)
    {
        const auto from = std::ranges::find_if(leavings, [&](const Leaving& leaving) {
            return leaving.making != making && leaving.amount.unit == amount.unit &&
                   amount.value > Rational{0} && leaving.amount.value >= amount.value;
        });
        if (from == leavings.end()) {
            return nullptr;
        }
        from->amount.value = from->amount.value - amount.value;
        return &*from;
    }

    void offerTo(std::size_t index, const MadeStep& made, const IngredientLine& line)
    {
        const Making& making = makings_[index];
        const auto key = std::pair{making.recipe->id, line.id};
        if (offered_.contains(key)) {
            return;
        }
        const Amount amount = wanted(making, made, line);
        for (auto& [name, leavings] : leavings_) {
            if (!couldTake(line, name)) {
                continue;
            }
            const Leaving* from = takeFrom(leavings, index, amount);
            if (from != nullptr) {
                Amount left = from->amount;
                left.value = left.value + amount.value;
                offers_.push_back({name, left, makings_[from->making].recipe->name,
                                   making.recipe->id, making.recipe->name, line.id, line.ingredient,
                                   amount});
                offered_.insert(key);
                return;
            }
        }
    }

    std::vector<Making> makings_;
    Leavings leavings_;
    std::set<std::pair<RecipeId, LineId>> offered_;
    std::vector<ByProductOffer> offers_;
};

void tell(RecipePart& part, const LineId& line, const std::string& name)
{
    for (IngredientLine& each : part.lines) {
        if (each.id == line) {
            each.byProduct = name;
        }
    }
}

} // namespace

std::vector<ByProductOffer> byProductOffers(const PlanInput& input)
{
    return OfferFinder(input).find();
}

Recipe withByProduct(Recipe recipe, const LineId& line, const std::string& name)
{
    tell(recipe.common, line, name);
    for (Variant& variant : recipe.variants) {
        tell(variant.adds, line, name);
    }
    for (MethodChoice& choice : recipe.methods) {
        for (Method& method : choice.methods) {
            tell(method.part, line, name);
        }
    }
    return recipe;
}

} // namespace suppertide::menus
