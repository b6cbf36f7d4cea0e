#include <fmt/format.h>

#include <algorithm>

#include "ui/models/scene_parts.h"

namespace suppertide::ui {

namespace {

std::string placeName(KeepPlace place)
{
    switch (place) {
    case KeepPlace::Nowhere:
        return {};
    case KeepPlace::Counter:
        return "counter";
    case KeepPlace::Fridge:
        return "fridge";
    case KeepPlace::Freezer:
        return "freezer";
    case KeepPlace::Warm:
        return "warm";
    }
    return {};
}

/// "potato gratin rests: least 10 min, most 30 min".
std::string waitLabel(const std::string& dish, const LagSource& source)
{
    const std::string what = source.text.empty() ? fmt::format("{} waits", dish)
                                                 : fmt::format("{} {}", dish, source.text);
    if (source.most) {
        return fmt::format("{}: least {}, most {}", what, durationText(source.least),
                           durationText(*source.most));
    }
    return fmt::format("{}: least {}", what, durationText(source.least));
}

/// The first clash of a wait's own kinds that names this lag.
std::optional<int> clashOf(const Plan& plan, LagIndex lag)
{
    for (std::size_t i = 0; i < plan.clashes.size(); ++i) {
        if (plan.clashes[i].lag == lag) {
            return static_cast<int>(i) + 1;
        }
    }
    return std::nullopt;
}

bool isByProduct(const LagSource& source)
{
    return source.rule == Rule::Preparations;
}

} // namespace

std::vector<SceneWait> waitsOf(const SceneContext& context)
{
    std::vector<SceneWait> waits;
    for (const LagIndex index : context.problem.lags.indices()) {
        const Lag& lag = context.problem.lags[index];
        const LagSource& source = context.formulation.lags[index];
        const auto from = context.places.times().time(lag.from);
        const auto to = context.places.times().time(lag.to);
        if (!source.wait || !from || !to || !context.places.isShown(lag.from.task)) {
            continue; // a mere order of steps, or the inner part of a wait with a choice of place
        }
        const bool endsAtServing = context.formulation.tasks[lag.to.task].role == TaskRole::Serving;
        if (!endsAtServing && !context.places.isShown(lag.to.task)) {
            continue;
        }
        SceneWait wait;
        wait.id = lag.id;
        wait.from = context.problem.tasks[lag.from.task].id;
        wait.to = endsAtServing ? std::string() : context.problem.tasks[lag.to.task].id;
        wait.when = {*from, std::max(*from, *to)};
        wait.least = source.least;
        wait.most = source.most;
        wait.label =
            waitLabel(inSentence(context.formulation.tasks[lag.from.task].dishName), source);
        wait.place = placeName(source.place);
        wait.isByProduct = isByProduct(source);
        wait.clash = clashOf(context.plan, index);
        waits.push_back(std::move(wait));
    }
    return waits;
}

std::vector<SceneSpan> spansOf(const SceneContext& context, const Scene& scene)
{
    std::vector<SceneSpan> spans;
    for (const HeldSpan& held : context.places.spans()) {
        const DemandSource& source = context.formulation.demands[held.demand];
        const std::string what =
            source.text.empty() ? fmt::format("{} held", source.thing) : source.text;
        spans.push_back({context.problem.demands[held.demand].id, held.lane,
                         dishOf(scene, context, source.dish), held.when,
                         fmt::format("{}, {}", what, durationText(held.when.length()))});
    }
    return spans;
}

std::vector<SceneServing> servingsOf(const SceneContext& context)
{
    std::vector<SceneServing> servings;
    int number = 0;
    for (const Course& course : context.source.occasion->courses) {
        ++number;
        const auto event = context.formulation.servings.find(course.id);
        std::optional<Interval> when;
        if (event != context.formulation.servings.end()) {
            when = context.places.times().interval(event->second);
        }
        const PlanTime wanted = context.formulation.calendar.planTime(course.serving);
        servings.push_back(
            {number, course.name, when ? when->start : wanted, course.isServingPinned});
    }
    return servings;
}

} // namespace suppertide::ui
