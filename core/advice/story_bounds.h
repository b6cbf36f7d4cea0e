// StoryBounds: earliest and latest starts by the requirements of a conflict: its lags, its windows
// and those of the servings it names, and, if asked for, the cooks' hours for those tasks whose
// hands it names. For core/advice only.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "core/advice/conflict_story.h"
#include "core/advice/requirement.h"

namespace suppertide {

class StoryBounds
{
public:
    /// The problem must outlive this.
    StoryBounds(const Formulation& formulation, const std::vector<Requirement>& conflict,
                bool withHours);

    [[nodiscard]] PlanTime earliest(TaskIndex task) const { return bounds_.at(task).earliest; }
    [[nodiscard]] PlanTime latest(TaskIndex task) const { return bounds_.at(task).latest; }
    /// A task that cannot begin in time, at the end of its chain, whatever is chosen.
    [[nodiscard]] std::optional<TaskIndex> late() const;
    /// How the task comes to begin no earlier, first reason first.
    [[nodiscard]] std::vector<StoryLeg> legsTo(TaskIndex task) const;
    /// Whether a window, and not only the plan's horizon, says when it is.
    [[nodiscard]] bool isDated(TaskIndex task) const { return bounds_.at(task).dated; }
    /// The option in which the task stands, if it does in one.
    [[nodiscard]] const std::string* optionOf(TaskIndex task) const;

private:
    struct Bound
    {
        PlanTime earliest;
        PlanTime latest;
        StoryLeg::Why earliestWhy = StoryLeg::Why::Window;
        StoryLeg::Why latestWhy = StoryLeg::Why::Window;
        std::optional<LagIndex> lag;   // Tie: by which earliest follows …
        std::optional<TaskIndex> from; // … from this task
        bool hands = false;
        bool dated = false;
    };
    struct Place
    {
        ChoiceIndex choice;
        OptionIndex option;
    };

    void add(const Formulation& formulation, TaskIndex task);
    void setWindow(TaskIndex task);
    void settle();
    bool pass();
    bool pushBy(LagIndex lag);
    bool push(TaskIndex from, TaskIndex to, Minutes gap, LagIndex lag);
    bool snap(TaskIndex task);
    /// Whether what holds for `from` holds for `to` as well, whatever is chosen.
    [[nodiscard]] bool reaches(TaskIndex from, TaskIndex to) const;
    [[nodiscard]] std::vector<Interval> openTo(TaskIndex task) const;
    [[nodiscard]] std::vector<Interval> freeTimes(const Cook& cook, const Task& task) const;
    [[nodiscard]] std::vector<CookIndex> comingAt(TaskIndex task, PlanTime time) const;

    const Problem& problem_;
    std::map<TaskIndex, Bound> bounds_;
    std::map<TaskIndex, Place> places_;
    std::vector<LagIndex> lags_;
};

} // namespace suppertide
