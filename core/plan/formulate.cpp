#include <algorithm>

#include "core/plan/evening.h"
#include "core/plan/plan_days.h"
#include "core/recipe/faults_of_preparations.h"

namespace suppertide {

namespace {

/// One sentence a line, each with its place.
class FaultList
{
public:
    template <typename Fault>
    void add(const std::string& where, const std::vector<Fault>& faults)
    {
        for (const Fault& fault : faults) {
            text_ += text_.empty() ? "" : "\n";
            text_ +=
                where + (fault.place.empty() ? "" : ", " + fault.place) + ": " + fault.sentence;
        }
    }

    [[nodiscard]] const std::string& text() const { return text_; }

private:
    std::string text_;
};

/// Recipes that are cooked, or that what is cooked is made of.
void addUsed(const PlanInput& input, const RecipeId& id, std::vector<RecipeId>& used)
{
    const auto recipe = input.recipes.find(id);
    if (recipe == input.recipes.end() || std::ranges::find(used, id) != used.end()) {
        return;
    }
    used.push_back(id);
    for (const Variant& variant : recipe->second->variants) {
        for (const RecipeId& preparation : preparationsOf(*recipe->second, variant.id)) {
            addUsed(input, preparation, used);
        }
    }
}

std::string faultsIn(const PlanInput& input)
{
    FaultList faults;
    faults.add(input.kitchen->name, faultsOf(*input.kitchen));
    faults.add(input.occasion->name, faultsOf(*input.occasion, *input.kitchen, recipeTable(input)));
    std::vector<RecipeId> used;
    for (const Course& course : input.occasion->courses) {
        for (const Dish& dish : course.dishes) {
            if (portionsOf(dish) > Portions{0}) {
                addUsed(input, dish.recipe, used);
            }
        }
    }
    for (const RecipeId& id : used) {
        const Recipe& recipe = *input.recipes.at(id);
        faults.add("“" + recipe.name + "”", faultsOf(recipe));
        faults.add("“" + recipe.name + "”", faultsOfPreparations(recipe, recipeTable(input)));
    }
    return faults.text();
}

} // namespace

Result<FormulationPtr> formulate(const PlanInput& input)
{
    expects(input.occasion && input.kitchen && input.layout, "occasion, kitchen and layout given");
    if (std::string faults = faultsIn(input); !faults.empty()) {
        return Failure{FailureKind::BadInput, std::move(faults), {}};
    }
    const auto zone = TimeZone::find(input.occasion->zone);
    if (!zone) {
        return zone.error();
    }
    std::vector<Making> makings = makingsOf(input);
    const PlanDays days = planDays(input, makings, *zone);
    Evening evening{input, std::move(makings),
                    FormulationDraft(input.occasion->name, days.calendar, days.horizon)};
    addKitchen(evening);
    addCooks(evening);
    addServings(evening);
    addMethodChoices(evening);
    addSteps(evening);
    addWaits(evening);
    addSpans(evening);
    addOvenGroups(evening);
    addOrder(evening);
    addEndings(evening);
    addByProducts(evening);
    addWashing(evening);
    addHouseJobs(evening);
    addTrips(evening);
    addAbsences(evening);
    addCosts(evening);
    addPins(evening);
    addFoods(evening);
    return evening.draft.finish();
}

} // namespace suppertide
