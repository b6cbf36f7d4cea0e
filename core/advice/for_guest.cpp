#include "core/advice/for_guest.h"

#include <algorithm>

namespace suppertide {

namespace {

class GuestChanges
{
public:
    GuestChanges(const PlanInput& input, const Guest& guest) : input_(input), guest_(guest)
    {
        for (const auto& [id, recipe] : input.recipes) {
            recipes_.emplace(id, recipe.get());
        }
    }

    void addFor(const Course& course, const std::set<DishId>& dishes)
    {
        const std::optional<DishId> has = mainOf(course);
        const bool isAboutMain = dishes.empty() || (has && dishes.contains(*has));
        for (const Dish& dish : course.dishes) {
            const auto recipe = input_.recipes.find(dish.recipe);
            if (recipe == input_.recipes.end()) {
                continue;
            }
            if (isMain(course, dish)) {
                if (isAboutMain) {
                    addDish(course, has, dish, *recipe->second);
                    addSubstitute(course, has, dish, *recipe->second);
                }
            } else if (dishes.contains(dish.id)) {
                changes_.emplace_back(ServeGuest{course.id, guest_.id, dish.id, std::nullopt});
                addSubstitute(course, dish.id, dish, *recipe->second);
            }
        }
    }

    [[nodiscard]] std::vector<EveningChange> changes() && { return std::move(changes_); }

private:
    /// What an alternative is about, not a side for everybody.
    [[nodiscard]] static bool isMain(const Course& course, const Dish& dish)
    {
        const auto alternative =
            std::ranges::find(course.alternatives, dish.alternative, &Alternative::id);
        const bool isFirst =
            std::ranges::find(course.dishes, dish.alternative, &Dish::alternative)->id == dish.id;
        return alternative == course.alternatives.end() ||
               (!alternative->isForEverybody && isFirst);
    }

    [[nodiscard]] std::optional<DishId> mainOf(const Course& course) const
    {
        for (const Helping& helping :
             helpingsOf(*input_.occasion, course, recipes_, input_.ingredients)) {
            const auto dish = std::ranges::find(course.dishes, helping.dish, &Dish::id);
            if (helping.guest == guest_.id && isMain(course, *dish)) {
                return helping.dish;
            }
        }
        return std::nullopt;
    }

    [[nodiscard]] bool suits(const Recipe& recipe, const VariantId& variant) const
    {
        return suitabilityOf(guest_, natureOf(recipe, variant, recipes_, input_.ingredients),
                             input_.occasion->preferences.rules)
            .suits();
    }

    /// Another variant of the same dish is a change of its own (GiveVariant).
    void addDish(const Course& course, const std::optional<DishId>& has, const Dish& dish,
                 const Recipe& recipe)
    {
        for (const Variant& variant : recipe.variants) {
            if (has != dish.id && suits(recipe, variant.id)) {
                changes_.emplace_back(
                    ServeGuest{course.id, guest_.id, has, std::pair{dish.id, variant.id}});
            }
        }
    }

    /// With the fewest swaps, if no variant suits as it is.
    void addSubstitute(const Course& course, const std::optional<DishId>& has, const Dish& dish,
                       const Recipe& recipe)
    {
        std::optional<Substitute> best;
        for (const Variant& variant : recipe.variants) {
            if (suits(recipe, variant.id)) {
                return;
            }
            auto swaps = swapsFor(guest_, recipe, variant.id, recipes_, input_.ingredients,
                                  input_.occasion->preferences.rules);
            if (swaps && (!best || swaps->size() < best->swaps.size())) {
                best =
                    Substitute{course.id, guest_.id, has, dish.id, variant.id, *std::move(swaps)};
            }
        }
        if (best) {
            changes_.emplace_back(*std::move(best));
        }
    }

    const PlanInput& input_;
    const Guest& guest_;
    std::map<RecipeId, const Recipe*> recipes_;
    std::vector<EveningChange> changes_;
};

} // namespace

std::vector<EveningChange> changesForGuest(const PlanInput& input, const GuestId& guest,
                                           const std::set<CourseId>& courses,
                                           const std::set<DishId>& dishes)
{
    const auto there = std::ranges::find(input.occasion->guests, guest, &Guest::id);
    if (there == input.occasion->guests.end()) {
        return {};
    }
    GuestChanges changes(input, *there);
    for (const Course& course : input.occasion->courses) {
        if (courses.contains(course.id)) {
            changes.addFor(course, dishes);
        }
    }
    return std::move(changes).changes();
}

} // namespace suppertide
