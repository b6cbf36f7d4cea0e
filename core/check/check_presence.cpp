// Choices, starts and windows: is everything decided, and at a time that is allowed?
#include "core/check/judges.h"

namespace suppertide {

Verdict judgeChoice(const Evidence& evidence, ChoiceIndex choice)
{
    if (evidence.schedule().options[choice]) {
        return {};
    }
    Broken broken{BrokenKind::Choice, BrokenHow::Missing, evidence.problem().choices[choice].id};
    for (const Option& option : evidence.problem().choices[choice].options) {
        broken.tasks.insert(broken.tasks.end(), option.tasks.begin(), option.tasks.end());
    }
    return {std::move(broken)};
}

Verdict judgeStart(const Evidence& evidence, TaskIndex task)
{
    const auto& start = evidence.schedule().starts[task];
    const bool isPresent = evidence.times().isPresent(task);
    if (isPresent == start.has_value()) {
        return {};
    }
    const Task& what = evidence.problem().tasks[task];
    Broken broken{BrokenKind::Start, isPresent ? BrokenHow::Missing : BrokenHow::NotPresent,
                  what.id};
    broken.tasks = {task};
    if (start) {
        broken.when = Interval{*start, *start + what.duration};
    }
    return {std::move(broken)};
}

Verdict judgeWindow(const Evidence& evidence, TaskIndex task)
{
    const auto when = evidence.times().interval(task);
    const Task& what = evidence.problem().tasks[task];
    if (!when || what.window.contains(*when)) {
        return {};
    }
    Verdict verdict;
    if (when->start < what.window.start) {
        Broken early{BrokenKind::Window, BrokenHow::TooEarly, what.id, {task}};
        early.when = Interval{when->start, what.window.start};
        early.asked = minuteOf(when->start);
        early.allowed = minuteOf(what.window.start);
        verdict.push_back(std::move(early));
    }
    if (when->end > what.window.end) {
        Broken late{BrokenKind::Window, BrokenHow::TooLate, what.id, {task}};
        late.when = Interval{what.window.end, when->end};
        late.asked = minuteOf(when->end);
        late.allowed = minuteOf(what.window.end);
        verdict.push_back(std::move(late));
    }
    return verdict;
}

} // namespace suppertide
