// Serving (formulate rule 7): a course is an event; everything of it is ready then; hosts sit at
// table after it. What is last of a preparation is ready when it is used (rule 9).
#include <algorithm>

#include "core/plan/tied_points.h"

namespace suppertide {

namespace {

/// A course that is not pinned may be served so much later.
constexpr Minutes latestBy{30};

TaskSource eventSource(const Course& course, TaskRole role)
{
    TaskSource source;
    source.role = role;
    source.rule = Rule::Serving;
    source.course = course.id;
    source.dishName = course.name;
    return source;
}

LagSource servingSource()
{
    LagSource source;
    source.rule = Rule::Serving;
    return source;
}

TaskIndex addServing(Evening& evening, const Course& course)
{
    FormulationDraft& draft = evening.draft;
    const PlanTime target = draft.calendar().planTime(course.serving);
    Task event;
    event.id = "serve/" + course.id.text();
    event.window = {target, course.isServingPinned ? target : target + latestBy};
    const TaskIndex served =
        draft.addTask(std::move(event), eventSource(course, TaskRole::Serving));
    draft.addServing(course.id, served);
    evening.servings.emplace(course.id, served);
    if (!course.isServingPinned) {
        Task fixed;
        fixed.id = "target/" + course.id.text();
        fixed.window = {target, target};
        const TaskIndex wanted =
            draft.addTask(std::move(fixed), eventSource(course, TaskRole::Target));
        draft.addLag(startOf(wanted), startOf(served), Gap::atLeast(Minutes{0}), servingSource());
    }
    return served;
}

/// Whether a later step of that variant comes after it.
bool isFollowed(const Making& making, std::size_t step, std::size_t variant)
{
    return std::ranges::any_of(making.steps, [&](const MadeStep& later) {
        return std::ranges::find(later.before, step) != later.before.end() &&
               std::ranges::find(later.variants, variant) != later.variants.end();
    });
}

bool isTied(const Problem& problem, const TaskPoint& from, const TaskPoint& to)
{
    return std::ranges::any_of(problem.lags, [&](const Lag& lag) {
        return lag.from == from && lag.to == to && lag.min && *lag.min >= Minutes{0};
    });
}

void addEnding(Evening& evening, std::size_t index, std::size_t step)
{
    const Making& making = evening.makings[index];
    const MadeStep& made = making.steps[step];
    std::vector<std::size_t> last;
    std::ranges::copy_if(made.variants, std::back_inserter(last),
                         [&](std::size_t variant) { return !isFollowed(making, step, variant); });
    const StepPoint end{made.step.id, StepEdge::End};
    for (const TiedPair& pair : tiedPairs(evening, index, end, StepPoint{}, last)) {
        if (!isTied(evening.draft.problem(), pair.from.point, pair.to.point)) {
            evening.draft.addLag(
                pair.from.point, pair.to.point, Gap::atLeast(Minutes{0}),
                orderSource(making, making.isPreparation ? Rule::Preparations : Rule::Serving));
        }
    }
}

} // namespace

void addServings(Evening& evening)
{
    FormulationDraft& draft = evening.draft;
    const Course* before = nullptr;
    for (const Course& course : evening.occasion().courses) {
        const TaskIndex served = addServing(evening, course);
        if (before != nullptr) {
            // Courses set closer together than eating takes are the cook's own wish.
            const Minutes apart = draft.calendar().planTime(course.serving) -
                                  draft.calendar().planTime(before->serving);
            draft.addLag(startOf(evening.servings.at(before->id)), startOf(served),
                         Gap::atLeast(std::min(before->atTable, apart)), servingSource());
        }
        before = &course;
        const auto& cooks = evening.kitchen().cooks;
        for (std::size_t i = 0; i < cooks.size(); ++i) {
            if (cooks[i].isHost && course.atTable > Minutes{0}) {
                draft.cook(CookIndex{i}).tableAfter.push_back({served, course.atTable});
            }
        }
    }
}

void addEndings(Evening& evening)
{
    for (std::size_t making = 0; making < evening.makings.size(); ++making) {
        for (std::size_t step = 0; step < evening.makings[making].steps.size(); ++step) {
            addEnding(evening, making, step);
        }
    }
}

} // namespace suppertide
