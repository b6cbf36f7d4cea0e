// Making: one dish, or one shared preparation, carried through to what is really done: its variants
// with the methods that may be taken, the steps that they share or do not share, and the batches of
// each step. Step one of formulate; it knows recipes and portions, no tasks.
#pragma once

#include <compare>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/plan/formulation.h"
#include "core/plan/portion_share.h"

namespace suppertide {

/// A method of one choice of a making that leaves more than one open.
struct MethodKey
{
    MethodChoiceId choice;
    MethodId method;

    friend auto operator<=>(const MethodKey&, const MethodKey&) = default;
};

struct MakingVariant
{
    VariantId id;
    std::string name;
    PortionRange portions; // in the row of the making's portions
    ResolvedRecipe recipe; // without methods that are not to be taken
    std::vector<GuestId> eaters;
    std::vector<Substance> contains; // with its preparations; sorted

    friend bool operator==(const MakingVariant&, const MakingVariant&) = default;
};

/// Whether both may be done in one evening: they do not stand in two methods of one choice.
[[nodiscard]] bool areCompatible(const std::optional<MethodKey>& one,
                                 const std::optional<MethodKey>& other);

/// A step as some of the variants have it in common.
struct MadeStep
{
    Step step;
    std::optional<MethodKey> method;   // absent: always done
    std::vector<std::size_t> variants; // rising
    std::vector<IngredientLine> lines; // that it takes
    std::vector<std::size_t> before;   // made steps that it comes after
    std::vector<std::size_t> batches;

    friend bool operator==(const MadeStep&, const MadeStep&) = default;
};

struct Batch
{
    std::size_t step = 0;
    int number = 0; // from 1; 0: the only one
    int count = 1;
    PortionShare share;

    friend bool operator==(const Batch&, const Batch&) = default;
};

/// Who uses a preparation: a batch of another making, and which of the preparation's portions.
struct Consumer
{
    std::size_t making = 0;
    std::size_t batch = 0;
    PortionShare share;

    friend bool operator==(const Consumer&, const Consumer&) = default;
};

/// A preparation that is made only if one method of one of its users is taken.
struct OnlyWith
{
    std::size_t making = 0;
    MethodKey method;

    friend bool operator==(const OnlyWith&, const OnlyWith&) = default;
};

struct Making
{
    std::string key;  // first part of its tasks' ids
    std::string name; // "Roast roots"
    const Recipe* recipe = nullptr;
    const Course* course = nullptr; // of a preparation: of the first dish that uses it
    const Dish* dish = nullptr;     // likewise
    bool isPreparation = false;
    std::optional<CookId> cook; // who must make it
    std::vector<MethodChoice> choices;
    std::vector<MakingVariant> variants; // those to be free of something first
    std::vector<MadeStep> steps;         // each after those that it comes after
    std::vector<Batch> batches;
    std::vector<Consumer> consumers; // of a preparation
    std::optional<OnlyWith> onlyWith;
    std::optional<Mould> mould; // that is filled as deep as the recipe's own

    [[nodiscard]] PortionShare shareOf(std::size_t variant) const
    {
        return PortionShare{variants[variant].portions};
    }
    [[nodiscard]] PortionShare shareOf(const std::vector<std::size_t>& some) const;
    /// The made steps of that id that are this variant's: one in each method that has it; none if
    /// its method is not to be taken.
    [[nodiscard]] std::vector<std::size_t> stepsNamed(std::size_t variant, const StepId& id) const;
};

using RecipeTable = std::map<RecipeId, const Recipe*>;
[[nodiscard]] RecipeTable recipeTable(const PlanInput& input);

/// Dishes with portions in order of the menu, then preparations, users before what they use.
/// Pointers are into `input`.
[[nodiscard]] std::vector<Making> makingsOf(const PlanInput& input);

/// Whether the portions of `one` must be kept clear of what is in `other`: it contains something
/// that `one` does not and that those who eat `one` avoid (if nobody is known to eat it: anything).
[[nodiscard]] bool mustBeClearOf(const Occasion& occasion, const MakingVariant& one,
                                 const MakingVariant& other);

/// Fills steps and batches from the variants: a step is shared as far as step, ingredients, waits
/// and all that went before are the same. Batches are no larger than what this kitchen's things
/// hold.
void tellStepsApart(Making& making, const Kitchen& kitchen);

/// How much of a line of the making these portions take, of `all` that are made of the step
/// together.
[[nodiscard]] Amount amountFor(const IngredientLine& line, const Making& making,
                               const Portions& batch, const Portions& all);

/// The preparations of `recipe`'s own lines, in order, each once.
[[nodiscard]] std::vector<RecipeId> preparationsOf(const Recipe& recipe, const VariantId& variant);

/// The preparation `recipe` as a making, in the amount that its users among `makings` need.
/// Absent if nobody uses it.
[[nodiscard]] std::optional<Making>
preparationFor(const Recipe& recipe, const std::vector<Making>& makings, const PlanInput& input);

/// The choices of method that are left open, and in `variants` no method that is not to be taken.
/// `taken`: what the dish, or the layout, says already.
void narrowMethods(Making& making, const std::map<MethodChoiceId, MethodId>& taken,
                   const Layout& layout);

/// All lines of the variant, those of its methods included.
[[nodiscard]] std::vector<IngredientLine> linesOf(const MakingVariant& variant);

} // namespace suppertide
