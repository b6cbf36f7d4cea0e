#include "core/wording/phrases.h"

#include <fmt/format.h>

#include <algorithm>

namespace suppertide {

namespace {

bool isSmall(char letter)
{
    return letter >= 'a' && letter <= 'z';
}

bool isLarge(char letter)
{
    return letter >= 'A' && letter <= 'Z';
}

/// Whether the first word is somebody's ("Bea's", "Bea’s"), and so keeps its capital.
bool isPossessive(std::string_view name)
{
    const std::string_view word = name.substr(0, name.find(' '));
    return word.ends_with("'s") || word.ends_with("’s");
}

} // namespace

std::string listed(const std::vector<std::string>& things)
{
    std::vector<std::string> each;
    for (const std::string& thing : things) {
        if (!thing.empty() && std::ranges::find(each, thing) == each.end()) {
            each.push_back(thing);
        }
    }
    std::string result;
    for (std::size_t i = 0; i < each.size(); ++i) {
        if (i > 0) {
            result += i + 1 == each.size() ? " and " : ", ";
        }
        result += each[i];
    }
    return result;
}

std::string counted(std::int64_t count, std::string_view one, std::string_view many)
{
    return fmt::format("{} {}", count, count == 1 ? one : many);
}

std::string theThing(const std::string& name)
{
    if (name.empty()) {
        return "it";
    }
    std::string small = name;
    if (small.size() > 1 && isLarge(small[0]) && !isLarge(small[1]) && !isPossessive(small)) {
        small[0] = static_cast<char>(small[0] - 'A' + 'a');
    }
    return isPossessive(small) ? small : "the " + small;
}

bool isPlural(const std::string& name)
{
    // What comes after these tells more of the thing, not another thing.
    std::string_view thing = name;
    for (const std::string_view more : {" of ", " in ", " with ", " on ", " for ", ", ", " ("}) {
        thing = thing.substr(0, thing.find(more));
    }
    const bool isSingular = thing.ends_with("ss") || thing.ends_with("us") || thing.ends_with("is");
    return (thing.ends_with('s') && !isSingular) || name.find(" and ") != std::string::npos;
}

std::string ofSeveral(const std::string& verb)
{
    const auto end = verb.find(' ');
    const std::string first = verb.substr(0, end);
    const std::string rest = end == std::string::npos ? std::string{} : verb.substr(end);
    if (first == "is") {
        return "are" + rest;
    }
    if (first == "does") {
        return "do" + rest;
    }
    if (const auto its = rest.find(" its "); its != std::string::npos) {
        return ofSeveral(first) + rest.substr(0, its) + " their " + rest.substr(its + 5);
    }
    return first.ends_with('s') ? first.substr(0, first.size() - 1) + rest : verb;
}

std::string capitalised(std::string text)
{
    if (!text.empty() && isSmall(text[0])) {
        text[0] = static_cast<char>(text[0] - 'a' + 'A');
    }
    return text;
}

std::string quoted(const std::string& text)
{
    return "“" + text + "”";
}

std::string deedOf(const TaskSource& task)
{
    if (!task.text.empty()) {
        return task.text;
    }
    const std::string dish = theThing(task.dishName);
    const std::string name = task.dishName.empty() ? "It" : task.dishName;
    switch (task.role) {
    case TaskRole::OvenIn:
        return name + " into the oven";
    case TaskRole::OvenOut:
        return name + " out of the oven";
    case TaskRole::Turn:
        return "Turn " + dish;
    case TaskRole::Washing:
        return "Wash up after " + dish;
    case TaskRole::Serving:
    case TaskRole::Target:
        return "Serve " + dish;
    case TaskRole::Step:
    case TaskRole::HouseJob:
    case TaskRole::Trip:
    case TaskRole::KeepFrom:
    case TaskRole::KeepTo:
    case TaskRole::TakeFrom:
    case TaskRole::Watch:
    case TaskRole::OvenSetting:
    case TaskRole::Mark:
        break;
    }
    if (!task.verb.empty()) {
        return task.dishName.empty() ? task.verb : task.verb + " " + dish;
    }
    return task.dishName.empty() ? "A step" : task.dishName;
}

std::string dishNameOf(const Formulation& formulation, const DishId& dish)
{
    for (const TaskSource& task : formulation.tasks) {
        if (task.dish == dish && !task.dishName.empty()) {
            return task.dishName;
        }
    }
    return {};
}

TimeReader::TimeReader(const Plan& plan, const Occasion& occasion, ReadingStyle style)
    : TimeReader(*plan.formulation, occasion, style)
{}

TimeReader::TimeReader(const Formulation& formulation, const Occasion& occasion, ReadingStyle style)
    : calendar_(formulation.calendar), style_(style)
{
    if (!occasion.courses.empty()) {
        day_ = occasion.courses.front().serving.date;
    }
}

std::string TimeReader::at(PlanTime time) const
{
    return timeText(calendar_, time, day_, style_);
}

std::string TimeReader::range(const Interval& when) const
{
    return at(when.start) + " to " +
           timeText(calendar_, when.end, calendar_.civil(when.start).date, style_);
}

std::string TimeReader::during(const Interval& when) const
{
    return when.empty() ? "at " + at(when.start) : "from " + range(when);
}

} // namespace suppertide
