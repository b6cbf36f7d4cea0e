#include "core/plan/tied_points.h"

#include <algorithm>

namespace suppertide {

namespace {

template <typename T>
void share(std::vector<SharedTie<T>>& shared, const std::vector<T>& ties,
           const std::optional<MethodKey>& method, std::size_t variant)
{
    for (const T& tie : ties) {
        const auto same = std::ranges::find_if(shared, [&](const SharedTie<T>& other) {
            return other.tie == tie && other.method == method;
        });
        if (same == shared.end()) {
            shared.push_back({tie, method, {variant}});
        } else {
            same->variants.push_back(variant);
        }
    }
}

template <typename T>
std::vector<SharedTie<T>> sharedTies(const Making& making, std::vector<T> RecipePart::*list)
{
    std::vector<SharedTie<T>> shared;
    for (std::size_t variant = 0; variant < making.variants.size(); ++variant) {
        const ResolvedRecipe& recipe = making.variants[variant].recipe;
        share(shared, recipe.part.*list, std::nullopt, variant);
        for (const MethodChoice& choice : recipe.methods) {
            const bool isOpen = std::ranges::find(making.choices, choice.id, &MethodChoice::id) !=
                                making.choices.end();
            for (const Method& method : choice.methods) {
                share(shared, method.part.*list,
                      isOpen ? std::optional(MethodKey{choice.id, method.id}) : std::nullopt,
                      variant);
            }
        }
    }
    return shared;
}

std::vector<Tied> servingPoints(const Evening& evening, std::size_t index,
                                const std::vector<std::size_t>& variants)
{
    const Making& making = evening.makings[index];
    const PortionShare share = making.shareOf(variants);
    if (!making.isPreparation) {
        return {{startOf(evening.servings.at(making.course->id)), share, std::nullopt}};
    }
    std::vector<Tied> points;
    for (const Consumer& consumer : making.consumers) {
        points.push_back({evening.batchTasks(consumer.making, consumer.batch).start(),
                          consumer.share.common(share), std::nullopt});
    }
    return points;
}

/// Batches of two methods of one choice.
bool areApart(const Making& making, const Tied& one, const Tied& other)
{
    return one.batch && other.batch &&
           !areCompatible(making.steps[making.batches[*one.batch].step].method,
                          making.steps[making.batches[*other.batch].step].method);
}

} // namespace

std::vector<SharedTie<Wait>> sharedWaits(const Making& making)
{
    return sharedTies(making, &RecipePart::waits);
}

std::vector<SharedTie<Span>> sharedSpans(const Making& making)
{
    return sharedTies(making, &RecipePart::spans);
}

std::vector<Tied> tiedTo(const Evening& evening, std::size_t index, const StepPoint& point,
                         const std::vector<std::size_t>& variants)
{
    if (!point.step) {
        return servingPoints(evening, index, variants);
    }
    const Making& making = evening.makings[index];
    std::vector<std::size_t> steps;
    for (const std::size_t variant : variants) {
        for (const std::size_t step : making.stepsNamed(variant, *point.step)) {
            if (std::ranges::find(steps, step) == steps.end()) {
                steps.push_back(step);
            }
        }
    }
    const PortionShare share = making.shareOf(variants);
    std::vector<Tied> points;
    for (const std::size_t step : steps) {
        for (const std::size_t batch : making.steps[step].batches) {
            const BatchTasks& tasks = evening.batchTasks(index, batch);
            points.push_back({point.edge == StepEdge::Start ? tasks.start() : tasks.end(),
                              making.batches[batch].share.common(share), batch});
        }
    }
    return points;
}

std::vector<TiedPair> tiedPairs(const Evening& evening, std::size_t making, const StepPoint& from,
                                const StepPoint& to, const std::vector<std::size_t>& variants)
{
    std::vector<TiedPair> pairs;
    const std::vector<Tied> ends = tiedTo(evening, making, to, variants);
    for (const Tied& start : tiedTo(evening, making, from, variants)) {
        for (const Tied& end : ends) {
            const Portions portions = start.share.common(end.share).total();
            if (areApart(evening.makings[making], start, end)) {
                continue;
            }
            if (portions > Portions{0} && start.point != end.point) {
                pairs.push_back({start, end, portions});
            }
        }
    }
    return pairs;
}

TaskPoint conditional(Evening& evening, std::size_t making, const std::optional<MethodKey>& method,
                      const TaskPoint& point, const TaskPoint& other)
{
    if (!method) {
        return point;
    }
    FormulationDraft& draft = evening.draft;
    const OptionRef option = *evening.optionFor(making, method);
    if (draft.optionOf(point.task) == option || draft.optionOf(other.task) == option) {
        return point;
    }
    TaskSource source = draft.formulation().tasks[point.task];
    source.role = TaskRole::Mark;
    source.rule = Rule::Waits;
    const std::string id = draft.problem().tasks[point.task].id + "@" + method->method.text();
    const TaskIndex mark = draft.addEvent(id, std::move(source));
    evening.place(mark, option);
    draft.addLag(point, startOf(mark), Gap::none(),
                 orderSource(evening.makings[making], Rule::Waits));
    return startOf(mark);
}

} // namespace suppertide
