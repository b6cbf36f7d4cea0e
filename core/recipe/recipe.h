// Recipe: a common part, methods that are exchangeable for each other, and named variants that add,
// replace or drop lines, steps, waits and spans. A preparation is a recipe of kind Preparation:
// made by itself, kept, and used by the lines of other recipes that name it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/food/ingredient.h"
#include "core/food/substance.h"
#include "core/recipe/followed_food.h"
#include "core/recipe/line_scaling.h"
#include "core/recipe/step.h"

namespace suppertide {

struct IngredientLine
{
    LineId id;
    std::string ingredient; // "plain flour"
    IngredientPart part = IngredientPart::Whole;
    Amount amount; // at the recipe's portions
    /// The same by another measure: "1 tin (400 g)", "2 cups (250 g)"; scaled with it.
    std::optional<Amount> also;
    LineScaling scaling;
    std::string note; // "sifted", "at room temperature"
    /// What it contains of what guests may avoid; absent: nobody has said, which is not "nothing".
    std::optional<std::vector<Substance>> contains;
    std::optional<RecipeId> preparation;  // the line is a preparation, made by its own recipe
    std::optional<std::string> byProduct; // may come from a by-product of this name of another dish

    friend bool operator==(const IngredientLine&, const IngredientLine&) = default;
};

struct RecipePart
{
    std::vector<IngredientLine> lines;
    std::vector<Step> steps;
    std::vector<Wait> waits;
    std::vector<Span> spans;
    std::vector<FollowedFood> foods;

    friend bool operator==(const RecipePart&, const RecipePart&) = default;
};

/// A way of doing part of a recipe. Steps outside may come after steps of any method: what is not
/// carried out ties nothing.
struct Method
{
    MethodId id;
    std::string name; // "in a wide pan"
    int cost = 0;     // how much less it is liked, in points of the plan's cost
    RecipePart part;

    friend bool operator==(const Method&, const Method&) = default;
};

/// Exactly one of `methods` is carried out; the first is the usual one.
struct MethodChoice
{
    MethodChoiceId id;
    std::string name; // "how the roots are cooked"
    std::vector<Method> methods;

    friend bool operator==(const MethodChoice&, const MethodChoice&) = default;
};

/// `adds` joins the common part; what has the id of something common replaces it.
struct Variant
{
    VariantId id;
    std::string name; // "without nuts"
    std::string note;
    RecipePart adds;
    std::vector<LineId> dropLines;
    std::vector<StepId> dropSteps;
    std::vector<WaitId> dropWaits;
    std::vector<SpanId> dropSpans;
    std::vector<FollowedFoodId> dropFoods;

    friend bool operator==(const Variant&, const Variant&) = default;
};

enum class RecipeKind
{
    Dish,
    Preparation
};

struct Recipe
{
    RecipeId id;
    std::string name;
    RecipeKind kind = RecipeKind::Dish;
    std::string note;
    std::vector<std::string> keywords; // for search: "starter", "summer"
    Portions portions{8};              // for which all figures stand
    std::optional<Amount> yields;      // of a preparation: how much these portions are
    RecipePart common;
    std::vector<MethodChoice> methods;
    std::vector<Variant> variants; // at least one

    friend bool operator==(const Recipe&, const Recipe&) = default;
};

/// A recipe with one variant carried through: what is really done.
struct ResolvedRecipe
{
    RecipePart part;
    std::vector<MethodChoice> methods;

    friend bool operator==(const ResolvedRecipe&, const ResolvedRecipe&) = default;
};

/// Adds, replaces and drops. What came after a dropped step comes after its predecessors; waits and
/// spans of dropped steps go. NotFound if the recipe has no such variant.
[[nodiscard]] Result<ResolvedRecipe> resolve(const Recipe& recipe, const VariantId& variant);

/// What the variant contains of what guests may avoid (methods included, since any may be taken).
struct Contents
{
    std::vector<Substance> contains; // sorted, each once
    /// Ingredients of which it is not known what all they contain: it is free from nothing.
    std::vector<std::string> unknown;
    /// Those among `unknown` of which the label of the very thing would tell.
    std::vector<std::string> checkLabel;

    friend bool operator==(const Contents&, const Contents&) = default;
};
/// A line that does not itself say what it contains is looked up in `ingredients`. One that says it
/// has been confirmed by the cook, and is believed.
[[nodiscard]] Contents contentsOf(const ResolvedRecipe& recipe,
                                  const IngredientBook& ingredients = IngredientBook{});

/// Something in a recipe that cannot be, with the place in words a cook can find
/// ("step “Bake”, duration").
struct RecipeFault
{
    std::string place;
    std::string sentence;

    friend bool operator==(const RecipeFault&, const RecipeFault&) = default;
};

/// All faults: no name, no variants, ids twice, ties to steps that are not there, drops that hit
/// nothing, waits in a circle, durations that are negative, out of order or above seven days,
/// temperatures outside −40…600 °C, amounts below 0, portions of 0 or finer than twelfths, least
/// above most, a range whose end is not above its start, a recipe that is its own ingredient.
/// Empty: fit for planning.
[[nodiscard]] std::vector<RecipeFault> faultsOf(const Recipe& recipe);

/// A range for `portions` instead of the recipe's own number; rounded up to whole minutes.
[[nodiscard]] DurationRange scaledDuration(const Step& step, const Portions& recipePortions,
                                           const Portions& portions);

/// The tin or mould that the first line names whose amount goes by one.
[[nodiscard]] std::optional<Mould> mouldOf(const Recipe& recipe);

/// The portions of each batch, as even as can be: 10 portions at most 4 at once → 4, 3, 3. All in
/// one if `atOnce` is absent or not above 0.
[[nodiscard]] std::vector<Portions> inBatches(const Portions& portions,
                                              const std::optional<Portions>& atOnce);
/// The batches of a step as its recipe says; what the kitchen's vessels hold is not asked
/// (core/plan/batch_room).
[[nodiscard]] std::vector<Portions> batchesOf(const Step& step, const Portions& portions);

} // namespace suppertide
