#include "core/plan/other_tins.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <string_view>

#include "core/occasion/occasion.h"
#include "core/plan/other_mould.h"

namespace suppertide {

namespace {

/// A wide pan has a diameter too, but nobody bakes a tart in each pan that has the size.
constexpr std::array<std::string_view, 5> tinWords{"tin", "mould", "mold", "ring", "dish"};

bool isTin(const Vessel& vessel)
{
    std::string word;
    const auto isNamed = [&word] { return std::ranges::find(tinWords, word) != tinWords.end(); };
    for (const char letter : vessel.kind) {
        if (std::isalpha(static_cast<unsigned char>(letter)) != 0) {
            word += static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
            continue;
        }
        if (isNamed()) {
            return true;
        }
        word.clear();
    }
    return isNamed();
}

void addAmounts(OtherTin& tin, const RecipePart& part, const Portions& portions)
{
    const Made made{portions, tin.serves, tin.serves, tin.mould};
    for (const IngredientLine& line : part.lines) {
        if (std::holds_alternative<ByMould>(line.scaling)) {
            tin.asDeep.push_back({line.ingredient, amountIn(made, line.amount, line.scaling)});
        }
    }
}

/// `there` as the recipe has it, `changed` in the tin with the same amounts.
void addTimes(OtherTin& tin, const RecipePart& there, const RecipePart& changed)
{
    for (std::size_t i = 0; i < there.steps.size(); ++i) {
        if (changed.steps[i].duration != there.steps[i].duration) {
            tin.sameAmounts.push_back({there.steps[i].text, changed.steps[i].duration});
        }
    }
}

OtherTin tinOf(const ResolvedRecipe& recipe, const Portions& portions, const Vessel& vessel,
               const Rational& ratio)
{
    OtherTin tin;
    tin.vessel = vessel.id;
    tin.name = vessel.name;
    tin.mould = RoundMould{vessel.diameter};
    tin.serves = portions * ratio;
    ResolvedRecipe changed = recipe;
    putIntoMould(changed, OtherMould{tin.mould, true});
    addAmounts(tin, recipe.part, portions);
    addTimes(tin, recipe.part, changed.part);
    for (std::size_t i = 0; i < recipe.methods.size(); ++i) {
        for (std::size_t j = 0; j < recipe.methods[i].methods.size(); ++j) {
            const RecipePart& there = recipe.methods[i].methods[j].part;
            addAmounts(tin, there, portions);
            addTimes(tin, there, changed.methods[i].methods[j].part);
        }
    }
    return tin;
}

} // namespace

std::vector<OtherTin> otherTins(const Recipe& recipe, const Kitchen& kitchen)
{
    std::vector<OtherTin> tins;
    const auto own = mouldOf(recipe);
    if (!own || !isPossible(*own) || recipe.variants.empty() || !faultsOf(recipe).empty()) {
        return tins;
    }
    const auto resolved = resolve(recipe, recipe.variants.front().id);
    if (!resolved) {
        return tins;
    }
    const Rational most{4}; // science::bakingTimeAtDepth
    for (const Vessel& vessel : kitchen.vessels) {
        if (!isTin(vessel) || !isPossible(Mould{RoundMould{vessel.diameter}})) {
            continue;
        }
        const Rational ratio = areaRatio(RoundMould{vessel.diameter}, *own);
        if (ratio != Rational{1} && ratio <= most && ratio * most >= Rational{1}) {
            tins.push_back(tinOf(*resolved, recipe.portions, vessel, ratio));
        }
    }
    return tins;
}

} // namespace suppertide
