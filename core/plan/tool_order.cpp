#include "core/plan/tool_order.h"

#include <algorithm>
#include <set>

#include "core/problem/timetable.h"
#include "core/safety/kitchen_hygiene.h"

namespace suppertide {

namespace {

class ToolUses
{
public:
    ToolUses(const Formulation& formulation, const PlanInput& input, const Schedule& schedule)
        : formulation_(formulation), input_(input), schedule_(schedule),
          times_(formulation.problem, schedule)
    {}

    std::vector<ToolConflict> find()
    {
        for (const DemandIndex index : formulation_.problem.demands.indices()) {
            addUse(index);
        }
        markWashed();
        std::vector<ToolConflict> conflicts;
        for (const safety::HygieneFinding& finding : safety::judgeToolUses(uses_)) {
            conflicts.push_back({names_[finding.later], tasks_[finding.earlier],
                                 tasks_[finding.later], finding.rule, finding.substances});
        }
        return conflicts;
    }

private:
    void addUse(DemandIndex index)
    {
        const Demand& demand = formulation_.problem.demands[index];
        const auto& unit = schedule_.units[index];
        const auto when = times_.held(demand.from, demand.to);
        if (!demand.pool || !unit || !when) {
            return;
        }
        const ResourceSource& thing = formulation_.pools[*demand.pool];
        if (thing.kind != ResourceKind::Vessel && thing.kind != ResourceKind::Appliance) {
            return;
        }
        safety::ToolUse use;
        use.tool = formulation_.problem.pools[*demand.pool].id + "/" +
                   formulation_.problem.pools[*demand.pool].units[*unit].id;
        use.at = when->start;
        const TaskIndex task = demand.from.task;
        addFood(task, use);
        use.contains = formulation_.tasks[task].contains;
        use.mustBeFree = avoidedBy(task);
        uses_.push_back(std::move(use));
        tasks_.push_back(task);
        names_.push_back(thing.name);
        ends_.push_back(when->end);
        const bool isWashed = formulation_.tasks[demand.to.task].role == TaskRole::Washing;
        isWashedAfter_.push_back(isWashed);
    }

    /// Washed after all that came before it in that tool.
    void markWashed()
    {
        for (std::size_t later = 0; later < uses_.size(); ++later) {
            std::optional<std::size_t> last;
            for (std::size_t i = 0; i < uses_.size(); ++i) {
                const bool isBefore =
                    i != later && uses_[i].tool == uses_[later].tool && ends_[i] <= uses_[later].at;
                if (isBefore && (!last || ends_[i] > ends_[*last])) {
                    last = i;
                }
            }
            uses_[later].isWashedBefore = last && isWashedAfter_[*last];
        }
    }

    /// What the step's followed food is then, and whether heat is still to come.
    void addFood(TaskIndex task, safety::ToolUse& use) const
    {
        for (const TrackedFood& food : formulation_.foods) {
            FoodClass now = food.kind.food;
            bool isMet = false;
            bool isHeatedLater = false;
            for (const FoodStage& stage : food.stages) {
                if (!schedule_.starts[stage.first]) {
                    continue;
                }
                const bool isHot = makesHot(stage.does.treatment);
                if (stage.first == task) {
                    isMet = true;
                    use.food = now;
                }
                isHeatedLater = isHeatedLater || (isMet && isHot);
                now = stage.does.becomes.value_or(isHot ? cooked(now) : now);
            }
            if (isMet) {
                use.isReadyToEat = !isRawAnimal(use.food) && !isHeatedLater && food.isEaten;
                return;
            }
        }
    }

    /// Of those who are said to eat these portions, as far as the portions are free of it. A
    /// preparation's eaters are not known.
    [[nodiscard]] std::vector<Substance> avoidedBy(TaskIndex task) const
    {
        const TaskSource& source = formulation_.tasks[task];
        std::set<Substance> avoided;
        for (const Course& course : input_.occasion->courses) {
            for (const Dish& dish : course.dishes) {
                if (source.dish == dish.id && source.recipe == dish.recipe) {
                    addAvoided(dish, source, avoided);
                }
            }
        }
        for (const Substance substance : source.contains) {
            avoided.erase(substance);
        }
        return {avoided.begin(), avoided.end()};
    }

    void addAvoided(const Dish& dish, const TaskSource& source, std::set<Substance>& avoided) const
    {
        for (const MixEntry& entry : dish.mix) {
            if (std::ranges::find(source.variants, entry.variant) == source.variants.end()) {
                continue;
            }
            for (const Guest& guest : input_.occasion->guests) {
                if (std::ranges::find(entry.guests, guest.id) != entry.guests.end()) {
                    const std::vector<Substance> each = suppertide::avoidedBy(guest);
                    avoided.insert(each.begin(), each.end());
                }
            }
        }
    }

    const Formulation& formulation_;
    const PlanInput& input_;
    const Schedule& schedule_;
    Timetable times_;
    std::vector<safety::ToolUse> uses_;
    std::vector<TaskIndex> tasks_; // parallel to uses_, as the following
    std::vector<std::string> names_;
    std::vector<PlanTime> ends_;
    std::vector<bool> isWashedAfter_;
};

} // namespace

std::vector<ToolConflict> toolConflicts(const Formulation& formulation, const PlanInput& input,
                                        const Schedule& schedule)
{
    return ToolUses(formulation, input, schedule).find();
}

} // namespace suppertide
