#include "tests/core/check/broken_text.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace suppertide::test {

namespace {

const char* nameOf(BrokenHow how)
{
    switch (how) {
    case BrokenHow::Missing:
        return "missing";
    case BrokenHow::NotPresent:
        return "not present";
    case BrokenHow::TooEarly:
        return "too early";
    case BrokenHow::TooLate:
        return "too late";
    case BrokenHow::BelowMin:
        return "below min";
    case BrokenHow::AboveMax:
        return "above max";
    case BrokenHow::OverCapacity:
        return "over capacity";
    case BrokenHow::TooSmall:
        return "too small";
    case BrokenHow::NotAllowed:
        return "not allowed";
    case BrokenHow::DoubleUse:
        return "double use";
    case BrokenHow::WrongNumber:
        return "wrong number";
    case BrokenHow::NoSkill:
        return "no skill";
    case BrokenHow::NotFree:
        return "not free";
    case BrokenHow::AtTable:
        return "at table";
    case BrokenHow::Overloaded:
        return "overloaded";
    case BrokenHow::OutOfRange:
        return "out of range";
    case BrokenHow::OtherOven:
        return "other oven";
    case BrokenHow::OtherMode:
        return "other mode";
    case BrokenHow::NotOff:
        return "not off";
    case BrokenHow::TooCold:
        return "too cold";
    case BrokenHow::TooHot:
        return "too hot";
    }
    return "";
}

std::string lineOf(const Problem& problem, const Broken& broken)
{
    std::string line =
        fmt::format("{} {} {}/{}", broken.name(), nameOf(broken.how), broken.asked, broken.allowed);
    if (broken.when) {
        line += fmt::format(" [{},{})", minuteOf(broken.when->start), minuteOf(broken.when->end));
    }
    std::vector<std::string> tasks;
    for (const TaskIndex task : broken.tasks) {
        tasks.push_back(problem.tasks[task].id);
    }
    line += tasks.empty() ? "" : fmt::format(" {}", fmt::join(tasks, ","));
    if (broken.cook) {
        line += " cook=" + problem.cooks[*broken.cook].id;
    }
    if (broken.oven) {
        line += " oven=" + problem.ovens[*broken.oven].id;
    }
    if (broken.ovenDemand) {
        line += " demand=" + problem.ovenDemands[*broken.ovenDemand].id;
    }
    if (broken.otherOvenDemand) {
        line += " with=" + problem.ovenDemands[*broken.otherOvenDemand].id;
    }
    return line;
}

} // namespace

Lines brokenIn(const Problem& problem, const Schedule& schedule)
{
    Lines lines;
    for (const Broken& broken : check(problem, schedule)) {
        lines.push_back(lineOf(problem, broken));
    }
    return lines;
}

} // namespace suppertide::test
