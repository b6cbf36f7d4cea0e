#include "core/planner/quick_start/quick_start.h"

#include <algorithm>
#include <utility>

#include "core/planner/quick_start/finish.h"
#include "core/planner/quick_start/proof.h"
#include "core/problem/timetable.h"

namespace suppertide::quick_start {

namespace {

constexpr std::size_t firstEjections = 60; // before something else is tried
constexpr std::uint64_t freshStartPercent = 10;

Penalties penaltiesOf(const Instance& instance,
                      const IndexedVector<TaskIndex, std::int64_t>& weights)
{
    Penalties result(instance.blocks.size(), 1);
    for (const BlockIndex block : instance.blocks.indices()) {
        for (const BlockTask& task : instance.blocks[block].tasks) {
            result[block] = std::max(result[block], 1 + weights[task.task]);
        }
    }
    return result;
}

} // namespace

QuickStart::QuickStart(const Problem& problem, Budget& budget, std::uint64_t seed, Better better)
    : problem_(&problem), budget_(&budget), dice_(seed), better_(std::move(better)),
      instances_(problem), meter_(problem), weights_(problem.tasks.size(), 0)
{}

void QuickStart::run()
{
    if (goesOn() && makeFirst()) {
        improve(std::move(*first_));
    }
}

std::optional<QuickStart::Draft> QuickStart::begun(const Instance::Options& options)
{
    auto instance = instances_.with(options);
    budget_->spend(instance->cost());
    if (!instance->holds()) {
        if (!best_) {
            noteContradiction(options);
        }
        return std::nullopt;
    }
    PartialPlan plan(*instance);
    return Draft{std::move(instance), std::move(plan), 0};
}

std::string QuickStart::nameOf(const Instance& instance, const Blame& blame) const
{
    switch (blame.kind) {
    case Blame::Kind::Tie: {
        const TaskIndex task = instance.blocks[BlockIndex{blame.index}].tasks.front().task;
        return "window:" + problem_->tasks[task].id;
    }
    case Blame::Kind::Hands:
        return "hands:" + problem_->tasks[instance.work[WorkIndex{blame.index}].task].id;
    case Blame::Kind::Hold:
        break;
    }
    const Hold& hold = instance.held[HoldIndex{blame.index}];
    if (hold.ovenDemand) {
        return "oven:" + problem_->ovenDemands[*hold.ovenDemand].id;
    }
    const Demand& demand = problem_->demands[*hold.demand];
    return demand.count ? "count:" + problem_->counts[*demand.count].id
                        : "pool:" + problem_->pools[*demand.pool].id;
}

/// Places what still fits after a pass was given up. Keeps the try in which fewest tasks are left,
/// and what stopped them. True if none is.
bool QuickStart::fill(Draft& draft)
{
    const Instance& instance = *draft.instance;
    PartialPlan& plan = draft.plan;
    const Penalties penalties(instance.blocks.size(), 1);
    Insertion insertion(plan, penalties, dice_, *budget_);
    std::vector<Unplaced> left;
    for (const BlockIndex block : instance.blocks.indices()) {
        if (plan.isPlaced(block)) {
            continue;
        }
        const Insertion::Explained found = insertion.explained(block);
        if (found.proposal) {
            plan.place(*found.proposal);
            continue;
        }
        std::vector<std::string> because;
        for (const Blame& blame : found.reasons) {
            std::string name = nameOf(instance, blame);
            if (std::find(because.begin(), because.end(), name) == because.end()) {
                because.push_back(std::move(name));
            }
        }
        for (const BlockTask& task : instance.blocks[block].tasks) {
            left.push_back({task.task, because});
        }
    }
    const bool none = left.empty();
    if (!none && (unplaced_.empty() || left.size() < unplaced_.size())) {
        unplaced_ = std::move(left);
    }
    return none;
}

/// All is placed, but an oven has no program for what is in it.
void QuickStart::unplaceUnkept(Draft& draft, Penalties& penalties)
{
    std::vector<Unplaced> left;
    for (const HoldIndex index : meter_.unkept()) {
        const Hold& hold = draft.instance->held[index];
        const std::string name = nameOf(*draft.instance, {Blame::Kind::Hold, index.value()});
        for (const BlockIndex block : {hold.from.block, hold.to.block}) {
            if (draft.plan.isPlaced(block)) {
                draft.plan.unplace(block);
                penalties[block] += 1;
                for (const BlockTask& task : draft.instance->blocks[block].tasks) {
                    left.push_back({task.task, {name}});
                }
            }
        }
    }
    if (!best_ && (unplaced_.empty() || left.size() < unplaced_.size())) {
        unplaced_ = std::move(left);
    }
}

/// Lags and windows leave no starts with these options, whatever else is planned.
void QuickStart::noteContradiction(const Instance::Options& options)
{
    if (!unplaced_.empty()) {
        return;
    }
    const auto present = presentTasks(*problem_, options);
    const auto conflict = lagConflict(*problem_, present);
    if (!conflict) {
        return;
    }
    for (const ChoiceIndex choice : problem_->choices.indices()) {
        for (const TaskIndex task : problem_->choices[choice].options[*options[choice]].tasks) {
            unplaced_.push_back({task, *conflict});
        }
    }
}

bool QuickStart::settle(Draft& draft, std::size_t mostEjections, bool cheap)
{
    Penalties penalties = penaltiesOf(*draft.instance, weights_);
    constexpr int mostRounds = 4; // of an oven that has no program after all
    for (int round = 0; round < mostRounds; ++round) {
        Pass pass(draft.plan, penalties, dice_, *budget_);
        const bool placed = pass.run(mostEjections, cheap) || (!best_ && fill(draft));
        for (const BlockIndex block : draft.instance->blocks.indices()) {
            for (const BlockTask& task : draft.instance->blocks[block].tasks) {
                weights_[task.task] = penalties[block] - 1;
            }
        }
        if (!placed) {
            return false;
        }
        if (const auto cost = meter_.cost(draft.plan)) {
            draft.cost = *cost;
            return true;
        }
        unplaceUnkept(draft, penalties);
    }
    return false;
}

/// One choice made otherwise, or two: rather those with many tasks, or whose tasks often did not
/// fit.
Instance::Options QuickStart::otherOptions(const Draft& draft, int choices)
{
    const Instance::Options& current = draft.instance->options();
    Instance::Options options = current;
    std::vector<std::pair<ChoiceIndex, std::size_t>> open; // with its weight
    std::size_t total = 0;
    for (const ChoiceIndex choice : problem_->choices.indices()) {
        if (problem_->choices[choice].options.size() < 2) {
            continue;
        }
        std::int64_t weight = 1;
        for (const Option& option : problem_->choices[choice].options) {
            weight += static_cast<std::int64_t>(option.tasks.size());
        }
        for (const TaskIndex task : problem_->choices[choice].options[*current[choice]].tasks) {
            weight += weights_[task];
        }
        open.emplace_back(choice, static_cast<std::size_t>(weight));
        total += static_cast<std::size_t>(weight);
    }
    if (total == 0) {
        return options;
    }
    for (int i = 0; i < choices; ++i) {
        std::size_t drawn = dice_.below(total);
        std::size_t at = 0;
        while (drawn >= open[at].second) {
            drawn -= open[at].second;
            ++at;
        }
        const ChoiceIndex choice = open[at].first;
        const std::size_t other = dice_.below(problem_->choices[choice].options.size() - 1);
        options[choice] = OptionIndex{other < current[choice]->value() ? other : other + 1};
    }
    return options;
}

bool QuickStart::makeFirst()
{
    Instance::Options options;
    for (const Choice& choice : problem_->choices) {
        OptionIndex cheapest{0};
        for (const OptionIndex option : choice.options.indices()) {
            if (choice.options[option].cost < choice.options[cheapest].cost) {
                cheapest = option;
            }
        }
        options.push_back(cheapest);
    }
    std::optional<Draft> draft = begun(options);
    std::size_t ejections = firstEjections;
    while (goesOn()) {
        if (draft && settle(*draft, ejections, false)) {
            offer(*draft);
            first_ = std::move(draft);
            return true;
        }
        ejections += ejections / 16;
        if (!draft) {
            for (const ChoiceIndex choice : problem_->choices.indices()) {
                options[choice] =
                    OptionIndex{dice_.below(problem_->choices[choice].options.size())};
            }
            draft = begun(options);
            continue;
        }
        options = otherOptions(*draft, 1);
        for (std::int64_t& weight : weights_) {
            weight /= 2;
        }
        auto next = begun(options);
        if (next && !dice_.percent(freshStartPercent)) {
            next->plan = carriedOver(draft->plan, *next->instance);
        }
        if (next) {
            draft = std::move(next);
        }
    }
    return false;
}

void QuickStart::offer(const Draft& draft)
{
    if (best_ && draft.cost >= *best_->cost) {
        return;
    }
    Schedule schedule = finished(draft.plan, meter_);
    if (!best_ || *schedule.cost < *best_->cost) {
        best_ = std::move(schedule);
        wantsMore_ = better_(*best_);
    }
}

} // namespace suppertide::quick_start
