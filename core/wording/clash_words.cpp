#include "core/wording/clash_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace suppertide {

std::string ClashWords::dishes() const
{
    std::vector<std::string> names;
    for (const TaskIndex task : clash_.tasks) {
        const TaskSource& source = formulation_.tasks[task];
        names.push_back(source.dishName.empty() ? quoted(deedOf(source))
                                                : theThing(source.dishName));
    }
    return names.empty() ? "what is cooked" : listed(names);
}

std::string ClashWords::deeds() const
{
    std::vector<std::string> names;
    for (const TaskIndex task : clash_.tasks) {
        std::string name = quoted(deedOf(formulation_.tasks[task]));
        if (std::ranges::find(names, name) == names.end()) {
            names.push_back(std::move(name));
        }
    }
    constexpr std::size_t mostNamed = 4;
    if (names.size() > mostNamed) {
        const std::size_t more = names.size() - (mostNamed - 1);
        names.resize(mostNamed - 1);
        names.push_back(fmt::format("{} more", more));
    }
    return names.empty() ? "what is to be done" : listed(names);
}

std::size_t ClashWords::mostAtOnce() const
{
    const Timetable timetable(formulation_.problem, plan_.schedule);
    std::vector<Interval> intervals;
    for (const TaskIndex task : clash_.tasks) {
        if (const auto when = timetable.interval(task); when && !when->empty()) {
            intervals.push_back(*when);
        }
    }
    std::size_t most = 0;
    for (const Interval& each : intervals) {
        const auto here = std::ranges::count_if(
            intervals, [&](const Interval& other) { return other.contains(each.start); });
        most = std::max(most, static_cast<std::size_t>(here));
    }
    return most;
}

std::string ClashWords::fromTo() const
{
    return clash_.when ? capitalised(times_.during(*clash_.when)) + " " : std::string{};
}

std::string ClashWords::oven() const
{
    return clash_.oven ? theThing(formulation_.ovenNames[*clash_.oven]) : "the oven";
}

std::string ClashWords::cook() const
{
    return clash_.cook ? formulation_.cookNames[*clash_.cook] : std::string{};
}

std::string ClashWords::thing() const
{
    if (clash_.pool) {
        return formulation_.pools[*clash_.pool].name;
    }
    return clash_.count ? formulation_.counts[*clash_.count].name : "what is wanted";
}

const Course* ClashWords::findCourse() const
{
    const auto found = std::ranges::find_if(
        occasion_.courses, [this](const Course& each) { return each.id == clash_.course; });
    return found == occasion_.courses.end() ? nullptr : &*found;
}

std::string ClashWords::course() const
{
    const Course* found = findCourse();
    return found == nullptr ? "the course" : theThing(found->name);
}

std::string ClashWords::guest() const
{
    const auto found = std::ranges::find_if(
        occasion_.guests, [this](const Guest& each) { return each.id == clash_.guest; });
    return found == occasion_.guests.end() ? "somebody" : found->name;
}

std::string ClashWords::dish() const
{
    std::optional<DishId> dish = clash_.dish;
    if (!dish && clash_.lag) {
        dish = formulation_.lags[*clash_.lag].dish;
    }
    if (dish) {
        const std::string name = dishNameOf(formulation_, *dish);
        return theThing(name.empty() ? dish->text() : name);
    }
    return dishes();
}

std::string ClashWords::ovenDish(OvenDemandIndex demand) const
{
    const std::string& name = formulation_.ovenDemands[demand].dishName;
    return name.empty() ? "what is in it" : theThing(name);
}

std::string ClashWords::wanted(OvenDemandIndex demand) const
{
    const OvenDemand& oven = formulation_.problem.ovenDemands[demand];
    const ReadingStyle& style = times_.style();
    if (oven.mode == modeOff) {
        return "switched off";
    }
    if (clash_.isMode) {
        return oven.mode ? "on “" + *oven.mode + "”" : "on";
    }
    if (oven.prefer) {
        return "at " + temperatureText(*oven.prefer, style);
    }
    if (oven.acceptLow == oven.acceptHigh) {
        return "at " + temperatureText(oven.acceptLow, style);
    }
    return "at " + temperatureText(oven.acceptLow, style) + " to " +
           temperatureText(oven.acceptHigh, style);
}

std::optional<Interval> ClashWords::gapOf(const Lag& lag) const
{
    const Timetable timetable(formulation_.problem, plan_.schedule);
    const auto from = timetable.time(lag.from);
    const auto to = timetable.time(lag.to);
    return from && to ? std::optional{Interval{*from, *to}} : std::nullopt;
}

std::optional<Interval> ClashWords::intervalOf(TaskIndex task) const
{
    return Timetable(formulation_.problem, plan_.schedule).interval(task);
}

} // namespace suppertide
