#include "tests/support/supper/supper.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

#include "core/problem/timetable.h"
#include "core/wording/wording.h"

namespace suppertide::test {

namespace {

constexpr CivilDate midsummer{2027, 6, 19};
constexpr int usualPortions = 8;

StepPoint endOfStep(const std::string& text)
{
    return {StepId{slug(text)}, StepEdge::End};
}

StepPoint startOfStep(const std::string& text)
{
    return text.empty() ? StepPoint{} : StepPoint{StepId{slug(text)}, StepEdge::Start};
}

template <typename Index, typename T>
Index indexWithId(const IndexedVector<Index, T>& list, const std::string& id)
{
    for (const Index index : list.indices()) {
        if (list[index].id == id) {
            return index;
        }
    }
    std::string known;
    for (const T& each : list) {
        known += "\n  " + each.id;
    }
    throw std::runtime_error("nothing has the id “" + id + "”; there are:" + known);
}

std::string boundText(const std::optional<Minutes>& bound)
{
    return bound ? std::to_string(bound->count()) : "";
}

} // namespace

std::string slug(std::string_view text)
{
    std::string result;
    for (const char letter : text) {
        if (letter >= 'A' && letter <= 'Z') {
            result += static_cast<char>(letter - 'A' + 'a');
        } else {
            result += letter == ' ' ? '-' : letter;
        }
    }
    return result;
}

Step step(const std::string& text, Minutes duration, Attention attention)
{
    Step result;
    result.id = StepId{slug(text)};
    result.verb = text.substr(0, text.find(' '));
    result.text = text;
    result.duration = {duration, duration, duration};
    result.attention = attention;
    return result;
}

Step inOven(const std::string& text, Minutes duration, Celsius low, Celsius high)
{
    return with(step(text, duration, unattended), OvenUse{1, low, high, {}, OvenMode::Any});
}

Step inOven(const std::string& text, Minutes duration, Celsius at)
{
    return inOven(text, duration, at, at);
}

Step with(Step step, Use use)
{
    step.uses.push_back(std::move(use));
    return step;
}

Step after(Step step, const std::vector<std::string>& texts)
{
    for (const std::string& text : texts) {
        step.after.emplace_back(slug(text));
    }
    return step;
}

Wait waitBetween(const std::string& text, const std::string& from, const std::string& to,
                 Minutes least, std::optional<Minutes> most)
{
    Wait wait;
    wait.id = WaitId{slug(text)};
    wait.text = text;
    wait.from = endOfStep(from);
    wait.to = startOfStep(to);
    wait.least = least;
    wait.most = most;
    return wait;
}

KeepOption inFridge(Litres litres, Scaling scaling)
{
    KeepOption option;
    option.place = KeepPlace::Fridge;
    option.litres = litres;
    option.scaling = scaling;
    return option;
}

KeepOption keptWarm(WarmBy by)
{
    KeepOption option;
    option.place = KeepPlace::Warm;
    option.warmBy = by;
    return option;
}

IngredientLine ingredient(const std::string& name, std::vector<Substance> contains)
{
    IngredientLine line;
    line.id = LineId{slug(name)};
    line.ingredient = name;
    line.amount = {Rational{100}, Unit::Gram};
    line.contains = std::move(contains);
    return line;
}

Recipe recipe(const std::string& name, std::vector<Step> steps)
{
    Recipe result;
    result.id = RecipeId{slug(name)};
    result.name = name;
    result.portions = Portions{usualPortions};
    result.common.steps = std::move(steps);
    result.variants = {{VariantId{"plain"}, "plain", {}, {}, {}, {}, {}, {}}};
    return result;
}

Recipe recipeInOrder(const std::string& name, std::vector<Step> steps)
{
    for (std::size_t i = 1; i < steps.size(); ++i) {
        steps[i].after.push_back(steps[i - 1].id);
    }
    return recipe(name, std::move(steps));
}

Supper::Supper()
{
    kitchen.id = KitchenId{"kitchen"};
    kitchen.name = "Kitchen";
    KitchenOven oven;
    oven.id = KitchenItemId{"oven"};
    oven.name = "Oven";
    oven.heatMilliCPerMin = 10'000;
    oven.coolMilliCPerMin = 4'000;
    kitchen.ovens = {oven};
    kitchen.burners = {{KitchenItemId{"front"}, "front", 21_cm, watts(2000)},
                       {KitchenItemId{"back"}, "back", 15_cm, watts(1200)}};
    kitchen.appliances = {{KitchenItemId{"blender"}, "Blender", "blender"}};
    kitchen.vessels = {{KitchenItemId{"wide-pan"}, "Wide pan", "wide pan", 3_l, 28_cm, 1}};
    kitchen.coldPlaces = {{KitchenItemId{"fridge"}, "Fridge", ColdKind::Fridge, 40_l}};
    addCook("Maren", true);
    occasion.id = OccasionId{"supper"};
    occasion.name = "Supper";
    occasion.kitchen = kitchen.id;
    addCourse("Main", {19, 30});
}

void Supper::addRecipe(Recipe recipe)
{
    const RecipeId id = recipe.id;
    recipes.insert_or_assign(id, std::move(recipe));
}

Dish& Supper::serve(Recipe recipe, int portions)
{
    Dish dish;
    dish.id = DishId{recipe.id.text()};
    dish.recipe = recipe.id;
    dish.mix = {{recipe.variants.front().id, Portions{portions}, {}}};
    addRecipe(std::move(recipe));
    return occasion.courses.back().dishes.emplace_back(std::move(dish));
}

Course& Supper::addCourse(const std::string& name, ClockTime at)
{
    Course course;
    course.id = CourseId{slug(name)};
    course.name = name;
    course.serving = {midsummer, at};
    return occasion.courses.emplace_back(std::move(course));
}

KitchenCook& Supper::addCook(const std::string& name, bool isHost)
{
    KitchenCook cook;
    cook.id = CookId{slug(name)};
    cook.name = name;
    cook.isHost = isHost;
    return kitchen.cooks.emplace_back(std::move(cook));
}

Guest& Supper::addGuest(const std::string& name, std::vector<Substance> allergies)
{
    return occasion.guests.emplace_back(Guest{GuestId{slug(name)}, name, {}, std::move(allergies)});
}

Instant Supper::instant(int hour, int minute, int daysLater) const
{
    const CivilDate day = addDays(occasion.courses.front().serving.date, daysLater);
    return TimeZone::find(occasion.zone).value().instant(CivilTime{day, {hour, minute}});
}

void Supper::put(const std::string& task, int hour, int minute)
{
    layout.starts[task] = instant(hour, minute);
}

void Supper::pin(const std::string& task, int hour, int minute)
{
    put(task, hour, minute);
    layout.pinned.insert(task);
}

PlanInput Supper::input() const
{
    PlanInput input;
    input.occasion = std::make_shared<const Occasion>(occasion);
    input.kitchen = std::make_shared<const Kitchen>(kitchen);
    for (const auto& [id, recipe] : recipes) {
        input.recipes.emplace(id, std::make_shared<const Recipe>(recipe));
    }
    input.layout = std::make_shared<const Layout>(layout);
    return input;
}

FormulationPtr Supper::formulated() const
{
    auto formulation = formulate(input());
    if (!formulation) {
        throw std::runtime_error(formulation.error().forCook);
    }
    return *formulation;
}

PlanPtr Supper::laidOut() const
{
    const FormulationPtr formulation = formulated();
    return judgePlan(formulation, input(), layOut(*formulation, layout));
}

std::vector<std::string> Supper::clashes() const
{
    return sentencesOf(*laidOut(), occasion);
}

std::vector<std::string> sentencesOf(const Plan& plan, const Occasion& occasion)
{
    std::vector<std::string> sentences;
    for (const Clash& clash : plan.clashes) {
        sentences.push_back(sentence(plan, occasion, clash));
    }
    return sentences;
}

TaskIndex taskIndex(const Formulation& formulation, const std::string& id)
{
    return indexWithId(formulation.problem.tasks, id);
}

const Task& taskOf(const Formulation& formulation, const std::string& id)
{
    return formulation.problem.tasks[taskIndex(formulation, id)];
}

const TaskSource& sourceOf(const Formulation& formulation, const std::string& id)
{
    return formulation.tasks[taskIndex(formulation, id)];
}

DemandIndex demandIndex(const Formulation& formulation, const std::string& id)
{
    return indexWithId(formulation.problem.demands, id);
}

OvenDemandIndex ovenDemandIndex(const Formulation& formulation, const std::string& id)
{
    return indexWithId(formulation.problem.ovenDemands, id);
}

std::string pointText(const Formulation& formulation, const TaskPoint& point)
{
    return formulation.problem.tasks[point.task].id +
           (point.edge == Edge::Start ? ":start" : ":end");
}

std::vector<std::string> lagsBetween(const Formulation& formulation, const std::string& from,
                                     const std::string& to)
{
    std::vector<std::string> lags;
    for (const Lag& lag : formulation.problem.lags) {
        if (pointText(formulation, lag.from) == from && pointText(formulation, lag.to) == to) {
            lags.push_back(boundText(lag.min) + "…" + boundText(lag.max));
        }
    }
    return lags;
}

LagIndex lagIndex(const Formulation& formulation, const std::string& from, const std::string& to)
{
    std::optional<LagIndex> found;
    for (const LagIndex index : formulation.problem.lags.indices()) {
        const Lag& lag = formulation.problem.lags[index];
        if (pointText(formulation, lag.from) == from && pointText(formulation, lag.to) == to) {
            if (found) {
                throw std::runtime_error("several lags from " + from + " to " + to);
            }
            found = index;
        }
    }
    if (!found) {
        throw std::runtime_error("no lag from " + from + " to " + to);
    }
    return *found;
}

std::vector<std::string> taskIds(const Formulation& formulation)
{
    std::vector<std::string> ids;
    for (const Task& task : formulation.problem.tasks) {
        ids.push_back(task.id);
    }
    return ids;
}

std::string startText(const Plan& plan, const std::string& id)
{
    const auto when = plan.interval(taskIndex(*plan.formulation, id));
    return when ? toIso(plan.formulation->calendar.civil(when->start).clock) : "-";
}

} // namespace suppertide::test
