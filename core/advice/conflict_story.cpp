#include "core/advice/conflict_story.h"

#include <algorithm>
#include <set>

#include "core/advice/requirement.h"
#include "core/advice/story_bounds.h"

namespace suppertide {

namespace {

class StoryTeller
{
public:
    StoryTeller(const Formulation& formulation, const std::vector<std::string>& conflict)
        : formulation_(formulation), problem_(formulation.problem),
          requirements_(requirementsOf(problem_, conflict)),
          bounds_(formulation, requirements_, false)
    {}

    ConflictStory tell()
    {
        const StoryBounds byHours(formulation_, requirements_, true);
        if (const auto late = byHours.late()) {
            story_.legs = byHours.legsTo(*late);
            story_.deadline = byHours.latest(*late);
        }
        for (const Requirement& requirement : requirements_) {
            std::visit(*this, requirement);
        }
        std::ranges::stable_sort(story_.items, {}, &StoryItem::earliest);
        // When nobody is there stands after what somebody would have to be there for.
        std::stable_partition(story_.items.begin(), story_.items.end(),
                              [this](const StoryItem& item) {
                                  return formulation_.tasks[item.task].role != TaskRole::Watch;
                              });
        findTogether();
        return std::move(story_);
    }

    void operator()(ChoiceIndex choice) { story_.choices.push_back(choice); }
    void operator()(const WindowOf& /*window*/) {}
    void operator()(LagIndex /*lag*/) {}
    void operator()(DemandIndex index)
    {
        const Demand& demand = problem_.demands[index];
        StoryItem item = itemOf(demand.from, demand.to);
        item.thing = index;
        story_.items.push_back(std::move(item));
    }
    void operator()(OvenDemandIndex index)
    {
        const OvenDemand& demand = problem_.ovenDemands[index];
        StoryItem item = itemOf(demand.from, demand.to);
        item.oven = index;
        story_.items.push_back(std::move(item));
    }
    void operator()(const HandsOf& hands)
    {
        StoryItem item = itemOf({hands.task, Edge::Start}, {hands.task, Edge::End});
        item.hands = true;
        story_.items.push_back(std::move(item));
    }

private:
    [[nodiscard]] PlanTime earliest(const TaskPoint& point) const
    {
        return bounds_.earliest(point.task) + offset(point);
    }
    [[nodiscard]] PlanTime latest(const TaskPoint& point) const
    {
        return bounds_.latest(point.task) + offset(point);
    }
    [[nodiscard]] Minutes offset(const TaskPoint& point) const
    {
        return point.edge == Edge::End ? problem_.tasks[point.task].duration : Minutes{0};
    }

    [[nodiscard]] StoryItem itemOf(const TaskPoint& from, const TaskPoint& to) const
    {
        StoryItem item;
        item.task = from.task;
        item.dated = bounds_.isDated(from.task);
        item.earliest = earliest(from);
        item.latest = latest(to);
        item.length = lengthOf(from, to);
        const Interval surely{latest(from), earliest(to)};
        if (item.dated && !surely.empty()) {
            item.surely = surely;
        }
        for (const TaskIndex task : {from.task, to.task}) {
            const std::string* option = bounds_.optionOf(task);
            const std::string name = option == nullptr ? "" : nameOfOption(task, *option);
            if (option != nullptr && std::ranges::find(item.options, name) == item.options.end()) {
                item.options.push_back(name);
            }
        }
        tie(item, from.task);
        tie(item, to.task);
        return item;
    }

    /// At least, by the lags of the conflict: the longest way from one point to the other.
    [[nodiscard]] Minutes lengthOf(const TaskPoint& from, const TaskPoint& to) const
    {
        std::map<TaskIndex, Minutes> away{{from.task, -offset(from)}};
        for (std::size_t pass = 0; pass <= requirements_.size(); ++pass) {
            bool isChanged = false;
            for (const Requirement& requirement : requirements_) {
                const auto* index = std::get_if<LagIndex>(&requirement);
                if (index == nullptr || !problem_.lags[*index].min) {
                    continue;
                }
                const Lag& lag = problem_.lags[*index];
                const auto known = away.find(lag.from.task);
                if (known == away.end()) {
                    continue;
                }
                const Minutes there = known->second + offset(lag.from) - offset(lag.to) + *lag.min;
                const auto [place, isNew] = away.try_emplace(lag.to.task, there);
                if (isNew || place->second < there) {
                    place->second = there;
                    isChanged = true;
                }
            }
            if (!isChanged) {
                break;
            }
        }
        const auto there = away.find(to.task);
        return there == away.end() ? Minutes{0} : std::max(Minutes{0}, there->second + offset(to));
    }

    /// Waits of the conflict that the item's task is tied by, along ties of one dish, up to what is
    /// served.
    void tie(StoryItem& item, TaskIndex start) const
    {
        std::set<TaskIndex> seen{start};
        std::vector<TaskIndex> open{start};
        while (!open.empty()) {
            const TaskIndex task = open.back();
            open.pop_back();
            if (formulation_.tasks[task].role == TaskRole::Serving) {
                item.serving = task;
                continue;
            }
            for (const Requirement& requirement : requirements_) {
                const auto* lag = std::get_if<LagIndex>(&requirement);
                if (lag == nullptr) {
                    continue;
                }
                const TaskIndex from = problem_.lags[*lag].from.task;
                const TaskIndex to = problem_.lags[*lag].to.task;
                if (from != task && to != task) {
                    continue;
                }
                if (formulation_.lags[*lag].wait &&
                    std::ranges::find(item.waits, *lag) == item.waits.end()) {
                    item.waits.push_back(*lag);
                }
                const TaskIndex other = from == task ? to : from;
                if (seen.insert(other).second) {
                    open.push_back(other);
                }
            }
        }
    }

    [[nodiscard]] std::string nameOfOption(TaskIndex task, const std::string& id) const
    {
        for (const ChoiceIndex choice : problem_.choices.indices()) {
            const auto& options = problem_.choices[choice].options;
            for (const OptionIndex option : options.indices()) {
                if (options[option].id == id &&
                    std::ranges::find(options[option].tasks, task) != options[option].tasks.end()) {
                    return formulation_.choices[choice].optionNames[option.value()];
                }
            }
        }
        return id;
    }

    void findTogether()
    {
        std::optional<Interval> all;
        for (const StoryItem& item : story_.items) {
            if (!item.surely || !item.options.empty()) {
                return;
            }
            all = all ? all->common(*item.surely) : *item.surely;
        }
        if (story_.items.size() > 1 && all && !all->empty()) {
            story_.together = all;
        }
    }

    const Formulation& formulation_;
    const Problem& problem_;
    std::vector<Requirement> requirements_;
    StoryBounds bounds_;
    ConflictStory story_;
};

} // namespace

ConflictStory storyOf(const Formulation& formulation, const std::vector<std::string>& conflict)
{
    return StoryTeller(formulation, conflict).tell();
}

} // namespace suppertide
