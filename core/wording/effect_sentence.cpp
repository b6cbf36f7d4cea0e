// What a way out changes: the steps that move, the ovens of the dishes that collided, and the
// figures of the plan, before and after.
#include <fmt/format.h>

#include <algorithm>

#include "core/wording/advice_wording.h"
#include "core/wording/phrases.h"

namespace suppertide {

namespace {

/// Of steps that move so many are named, the rest are counted.
constexpr std::size_t mostNamed = 2;

std::string shiftText(const MovedStep& step)
{
    const Minutes by = step.to - step.from;
    return fmt::format("{} {}", durationText(by < Minutes{0} ? -by : by),
                       by < Minutes{0} ? "earlier" : "later");
}

std::string movedText(const WayOut& way)
{
    if (!way.laidOut) {
        return {};
    }
    if (way.moved.empty()) {
        return "no step moves";
    }
    std::vector<std::string> named;
    for (std::size_t i = 0; i < std::min(mostNamed, way.moved.size()); ++i) {
        const TaskSource& source = way.plan->formulation->tasks[way.moved[i].task];
        named.push_back(quoted(deedOf(source)) + " " + shiftText(way.moved[i]));
    }
    if (way.moved.size() <= mostNamed) {
        return listed(named);
    }
    return fmt::format("{} steps move, most of all {}", way.moved.size(), listed(named));
}

/// The same demand of an oven after the change; by another method the dish may have another one.
std::optional<OvenDemandIndex> ovenAfter(const WayOut& way, OvenDemandIndex before)
{
    const Formulation& was = *way.laidOut->formulation;
    const Formulation& is = *way.plan->formulation;
    std::optional<OvenDemandIndex> ofDish;
    for (const OvenDemandIndex index : is.problem.ovenDemands.indices()) {
        if (!way.plan->schedule.ovens[index]) {
            continue;
        }
        if (is.problem.ovenDemands[index].id == was.problem.ovenDemands[before].id) {
            return index;
        }
        if (is.ovenDemands[index].dish == was.ovenDemands[before].dish) {
            ofDish = ofDish.value_or(index);
        }
    }
    return ofDish;
}

/// Where and when a dish that wanted the oven now has one, and at what.
std::string ovenText(const WayOut& way, OvenDemandIndex before, const ReadingStyle& style)
{
    const std::string& dish = way.laidOut->formulation->ovenDemands[before].dishName;
    const auto index = ovenAfter(way, before);
    if (!index) {
        return dish + " in no oven";
    }
    const Formulation& is = *way.plan->formulation;
    const OvenDemand& demand = is.problem.ovenDemands[*index];
    const OvenIndex oven = *way.plan->schedule.ovens[*index];
    const Interval held = *Timetable(is.problem, way.plan->schedule).held(demand.from, demand.to);
    std::optional<int> setC;
    for (const ProgramEntry& entry : way.plan->schedule.programs[oven]) {
        setC = entry.at < held.end ? entry.setC : setC;
    }
    const TimeReader reader(is, *way.after.occasion, style);
    return fmt::format("{} in {} {}{}", dish, theThing(is.ovenNames[oven]), reader.during(held),
                       setC ? " at " + temperatureText(*setC, style) : ", switched off");
}

std::string ovensText(const WayOut& way, const ReadingStyle& style)
{
    if (!way.clash || !way.laidOut) {
        return {};
    }
    std::vector<std::string> each;
    for (const auto& demand : way.clash->ovenDemands) {
        if (demand) {
            each.push_back(ovenText(way, *demand, style));
        }
    }
    return listed(each);
}

/// "40 min hands-on in the last hour (25 min before)".
void addFigure(std::vector<std::string>& figures, const std::string& now, const std::string& before,
               std::string_view what)
{
    if (before.empty()) {
        figures.push_back(fmt::format("{} {}", now, what));
    } else if (now != before) {
        figures.push_back(fmt::format("{} {} (so far {})", now, what, before));
    }
}

std::string figuresText(const WayOut& way)
{
    const PlanFigures& now = way.plan->figures;
    const PlanFigures* before = way.laidOut ? &way.laidOut->figures : nullptr;
    std::vector<std::string> figures;
    const auto add = [&](auto figure, std::string_view what) {
        addFigure(figures, figure(now), before ? figure(*before) : std::string{}, what);
    };
    add([](const PlanFigures& of) { return durationText(of.handsOnLastHour); },
        "hands-on in the last hour");
    add([](const PlanFigures& of) { return durationText(of.ovenOn); }, "with an oven on");
    return listed(figures);
}

} // namespace

std::string effectSentence(const WayOut& way, const ReadingStyle& style)
{
    std::string text;
    for (const std::string& part : {ovensText(way, style), movedText(way), figuresText(way)}) {
        if (!part.empty()) {
            text += (text.empty() ? "" : "; ") + part;
        }
    }
    return text.empty() ? text : capitalised(text) + ".";
}

} // namespace suppertide
