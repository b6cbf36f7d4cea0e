// How much of a shared preparation its users need, and who uses which of its portions.
#include <algorithm>
#include <set>

#include "core/plan/making.h"

namespace suppertide {

namespace {

/// `wanted` over `yield`, which are both above 0 or absent: their measures do not compare. A
/// preparation measured by volume and used by weight counts as water does, 1 g a ml (a sauce or a
/// custard is near enough for a number of portions; common practice). Of a range, as much as may
/// be needed.
std::optional<Rational> shareOf(const Amount& wanted, const Amount& yield)
{
    const auto isWeighed = [](const Amount& amount) {
        const Dimension dimension = dimensionOf(amount.unit);
        return dimension == Dimension::Mass || dimension == Dimension::Volume;
    };
    const bool isComparable = wanted.unit == yield.unit || (isWeighed(wanted) && isWeighed(yield));
    const Dimension dimension = dimensionOf(wanted.unit);
    if (!isComparable || dimension == Dimension::Inexact || dimension == Dimension::ToTaste ||
        yield.value <= Rational{0}) {
        return std::nullopt;
    }
    const Rational share = wanted.most() / yield.value;
    if (wanted.unit == yield.unit) {
        return share;
    }
    return share * sizeOf(wanted.unit) / sizeOf(yield.unit);
}

/// How many portions of the preparation make up `wanted`; absent if its yield cannot say.
std::optional<Portions> portionsFor(const Amount& wanted, const Recipe& preparation)
{
    if (!preparation.yields) {
        return std::nullopt;
    }
    const auto share = shareOf(wanted, *preparation.yields);
    if (!share) {
        return std::nullopt;
    }
    const Portions portions = preparation.portions * *share;
    // A US cup of what yields a litre is no number that arithmetic stays short with.
    constexpr std::int64_t finest = 10'000;
    return portions.denominator() <= finest
               ? portions
               : Portions{(portions * Rational{finest}).ceiled(), finest};
}

/// A use of the preparation by a batch, and how many of its portions that takes.
struct Need
{
    std::size_t making = 0;
    std::size_t batch = 0;
    Portions portions;
    std::optional<MethodKey> method;
};

/// Whether an earlier step of one of the same variants takes the line already.
bool isTakenBefore(const Making& user, std::size_t step, const LineId& line)
{
    for (std::size_t earlier = 0; earlier < step; ++earlier) {
        const MadeStep& made = user.steps[earlier];
        const bool shares = std::ranges::any_of(made.variants, [&](std::size_t variant) {
            return std::ranges::find(user.steps[step].variants, variant) !=
                   user.steps[step].variants.end();
        });
        if (shares &&
            std::ranges::find(made.lines, line, &IngredientLine::id) != made.lines.end()) {
            return true;
        }
    }
    return false;
}

class NeedCollector
{
public:
    NeedCollector(const Recipe& preparation, const std::vector<Making>& makings)
        : preparation_(preparation), makings_(makings)
    {}

    std::vector<Need> collect()
    {
        for (std::size_t index = 0; index < makings_.size(); ++index) {
            for (std::size_t step = 0; step < makings_[index].steps.size(); ++step) {
                for (const IngredientLine& line : makings_[index].steps[step].lines) {
                    add(index, step, line);
                }
            }
            addStrays(index);
        }
        return std::move(needs_);
    }

private:
    void add(std::size_t index, std::size_t step, const IngredientLine& line)
    {
        if (line.preparation != preparation_.id || isTakenBefore(makings_[index], step, line.id)) {
            return;
        }
        const Making& user = makings_[index];
        const MadeStep& made = user.steps[step];
        const Portions all = user.shareOf(made.variants).total();
        for (const std::size_t batch : made.batches) {
            const Portions portions = user.batches[batch].share.total();
            const Amount amount = amountFor(line, user, portions, all);
            const Portions need = portionsFor(amount, preparation_).value_or(portions);
            needs_.push_back({index, batch, need, made.method});
        }
    }

    /// A line that no step takes is needed from the first step of its variant on.
    void addStrays(std::size_t index)
    {
        const Making& user = makings_[index];
        for (std::size_t variant = 0; variant < user.variants.size(); ++variant) {
            for (const IngredientLine& line : linesOf(user.variants[variant])) {
                const bool isTaken = std::ranges::any_of(user.steps, [&](const MadeStep& made) {
                    return std::ranges::find(made.lines, line.id, &IngredientLine::id) !=
                           made.lines.end();
                });
                const auto first = std::ranges::find_if(user.steps, [&](const MadeStep& made) {
                    return std::ranges::find(made.variants, variant) != made.variants.end();
                });
                if (!isTaken && first != user.steps.end() && first->variants.front() == variant) {
                    add(index, static_cast<std::size_t>(first - user.steps.begin()), line);
                }
            }
        }
    }

    const Recipe& preparation_;
    const std::vector<Making>& makings_;
    std::vector<Need> needs_;
};

/// Needs that are always there stand in a row; methods of one choice exclude each other, so what
/// they need stands side by side. Gives the portions needed at most.
Portions placeConsumers(const std::vector<Need>& needs, std::vector<Consumer>& consumers)
{
    Portions from;
    for (const Need& need : needs) {
        if (!need.method) {
            consumers.push_back(
                {need.making, need.batch, PortionShare{PortionRange{from, from + need.portions}}});
            from = from + need.portions;
        }
    }
    std::map<std::pair<std::size_t, MethodChoiceId>, std::map<MethodId, std::vector<Need>>>
        byChoice;
    for (const Need& need : needs) {
        if (need.method) {
            byChoice[{need.making, need.method->choice}][need.method->method].push_back(need);
        }
    }
    for (const auto& [choice, methods] : byChoice) {
        Portions furthest = from;
        for (const auto& [method, some] : methods) {
            Portions at = from;
            for (const Need& need : some) {
                consumers.push_back(
                    {need.making, need.batch, PortionShare{PortionRange{at, at + need.portions}}});
                at = at + need.portions;
            }
            furthest = std::max(furthest, at);
        }
        from = furthest;
    }
    return from;
}

/// The one method without which nobody needs the preparation, if there is one.
std::optional<OnlyWith> onlyMethod(const std::vector<Need>& needs,
                                   const std::vector<Making>& makings)
{
    const auto ofNeed = [&](const Need& need) {
        return need.method ? std::optional(OnlyWith{need.making, *need.method})
                           : makings[need.making].onlyWith;
    };
    const std::optional<OnlyWith> first = ofNeed(needs.front());
    const bool isOne =
        std::ranges::all_of(needs, [&](const Need& need) { return ofNeed(need) == first; });
    return isOne ? first : std::nullopt;
}

/// What its users have said, and, where the whole preparation hangs on a method already, its usual
/// methods: a choice within an option is not open as well.
std::map<MethodChoiceId, MethodId> methodsSaid(const Making& making, const std::vector<Need>& needs,
                                               const std::vector<Making>& makings)
{
    std::map<MethodChoiceId, MethodId> said;
    for (const Need& need : needs) {
        const Dish* dish = makings[need.making].dish;
        said.insert(dish->methods.begin(), dish->methods.end());
    }
    for (const MethodChoice& choice : making.recipe->methods) {
        if (making.onlyWith && !choice.methods.empty()) {
            said.emplace(choice.id, choice.methods.front().id);
        }
    }
    return said;
}

/// The cook of all users, if it is one.
std::optional<CookId> cookOfAll(const std::vector<Need>& needs, const std::vector<Making>& makings)
{
    const std::optional<CookId>& first = makings[needs.front().making].cook;
    const bool isSame = std::ranges::all_of(
        needs, [&](const Need& need) { return makings[need.making].cook == first; });
    return isSame ? first : std::nullopt;
}

std::string freeKey(const Recipe& recipe, const std::vector<Making>& makings)
{
    std::string key = recipe.id.text();
    while (std::ranges::find(makings, key, &Making::key) != makings.end()) {
        key += "-prepared";
    }
    return key;
}

} // namespace

Amount amountFor(const IngredientLine& line, const Making& making, const Portions& batch,
                 const Portions& all)
{
    return amountIn({making.recipe->portions, all, batch, making.mould}, line.amount, line.scaling);
}

std::vector<RecipeId> preparationsOf(const Recipe& recipe, const VariantId& variant)
{
    std::vector<RecipeId> result;
    const auto resolved = resolve(recipe, variant);
    if (!resolved) {
        return result;
    }
    MakingVariant carrier;
    carrier.recipe = *resolved;
    for (const IngredientLine& line : linesOf(carrier)) {
        if (line.preparation && std::ranges::find(result, *line.preparation) == result.end()) {
            result.push_back(*line.preparation);
        }
    }
    return result;
}

std::optional<Making> preparationFor(const Recipe& recipe, const std::vector<Making>& makings,
                                     const PlanInput& input)
{
    const std::vector<Need> needs = NeedCollector(recipe, makings).collect();
    if (needs.empty()) {
        return std::nullopt;
    }
    const Making& firstUser = makings[needs.front().making];
    Making making;
    making.key = freeKey(recipe, makings);
    making.name = recipe.name;
    making.recipe = &recipe;
    making.course = firstUser.course;
    making.dish = firstUser.dish;
    making.isPreparation = true;
    making.cook = cookOfAll(needs, makings);
    making.onlyWith = onlyMethod(needs, makings);
    const Portions portions = placeConsumers(needs, making.consumers);
    MakingVariant variant;
    variant.id = recipe.variants.front().id;
    variant.name = recipe.variants.front().name;
    variant.portions = {Portions{0}, portions};
    variant.recipe = *resolve(recipe, variant.id);
    variant.contains =
        contentsOf(recipe, variant.id, recipeTable(input), input.ingredients).contains;
    making.variants.push_back(std::move(variant));
    narrowMethods(making, methodsSaid(making, needs, makings), *input.layout);
    tellStepsApart(making, *input.kitchen);
    return making;
}

} // namespace suppertide
