#include "core/plan/tool_order.h"

#include <algorithm>
#include <set>

#include "core/plan/clash_finder.h"
#include "core/problem/timetable.h"
#include "core/safety/kitchen_hygiene.h"

namespace suppertide {

namespace {

/// What is known of a use whenever it is.
struct KnownUse
{
    DemandIndex demand;
    TaskIndex task; // that uses it; not the washing before
    AvoidedIn avoided;
    bool isWashedBefore = false;
    bool isWashedAfter = false;
};

/// One use under a schedule.
struct UseAt
{
    const KnownUse* known = nullptr;
    PlanTime end{};
};

} // namespace

namespace {

void addAvoided(const Occasion& occasion, const Dish& dish, const TaskSource& source,
                std::set<Substance>& any, std::set<Substance>& forHealth)
{
    for (const MixEntry& entry : dish.mix) {
        if (std::ranges::find(source.variants, entry.variant) == source.variants.end()) {
            continue;
        }
        for (const Guest& guest : occasion.guests) {
            if (std::ranges::find(entry.guests, guest.id) == entry.guests.end()) {
                continue;
            }
            for (const Substance substance : avoidedBy(guest)) {
                any.insert(substance);
                if (isDangerous(guest, substance)) {
                    forHealth.insert(substance);
                }
            }
        }
    }
}

} // namespace

AvoidedIn avoidedIn(const TaskSource& source, const Occasion& occasion)
{
    std::set<Substance> any;
    std::set<Substance> forHealth;
    for (const Course& course : occasion.courses) {
        for (const Dish& dish : course.dishes) {
            if (source.dish == dish.id && source.recipe == dish.recipe) {
                addAvoided(occasion, dish, source, any, forHealth);
            }
        }
    }
    for (const Substance substance : source.contains) {
        any.erase(substance);
    }
    return {{any.begin(), any.end()}, {forHealth.begin(), forHealth.end()}};
}

class ToolOrder::Uses
{
public:
    Uses(const Formulation& formulation, const PlanInput& input)
        : formulation_(formulation), occasion_(input.occasion)
    {
        for (const DemandIndex index : formulation.problem.demands.indices()) {
            addKnown(index);
        }
    }

    [[nodiscard]] std::vector<Clash> clashes(const Schedule& schedule) const
    {
        const Timetable times(formulation_.problem, schedule);
        std::vector<safety::ToolUse> uses;
        std::vector<UseAt> at; // parallel
        for (const KnownUse& known : known_) {
            const Demand& demand = formulation_.problem.demands[known.demand];
            const auto unit = schedule.units[known.demand];
            const auto when = times.held(demand.from, demand.to);
            if (!unit || !when) {
                continue;
            }
            safety::ToolUse& use = uses.emplace_back();
            const Pool& pool = formulation_.problem.pools[*demand.pool];
            use.tool = pool.id + "/" + pool.units[*unit].id;
            use.at = when->start;
            addFood(known.task, schedule, use);
            use.contains = formulation_.tasks[known.task].contains;
            use.mustBeFree = known.avoided.any;
            at.push_back({&known, when->end});
        }
        markWashed(uses, at);
        std::vector<Clash> clashes;
        for (const safety::HygieneFinding& finding : safety::judgeToolUses(uses)) {
            Clash clash = clashOf(finding, *at[finding.earlier].known, *at[finding.later].known);
            const PlanTime start = uses[finding.later].at;
            clash.when = Interval{start, std::max(start, at[finding.later].end)};
            if (std::ranges::find(clashes, clash.broken, &Clash::broken) == clashes.end()) {
                clashes.push_back(std::move(clash));
            }
        }
        return clashes;
    }

private:
    void addKnown(DemandIndex index)
    {
        const Demand& demand = formulation_.problem.demands[index];
        const bool isTool =
            demand.pool && (formulation_.pools[*demand.pool].kind == ResourceKind::Vessel ||
                            formulation_.pools[*demand.pool].kind == ResourceKind::Appliance);
        if (!isTool) {
            return;
        }
        KnownUse known;
        known.demand = index;
        const auto& washedFor = formulation_.demands[index].washedFor;
        known.task = washedFor.value_or(demand.from.task);
        known.isWashedBefore = washedFor.has_value();
        known.isWashedAfter = formulation_.tasks[demand.to.task].role == TaskRole::Washing;
        known.avoided = avoidedIn(formulation_.tasks[known.task], *occasion_);
        known_.push_back(std::move(known));
    }

    [[nodiscard]] Clash clashOf(const safety::HygieneFinding& found, const KnownUse& earlier,
                                const KnownUse& later) const
    {
        const Demand& demand = formulation_.problem.demands[later.demand];
        Clash clash;
        clash.kind = ClashKind::UnwashedTool;
        const bool isHarmful = found.substances.empty() ||
                               std::ranges::any_of(found.substances, [&](Substance substance) {
                                   return std::ranges::find(later.avoided.forHealth, substance) !=
                                          later.avoided.forHealth.end();
                               });
        clash.severity = found.weight == safety::Weight::Unsafe && isHarmful
                             ? severityOf(clash.kind)
                             : Severity::Undesirable;
        clash.tasks = {earlier.task, later.task};
        clash.pool = demand.pool;
        clash.demand = later.demand;
        clash.course = formulation_.tasks[later.task].course;
        clash.dish = formulation_.tasks[later.task].dish;
        clash.substances = found.substances;
        safety::Finding finding;
        finding.rule = found.rule;
        finding.weight = found.weight;
        finding.remedies = found.remedies;
        clash.finding = std::move(finding);
        clash.broken = {"tool:" + formulation_.problem.pools[*demand.pool].id + ":" +
                        formulation_.problem.tasks[earlier.task].id + ":" +
                        formulation_.problem.tasks[later.task].id + ":" + found.rule};
        return clash;
    }

    /// Washed after all that came before it in that tool.
    static void markWashed(std::vector<safety::ToolUse>& uses, const std::vector<UseAt>& at)
    {
        for (std::size_t later = 0; later < uses.size(); ++later) {
            std::optional<std::size_t> last;
            for (std::size_t i = 0; i < uses.size(); ++i) {
                const bool isBefore =
                    i != later && uses[i].tool == uses[later].tool && at[i].end <= uses[later].at;
                if (isBefore && (!last || at[i].end > at[*last].end)) {
                    last = i;
                }
            }
            uses[later].isWashedBefore =
                at[later].known->isWashedBefore || (last && at[*last].known->isWashedAfter);
        }
    }

    /// What the step's followed food is then, and whether heat is still to come. In a tool in which
    /// raw food gets hot none is left raw: the tool gets as hot.
    void addFood(TaskIndex task, const Schedule& schedule, safety::ToolUse& use) const
    {
        for (const TrackedFood& food : formulation_.foods) {
            FoodClass now = food.kind.food;
            bool isMet = false;
            bool isHeatedLater = false;
            for (const FoodStage& stage : food.stages) {
                if (!schedule.starts[stage.first]) {
                    continue;
                }
                const bool isHot = makesHot(stage.does.treatment);
                if (stage.first == task) {
                    isMet = true;
                    use.food = isHot ? cooked(now) : now;
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

    const Formulation& formulation_;
    std::shared_ptr<const Occasion> occasion_;
    std::vector<KnownUse> known_;
};

ToolOrder::ToolOrder(const Formulation& formulation, const PlanInput& input)
    : uses_(std::make_unique<const Uses>(formulation, input))
{}
ToolOrder::~ToolOrder() = default;
ToolOrder::ToolOrder(ToolOrder&&) noexcept = default;

std::vector<Clash> ToolOrder::clashes(const Schedule& schedule) const
{
    return uses_->clashes(schedule);
}

} // namespace suppertide
