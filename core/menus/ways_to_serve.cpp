#include "core/menus/ways_to_serve.h"

#include <algorithm>
#include <iterator>
#include <set>

#include "core/occasion/line_swaps.h"
#include "core/plan/making.h"

namespace suppertide::menus {

namespace {

/// All lines of a variant, those of every method included.
std::vector<IngredientLine> linesOf(const ResolvedRecipe& recipe)
{
    std::vector<IngredientLine> lines = recipe.part.lines;
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            lines.insert(lines.end(), method.part.lines.begin(), method.part.lines.end());
        }
    }
    return lines;
}

const IngredientLine* findLine(const std::vector<IngredientLine>& lines, const LineId& id)
{
    const auto found = std::ranges::find(lines, id, &IngredientLine::id);
    return found == lines.end() ? nullptr : &*found;
}

class WayFinder
{
public:
    WayFinder(const PlanInput& input, const CourseOffer& offer, const Guest& guest)
        : recipes_(recipeTable(input)), ingredients_(input.ingredients),
          book_(input.occasion->preferences.rules), offer_(offer), guest_(guest)
    {}

    std::vector<WayToServe> find()
    {
        for (std::size_t i = 0; i < offer_.dishes.size(); ++i) {
            const auto& alternative = offer_.dishes[i].alternative;
            if (alternative && offer_.mainDish(*alternative) == i) {
                tryDish(offer_.dishes[i]);
            }
        }
        std::ranges::stable_sort(ways_, {},
                                 [](const WayToServe& way) { return way.substitutions.size(); });
        return std::move(ways_);
    }

private:
    void tryDish(const OfferedDish& dish)
    {
        for (const OfferedVariant& variant : dish.variants) {
            const auto resolved = resolve(*dish.recipe, variant.id);
            const bool isAtRisk = !suitabilityOf(guest_, variant.nature, book_).risks.empty();
            if (resolved && !isAtRisk) {
                tryVariant(dish, variant.id, linesOf(*resolved));
            }
        }
    }

    void tryVariant(const OfferedDish& dish, const VariantId& variant,
                    const std::vector<IngredientLine>& lines)
    {
        WayToServe way{dish.dish->id, variant, {}};
        for (const IngredientLine& line : lines) {
            if (isFine(line)) {
                continue;
            }
            auto found = substitution(dish, variant, line, lines);
            if (!found) {
                found = fromTable(line);
            }
            if (!found) {
                return;
            }
            way.substitutions.push_back(*std::move(found));
        }
        if (!way.substitutions.empty()) {
            ways_.push_back(std::move(way));
        }
    }

    [[nodiscard]] bool isFine(const IngredientLine& line) const
    {
        return isLineFine(guest_, line, recipes_, ingredients_, book_);
    }

    /// How another variant does without the line.
    [[nodiscard]] std::optional<Substitution>
    substitution(const OfferedDish& dish, const VariantId& variant, const IngredientLine& line,
                 const std::vector<IngredientLine>& lines) const
    {
        for (const OfferedVariant& other : dish.variants) {
            const auto resolved = resolve(*dish.recipe, other.id);
            if (other.id == variant || !resolved) {
                continue;
            }
            const std::vector<IngredientLine> theirs = linesOf(*resolved);
            const IngredientLine* same = findLine(theirs, line.id);
            if (same != nullptr) {
                if (*same != line && isFine(*same)) {
                    return Substitution{line.ingredient, same->ingredient, other.id};
                }
                continue;
            }
            return withoutLine(line, lines, theirs, other.id);
        }
        return std::nullopt;
    }

    [[nodiscard]] std::optional<Substitution> fromTable(const IngredientLine& line) const
    {
        auto instead = substituteIn(guest_, line, ingredients_, book_);
        return instead ? std::optional{Substitution{line.ingredient, std::move(instead), {}}}
                       : std::nullopt;
    }

    /// The other variant leaves it out; a single line that it has instead is taken with it.
    [[nodiscard]] std::optional<Substitution> withoutLine(const IngredientLine& line,
                                                          const std::vector<IngredientLine>& lines,
                                                          const std::vector<IngredientLine>& theirs,
                                                          const VariantId& other) const
    {
        std::vector<const IngredientLine*> added;
        for (const IngredientLine& each : theirs) {
            if (findLine(lines, each.id) == nullptr && isFine(each)) {
                added.push_back(&each);
            }
        }
        Substitution result{line.ingredient, std::nullopt, other};
        if (added.size() == 1) {
            result.instead = added.front()->ingredient;
        }
        return result;
    }

    RecipeTable recipes_;
    const IngredientBook& ingredients_;
    safety::RuleBook book_;
    const CourseOffer& offer_;
    const Guest& guest_;
    std::vector<WayToServe> ways_;
};

} // namespace

std::vector<WayToServe> waysToServe(const PlanInput& input, const CourseOffer& offer,
                                    const Guest& guest, std::size_t most)
{
    std::vector<WayToServe> ways = WayFinder(input, offer, guest).find();
    ways.resize(std::min(ways.size(), most));
    return ways;
}

} // namespace suppertide::menus
