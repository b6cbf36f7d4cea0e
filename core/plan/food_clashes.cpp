// Clashes of food alone: what stands at a guest's place, whenever it is cooked.
#include <algorithm>

#include "core/plan/clash_finder.h"
#include "core/plan/making.h"

namespace suppertide {

namespace {

/// Diets that are kept for health; what they rule out is treated as an allergen.
bool isForHealth(Diet diet)
{
    switch (diet) {
    case Diet::Coeliac:
    case Diet::NoTreeNuts:
    case Diet::NoDairy:
        return true;
    case Diet::Vegetarian:
    case Diet::Vegan:
    case Diet::Pescatarian:
    case Diet::NoAlcohol:
        return false;
    }
    return true;
}

class FoodClashes
{
public:
    FoodClashes(const Formulation& formulation, const PlanInput& input)
        : formulation_(formulation), occasion_(*input.occasion), recipes_(recipeTable(input)),
          ingredients_(input.ingredients)
    {}

    std::vector<Clash> find()
    {
        for (const Course& course : occasion_.courses) {
            for (const Helping& helping : helpingsOf(occasion_, course, recipes_, ingredients_)) {
                addHelping(course, helping);
            }
            for (const GuestId& guest : leftOut(occasion_, course, recipes_, ingredients_)) {
                addLeftOut(course, guest);
            }
        }
        return std::move(clashes_);
    }

private:
    void addHelping(const Course& course, const Helping& helping)
    {
        const auto guest = std::ranges::find(occasion_.guests, helping.guest, &Guest::id);
        if (guest == occasion_.guests.end()) {
            return;
        }
        if (!helping.unsuitable.empty()) {
            Clash& clash = add(ClashKind::Allergen, course, helping.guest, helping.dish);
            clash.substances = helping.unsuitable;
            const bool isHarmful =
                std::ranges::any_of(helping.unsuitable, [&](Substance substance) {
                    return isDangerous(*guest, substance);
                });
            clash.severity = isHarmful ? Severity::Unsafe : Severity::Undesirable;
        }
        const std::vector<Substance> avoided = avoidedBy(*guest);
        if (!helping.unknown.empty() && !avoided.empty()) {
            Clash& clash = add(ClashKind::ContentsUnknown, course, helping.guest, helping.dish);
            clash.substances = avoided;
            clash.ingredients = helping.unknown;
            clash.labels = helping.checkLabel;
        }
    }

    /// A guest whose helping is said to be unsuitable is not told of twice.
    void addLeftOut(const Course& course, const GuestId& guest)
    {
        const bool isTold = std::ranges::any_of(clashes_, [&](const Clash& clash) {
            return clash.kind == ClashKind::Allergen && clash.guest == guest &&
                   clash.course == course.id;
        });
        if (!isTold) {
            add(ClashKind::GuestLeftOut, course, guest, std::nullopt);
        }
    }

    Clash& add(ClashKind kind, const Course& course, const GuestId& guest,
               const std::optional<DishId>& dish)
    {
        Clash& clash = clashes_.emplace_back();
        clash.kind = kind;
        clash.severity = severityOf(kind);
        clash.course = course.id;
        clash.guest = guest;
        clash.dish = dish;
        if (const auto event = formulation_.servings.find(course.id);
            event != formulation_.servings.end()) {
            const Interval window = formulation_.problem.tasks[event->second].window;
            clash.when = Interval{window.start, window.start};
            clash.tasks = {event->second};
        }
        return clash;
    }

    const Formulation& formulation_;
    const Occasion& occasion_;
    RecipeTable recipes_;
    const IngredientBook& ingredients_;
    std::vector<Clash> clashes_;
};

} // namespace

bool isDangerous(const Guest& guest, Substance substance)
{
    if (std::ranges::find(guest.allergies, substance) != guest.allergies.end()) {
        return true;
    }
    return std::ranges::any_of(guest.diets, [&](Diet diet) {
        const std::vector<Substance> avoided = avoidedBy(diet);
        return isForHealth(diet) && std::ranges::find(avoided, substance) != avoided.end();
    });
}

std::vector<Clash> foodClashes(const Formulation& formulation, const PlanInput& input)
{
    return FoodClashes(formulation, input).find();
}

} // namespace suppertide
