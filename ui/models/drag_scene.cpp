#include "ui/models/drag_scene.h"

#include <QCoreApplication>

#include <fmt/format.h>

#include <set>

#include "ui/models/occasion_edits.h"
#include "ui/models/reading.h"
#include "ui/models/scene_parts.h"
#include "ui/timeline/shown_degrees.h"

namespace suppertide::ui {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("DragScene", text);
}

SceneLane* laneIn(Scene& scene, const std::string& id)
{
    const auto at = findLane(scene, id);
    return at ? &scene.lanes[*at] : nullptr;
}

void refuseOvens(Scene& scene, const Problem& problem, TaskIndex task)
{
    for (const OvenDemand& demand : problem.ovenDemands) {
        if (demand.from.task != task && demand.to.task != task) {
            continue;
        }
        for (const OvenIndex index : problem.ovens.indices()) {
            const Oven& oven = problem.ovens[index];
            SceneLane* lane = laneIn(scene, ovenLane(problem, index));
            if (lane == nullptr) {
                continue;
            }
            if (oven.maxC < demand.acceptLow) {
                lane->refusal = fmt::format(
                    "not as hot as {}°",
                    shownDegrees(Celsius::degrees(demand.acceptLow), scene.isFahrenheit));
            } else if (oven.shelves < demand.shelves) {
                lane->refusal = fmt::format("has not {} shelves", demand.shelves);
            }
        }
    }
}

void refuseUnits(Scene& scene, const Problem& problem, const Formulation& formulation,
                 TaskIndex task)
{
    for (const Demand& demand : problem.demands) {
        if (!demand.pool || (demand.from.task != task && demand.to.task != task)) {
            continue;
        }
        const bool isBurner = formulation.pools[*demand.pool].kind == ResourceKind::Burner;
        const auto& units = problem.pools[*demand.pool].units;
        for (const UnitIndex unit : units.indices()) {
            SceneLane* lane = laneIn(scene, unitLane(problem, *demand.pool, unit));
            if (lane != nullptr && units[unit].size < demand.minSize) {
                lane->refusal = isBurner
                                    ? fmt::format("too small for a {} cm pan", demand.minSize / 10)
                                    : std::string("too small");
            }
        }
    }
}

std::set<std::string> sentencesOf(const Plan& plan, const Occasion& occasion)
{
    std::set<std::string> sentences;
    for (const Clash& clash : plan.clashes) {
        sentences.insert(sentence(plan, occasion, clash));
    }
    return sentences;
}

/// Ties among the ghost's own steps, and from its last ones to the serving line.
void addThreads(Scene& scene, const Plan& plan, const std::set<std::string>& ghosts, int course)
{
    const Problem& problem = plan.formulation->problem;
    std::set<std::pair<std::string, std::string>> seen;
    for (const Lag& lag : problem.lags) {
        const std::string& from = problem.tasks[lag.from.task].id;
        const std::string& to = problem.tasks[lag.to.task].id;
        const bool isServing = plan.formulation->tasks[lag.to.task].role == TaskRole::Serving;
        if (!ghosts.contains(from) || (!isServing && !ghosts.contains(to)) || from == to) {
            continue;
        }
        if (seen.emplace(from, isServing ? std::string() : to).second) {
            scene.threads.push_back({from, isServing ? std::string() : to, course});
        }
    }
}

DragCard cardOf(const SceneSource& after, const VariantDrop& drop, const Scene& scene, int clashes)
{
    DragCard card;
    const SceneServing* serving = findServing(scene, drop.courseNumber);
    card.servingAt = serving != nullptr ? serving->time : scene.horizon.end;
    card.look = after.looks.find(drop.dish);
    for (const TaskSource& task : after.plan->formulation->tasks) {
        if (task.dish == drop.dish) {
            card.title = task.dishName;
        }
    }
    card.line = fmt::format("{} portions, {} {}", fieldText(drop.portions), drop.courseNumber,
                            serving != nullptr ? serving->name : "");
    card.isGood = clashes == 0;
    card.verdict = clashes == 0   ? "no new clash"
                   : clashes == 1 ? "1 new clash"
                                  : fmt::format("{} new clashes", clashes);
    return card;
}

} // namespace

void addDragMarks(Scene& scene, const SceneSource& source, TaskIndex task)
{
    const Formulation& formulation = *source.plan->formulation;
    const Problem& problem = formulation.problem;
    const SceneBlock* block = findBlock(scene, problem.tasks[task].id);
    if (block == nullptr) {
        return;
    }
    refuseOvens(scene, problem, task);
    refuseUnits(scene, problem, formulation, task);
    const Interval starts = dragRange(formulation, source.plan->schedule, task).starts;
    if (starts.end < starts.start) {
        return;
    }
    const Interval covered{starts.start, starts.end + problem.tasks[task].duration};
    const std::string words =
        fmt::format("{} to {}", timeText(scene.calendar, covered.start, {}, source.style),
                    timeText(scene.calendar, covered.end, {}, source.style));
    for (const Placement& place : block->places) {
        scene.allowed.push_back({place.lane, covered,
                                 fmt::format("may {} {}", inSentence(block->verb), words),
                                 "what is tied to it moves along"});
    }
}

std::optional<VariantDrop> variantDrop(const LibraryState& library, const DraggedVariant& variant,
                                       int courseNumber)
{
    const OccasionPtr open = openOccasion(library);
    const auto recipe = library.recipes.find(RecipeId{variant.recipe.toStdString()});
    const auto index = static_cast<std::size_t>(courseNumber - 1);
    if (!open || recipe == library.recipes.end() || courseNumber < 1 ||
        index >= open->occasion.courses.size()) {
        return std::nullopt;
    }
    const std::vector<Variant>& variants = recipe->second->variants;
    const Variant* taken = findIn(variants, VariantId{variant.variant.toStdString()});
    if (taken == nullptr && variant.variant.isEmpty() && !variants.empty()) {
        taken = &variants.front();
    }
    if (taken == nullptr) {
        return std::nullopt;
    }
    const Course& course = open->occasion.courses[index];
    const Portions portions = portionsWanted(open->occasion, course, *recipe->second);
    VariantDrop drop;
    drop.course = course.id;
    drop.courseNumber = courseNumber;
    drop.portions = portions;
    drop.next = withOccasion(library, [&](Occasion& occasion) {
        WithDish with =
            withDishAdded(std::move(occasion), course.id, *recipe->second, taken->id, portions);
        drop.dish = with.dish;
        occasion = std::move(with.occasion);
    });
    drop.text = tr("Add %1").arg(QString::fromStdString(recipe->second->name));
    return drop;
}

int newClashes(const Plan& before, const Plan& after, const Occasion& occasion)
{
    const std::set<std::string> known = sentencesOf(before, occasion);
    int count = 0;
    for (const std::string& said : sentencesOf(after, occasion)) {
        count += known.contains(said) ? 0 : 1;
    }
    return count;
}

Scene ghostScene(const SceneSource& after, const Plan& before, const VariantDrop& drop)
{
    Scene scene = sceneOfPlan(after);
    const Formulation& formulation = *after.plan->formulation;
    const SceneServing* serving = findServing(scene, drop.courseNumber);
    std::set<std::string> ghosts;
    for (SceneBlock& block : scene.blocks) {
        const auto task = formulation.taskById.find(block.id);
        const bool isNew = task != formulation.taskById.end() &&
                           formulation.tasks[task->second].dish == drop.dish &&
                           !before.formulation->taskById.contains(block.id);
        if (isNew) {
            ghosts.insert(block.id);
            block.ghost = Ghost{};
            if (serving != nullptr && block.start < serving->time) {
                block.ghost->countdown = serving->time - block.start;
            }
        }
    }
    addThreads(scene, *after.plan, ghosts, drop.courseNumber);
    scene.card = cardOf(after, drop, scene, newClashes(before, *after.plan, *after.occasion));
    return scene;
}

} // namespace suppertide::ui
