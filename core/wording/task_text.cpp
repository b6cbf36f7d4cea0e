// Steps in words: one for a list or a blind reader, and why one found no time.
#include <fmt/format.h>

#include <algorithm>

#include "core/wording/phrases.h"

namespace suppertide {

namespace {

std::string_view attentionText(const Task& task)
{
    const int percent = task.hands ? task.hands->attention.percent() : 0;
    // Cut-offs of the shapes on screen: 100 undivided, 60 to 99 hands-on, 1 to 59 keep an eye.
    if (percent >= 100) {
        return "undivided";
    }
    if (percent >= 60) {
        return "hands-on";
    }
    return percent > 0 ? "keep an eye" : "unattended";
}

template <typename Index, typename List>
std::optional<Index> indexOf(const List& list, std::string_view id)
{
    for (const Index index : list.indices()) {
        if (list[index].id == id) {
            return index;
        }
    }
    return std::nullopt;
}

std::string lagReason(const Formulation& formulation, LagIndex index)
{
    const LagSource& source = formulation.lags[index];
    if (!source.text.empty()) {
        const std::string most =
            source.most ? fmt::format(" at most {}", durationText(*source.most)) : std::string{};
        return fmt::format("“{}” takes at least {}{}{}", source.text, durationText(source.least),
                           most.empty() ? "" : ",", most);
    }
    const Lag& lag = formulation.problem.lags[index];
    return fmt::format("“{}” comes before “{}”", deedOf(formulation.tasks[lag.from.task]),
                       deedOf(formulation.tasks[lag.to.task]));
}

std::string reason(const Formulation& formulation, const std::string& name)
{
    const auto colon = name.find(':');
    const std::string_view kind = std::string_view(name).substr(0, colon);
    const std::string_view id =
        colon == std::string::npos ? std::string_view{} : std::string_view(name).substr(colon + 1);
    const Problem& problem = formulation.problem;
    if (kind == "lag") {
        const auto lag = indexOf<LagIndex>(problem.lags, id);
        return lag ? lagReason(formulation, *lag) : std::string{};
    }
    if (kind == "demand") {
        const auto demand = indexOf<DemandIndex>(problem.demands, id);
        return demand ? theThing(formulation.demands[*demand].thing) + " is taken" : std::string{};
    }
    if (kind == "oven") {
        return "no oven is free at the right heat";
    }
    if (kind == "hands") {
        return "no cook has a hand free";
    }
    if (kind == "window") {
        return "its hours are too narrow";
    }
    if (kind == "choice") {
        return "none of its methods fits";
    }
    return {};
}

} // namespace

std::string taskText(const Plan& plan, TaskIndex task, const ReadingStyle& style)
{
    const Formulation& formulation = *plan.formulation;
    std::string text = deedOf(formulation.tasks[task]);
    if (const auto when = Timetable(formulation.problem, plan.schedule).interval(task)) {
        const PlanCalendar& calendar = formulation.calendar;
        text += ", " + timeText(calendar, when->start, {}, style);
        if (!when->empty()) {
            text += " to " + timeText(calendar, when->end, calendar.civil(when->start).date, style);
        }
    }
    std::vector<std::string> cooks;
    for (const CookIndex cook : plan.schedule.cooks[task]) {
        cooks.push_back(formulation.cookNames[cook]);
    }
    if (!cooks.empty()) {
        text += ", " + listed(cooks);
    }
    return fmt::format("{}, {}.", text, attentionText(formulation.problem.tasks[task]));
}

std::string unplacedSentence(const Formulation& formulation, TaskIndex task,
                             const std::vector<std::string>& because)
{
    constexpr std::size_t mostReasons = 4;
    std::vector<std::string> reasons;
    for (const std::string& name : because) {
        std::string why = reason(formulation, name);
        if (!why.empty() && std::ranges::find(reasons, why) == reasons.end() &&
            reasons.size() < mostReasons) {
            reasons.push_back(std::move(why));
        }
    }
    const TaskSource& source = formulation.tasks[task];
    return fmt::format("No time was found for {}{}{}{}.", quoted(deedOf(source)),
                       source.dishName.empty() ? "" : " of " + theThing(source.dishName),
                       reasons.empty() ? "" : ": ", listed(reasons));
}

} // namespace suppertide
