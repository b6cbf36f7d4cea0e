// Phrases: the pieces that sentences are made of: lists, a dish in the middle of a sentence, a
// stretch of time. For core/wording and core/sheet only.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/plan/plan.h"
#include "core/problem/timetable.h"
#include "core/wording/wording.h"

namespace suppertide {

/// "a", "a and b", "a, b and c"; empty for none. Each once, in order of first mention.
[[nodiscard]] std::string listed(const std::vector<std::string>& things);
/// "3 shelves", "1 shelf".
[[nodiscard]] std::string counted(std::int64_t count, std::string_view one, std::string_view many);
/// "Roast roots" → "the roast roots"; "Bea's tart" and "BBQ sauce" keep their capital.
[[nodiscard]] std::string theThing(const std::string& name);
/// Whether a name is of several things: "creams", "eggs in mustard", but not "couscous".
[[nodiscard]] bool isPlural(const std::string& name);
/// "is kept for" → "are kept for", "stands for" → "stand for": a verb of one thing for several.
[[nodiscard]] std::string ofSeveral(const std::string& verb);
/// First letter large, where it is a plain one.
[[nodiscard]] std::string capitalised(std::string text);
/// “Slice the potatoes”.
[[nodiscard]] std::string quoted(const std::string& text);

/// What a task is, for a list: the deed in full, or the plainest words that its role has.
[[nodiscard]] std::string deedOf(const TaskSource& task);
/// The name of a dish as its tasks have it; empty if none has.
[[nodiscard]] std::string dishNameOf(const Formulation& formulation, const DishId& dish);

/// Times as read on one day; other days are named.
class TimeReader
{
public:
    TimeReader(const Plan& plan, const Occasion& occasion, ReadingStyle style);
    TimeReader(const Formulation& formulation, const Occasion& occasion, ReadingStyle style);

    [[nodiscard]] std::string at(PlanTime time) const;
    /// "from 17:40 to 18:10"; "at 17:40" if empty. The end's day is named only if it is another.
    [[nodiscard]] std::string during(const Interval& when) const;
    /// "17:40 to 18:10".
    [[nodiscard]] std::string range(const Interval& when) const;
    [[nodiscard]] const ReadingStyle& style() const { return style_; }

private:
    PlanCalendar calendar_;
    std::optional<CivilDate> day_;
    ReadingStyle style_;
};

} // namespace suppertide
