#include "core/menus/by_product_offers.h"

#include <algorithm>
#include <cctype>
#include <map>
#include <set>

#include "core/plan/making.h"

namespace suppertide::menus {

namespace {

/// Lower-case words, a plural s cut off.
std::vector<std::string> wordsOf(std::string_view text)
{
    std::vector<std::string> words(1);
    for (const char each : text) {
        const auto code = static_cast<unsigned char>(each);
        if (code < 0x80 && std::isalnum(code) == 0) {
            words.emplace_back();
        } else {
            words.back() += code < 0x80 ? static_cast<char>(std::tolower(code)) : each;
        }
    }
    std::erase(words, std::string());
    for (std::string& word : words) {
        const bool isPlural = word.size() > 2 && word.ends_with('s') && !word.ends_with("ss");
        word.resize(word.size() - (isPlural ? 1 : 0));
    }
    return words;
}

std::string_view partWord(IngredientPart part)
{
    switch (part) {
    case IngredientPart::Zest:
        return "zest";
    case IngredientPart::Juice:
        return "juice";
    case IngredientPart::Yolk:
        return "yolk";
    case IngredientPart::White:
        return "white";
    case IngredientPart::Leaves:
        return "leaves";
    case IngredientPart::Stalks:
        return "stalk";
    case IngredientPart::Bones:
        return "bone";
    case IngredientPart::Peel:
        return "peel";
    case IngredientPart::Seeds:
        return "seed";
    case IngredientPart::Whole:
    case IngredientPart::Meat:
        break;
    }
    return {};
}

/// Whether each word of the by-product stands in the line's ingredient, or is the part it takes.
bool couldTake(const IngredientLine& line, const std::string& product)
{
    std::vector<std::string> offered = wordsOf(line.ingredient);
    for (std::string& word : wordsOf(partWord(line.part))) {
        offered.push_back(std::move(word));
    }
    const std::vector<std::string> wanted = wordsOf(product);
    const bool hasAll =
        !wanted.empty() && std::ranges::all_of(wanted, [&offered](const std::string& word) {
            return std::ranges::find(offered, word) != offered.end();
        });
    // Yolks are not for a line of whole eggs, nor whole eggs for one of yolks.
    const bool isOfPart =
        line.part == IngredientPart::Whole || line.part == IngredientPart::Meat ||
        std::ranges::find(wanted, wordsOf(partWord(line.part)).front()) != wanted.end();
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
        return amountFor(line, *making.recipe, all, all);
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
