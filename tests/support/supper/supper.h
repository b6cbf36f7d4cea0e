// Supper: a small evening from recipes of a few steps, for tests of all that makes a plan of an
// occasion. One course at 19:30 on Saturday 19 June 2027 in London, one cook, one oven, a plain
// kitchen; whatever a test is about is changed by the test. Functions of recipe.h's words build
// its parts.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/plan/lay_out.h"
#include "core/plan/plan.h"

namespace suppertide::test {

/// "Slice the potatoes" → "slice-the-potatoes".
[[nodiscard]] std::string slug(std::string_view text);

/// A step whose id is the text's slug and whose duration is certain.
[[nodiscard]] Step step(const std::string& text, Minutes duration, Attention attention = handsOn);
/// In the oven for `duration` at low…high, unattended, a minute to put in and one to take out.
[[nodiscard]] Step inOven(const std::string& text, Minutes duration, Celsius low, Celsius high);
[[nodiscard]] Step inOven(const std::string& text, Minutes duration, Celsius at);
/// The step with one more thing that it uses.
[[nodiscard]] Step with(Step step, Use use);
/// The step after those of these texts.
[[nodiscard]] Step after(Step step, const std::vector<std::string>& texts);

/// From the end of one step to the start of another; an empty text of `to`: to the serving.
[[nodiscard]] Wait waitBetween(const std::string& text, const std::string& from,
                               const std::string& to, Minutes least,
                               std::optional<Minutes> most = {});
[[nodiscard]] KeepOption inFridge(Litres litres, Scaling scaling = Scaling::Fixed);
[[nodiscard]] KeepOption keptWarm(WarmBy by = WarmBy::Oven);

/// A line of 100 g that contains these.
[[nodiscard]] IngredientLine ingredient(const std::string& name, std::vector<Substance> contains);

/// A recipe for 8 with one variant, "plain"; its steps as they are.
[[nodiscard]] Recipe recipe(const std::string& name, std::vector<Step> steps);
/// Each step after the one before.
[[nodiscard]] Recipe recipeInOrder(const std::string& name, std::vector<Step> steps);

struct Supper
{
    Supper();

    Kitchen kitchen;
    Occasion occasion;
    std::map<RecipeId, Recipe> recipes;
    Layout layout;

    /// Adds the recipe, and a dish of its first variant to the last course; the dish has the
    /// recipe's id.
    Dish& serve(Recipe recipe, int portions = 8);
    void addRecipe(Recipe recipe);
    Course& addCourse(const std::string& name, ClockTime at);
    KitchenCook& addCook(const std::string& name, bool isHost = false);
    Guest& addGuest(const std::string& name, std::vector<Substance> allergies = {});

    /// Lays the task at that time of the evening's day.
    void put(const std::string& task, int hour, int minute = 0);
    void pin(const std::string& task, int hour, int minute = 0);
    [[nodiscard]] Instant instant(int hour, int minute = 0, int daysLater = 0) const;

    [[nodiscard]] PlanInput input() const;
    /// Throws with the words for the cook if the evening has faults.
    [[nodiscard]] FormulationPtr formulated() const;
    [[nodiscard]] PlanPtr laidOut() const;
    /// The sentences of the plan laid out by hand, worst first.
    [[nodiscard]] std::vector<std::string> clashes() const;
};

[[nodiscard]] std::vector<std::string> sentencesOf(const Plan& plan, const Occasion& occasion);

/// What a formulation says of things by their ids; throws where there is none.
[[nodiscard]] TaskIndex taskIndex(const Formulation& formulation, const std::string& id);
[[nodiscard]] const Task& taskOf(const Formulation& formulation, const std::string& id);
[[nodiscard]] const TaskSource& sourceOf(const Formulation& formulation, const std::string& id);
[[nodiscard]] DemandIndex demandIndex(const Formulation& formulation, const std::string& id);
[[nodiscard]] OvenDemandIndex ovenDemandIndex(const Formulation& formulation,
                                              const std::string& id);
/// "roast.out" from "potatoes/*/roast.out:end" form: a point as text, "id:start" or "id:end".
[[nodiscard]] std::string pointText(const Formulation& formulation, const TaskPoint& point);
/// Lags between two such points, as "0…", "0…0", "240…4320", in order of the formulation.
[[nodiscard]] std::vector<std::string> lagsBetween(const Formulation& formulation,
                                                   const std::string& from, const std::string& to);
/// The only lag between them; throws otherwise.
[[nodiscard]] LagIndex lagIndex(const Formulation& formulation, const std::string& from,
                                const std::string& to);
[[nodiscard]] std::vector<std::string> taskIds(const Formulation& formulation);

/// "19:30", the clock time of a task's start in a plan; "-" if it is not there.
[[nodiscard]] std::string startText(const Plan& plan, const std::string& id);

} // namespace suppertide::test
