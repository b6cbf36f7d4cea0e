#include "core/planner/quick_start/instance.h"

#include <algorithm>
#include <string>

#include "core/problem/timetable.h"

namespace suppertide::quick_start {

Instance::Instance(const Problem& problem, Options options)
    : problem_(&problem), options_(std::move(options)), present_(presentTasks(problem, options_)),
      network_(problem, present_), places_(problem.tasks.size()), positions_(problem.tasks.size())
{
    for (const Pool& pool : problem.pools) {
        firstUnit.push_back(unitCount);
        unitCount += pool.units.size();
    }
    if (!network_.holds()) {
        return;
    }
    makeBlocks();
    makeWork();
    makeHolds();
    makeOvenHolds();
    makeBundles();
    makeSeatings();
    makeChoices();
}

void Instance::makeBlocks()
{
    for (std::size_t g = 0; g < network_.tied().size(); ++g) {
        const TiedTasks& group = network_.tied()[g];
        std::vector<std::size_t> firsts; // the first task of each block, by position in the group
        std::vector<BlockIndex> made;
        for (std::size_t i = 0; i < group.tasks.size(); ++i) {
            const TaskIndex task = group.tasks[i];
            positions_[task] = {g, i};
            const auto rigid = std::find_if(firsts.begin(), firsts.end(), [&](std::size_t first) {
                return group.between(first, i) == -group.between(i, first);
            });
            if (rigid == firsts.end()) {
                firsts.push_back(i);
                made.push_back(blocks.push_back({}));
                blocks[made.back()].bounds = network_.bounds(task);
                blocks[made.back()].tasks.push_back({task, 0});
                places_[task] = TaskPlace{made.back(), 0};
                continue;
            }
            const BlockIndex block = made[static_cast<std::size_t>(rigid - firsts.begin())];
            const Minute offset = group.between(*rigid, i);
            blocks[block].tasks.push_back({task, offset});
            places_[task] = TaskPlace{block, offset};
        }
        for (std::size_t a = 0; a < firsts.size(); ++a) {
            for (std::size_t b = 0; b < firsts.size(); ++b) {
                const Minute least = group.between(firsts[a], firsts[b]);
                const Minute most = -group.between(firsts[b], firsts[a]);
                if (a != b && (least > -never / 2 || most < never / 2)) {
                    blocks[made[a]].ties.push_back({made[b], least, most});
                }
            }
        }
    }
}

void Instance::makeWork()
{
    for (const TaskIndex index : problem_->tasks.indices()) {
        const Task& task = problem_->tasks[index];
        if (!present_[index] || !task.needsCooks()) {
            continue;
        }
        Work item;
        item.task = index;
        item.block = places_[index]->block;
        item.offset = places_[index]->offset;
        item.duration = task.duration.count();
        item.attention = task.hands->attention.percent();
        item.cooks = static_cast<std::size_t>(task.hands->cooks);
        item.atTable = task.atTable;
        for (const CookIndex cook : problem_->cooks.indices()) {
            const auto& skills = problem_->cooks[cook].skills;
            if (!task.hands->skill ||
                std::find(skills.begin(), skills.end(), *task.hands->skill) != skills.end()) {
                item.able.push_back(cook);
            }
        }
        std::stable_sort(item.able.begin(), item.able.end(), [&](CookIndex a, CookIndex b) {
            return problem_->cooks[a].skills.size() < problem_->cooks[b].skills.size();
        });
        auto& ofBlock = blocks[item.block].work;
        ofBlock.push_back(work.push_back(std::move(item)));
    }
}

BlockPoint Instance::pointOf(const TaskPoint& point) const
{
    const TaskPlace& place = *places_[point.task];
    const Minute length =
        point.edge == Edge::End ? problem_->tasks[point.task].duration.count() : 0;
    return {place.block, place.offset + length};
}

/// The least that time(to) − time(from) can be.
Minute Instance::leastBetween(const TaskPoint& from, const TaskPoint& to) const
{
    const auto offset = [&](const TaskPoint& point) {
        return point.edge == Edge::End ? problem_->tasks[point.task].duration.count() : 0;
    };
    Minute least = network_.bounds(to.task).est - network_.bounds(from.task).lst;
    const Position& a = positions_[from.task];
    const Position& b = positions_[to.task];
    if (a.group == b.group) {
        least = std::max(least, network_.tied()[a.group].between(a.at, b.at));
    }
    return least + offset(to) - offset(from);
}

void Instance::addHold(Hold hold, const TaskPoint& from, const TaskPoint& to)
{
    hold.from = pointOf(from);
    hold.to = pointOf(to);
    hold.least = std::max<Minute>(0, leastBetween(from, to));
    if (hold.from.block == hold.to.block && hold.to.offset <= hold.from.offset) {
        return; // nothing is ever held
    }
    held.push_back(std::move(hold));
}

void Instance::makeHolds()
{
    for (const DemandIndex index : problem_->demands.indices()) {
        const Demand& demand = problem_->demands[index];
        if (!bothPresent(demand.from, demand.to)) {
            continue;
        }
        Hold hold;
        hold.demand = index;
        if (demand.count) {
            hold.amount = demand.amount;
            hold.servants = {demand.count->value()};
        } else {
            hold.kind = HoldKind::Pool;
            const auto& units = problem_->pools[*demand.pool].units;
            for (const UnitIndex unit : units.indices()) {
                const bool named =
                    !demand.units || std::find(demand.units->begin(), demand.units->end(), unit) !=
                                         demand.units->end();
                if (named && units[unit].size >= demand.minSize) {
                    hold.servants.push_back(firstUnit[*demand.pool] + unit.value());
                }
            }
            std::stable_sort(hold.servants.begin(), hold.servants.end(),
                             [&](std::size_t a, std::size_t b) {
                                 return units[UnitIndex{a - firstUnit[*demand.pool]}].size <
                                        units[UnitIndex{b - firstUnit[*demand.pool]}].size;
                             });
        }
        addHold(std::move(hold), demand.from, demand.to);
    }
}

void Instance::makeOvenHolds()
{
    std::vector<std::string> groups;
    std::vector<std::string> modes;
    const auto numbered = [](std::vector<std::string>& names,
                             const std::optional<std::string>& name) {
        std::optional<std::size_t> number;
        if (name) {
            const auto known = std::find(names.begin(), names.end(), *name);
            number = static_cast<std::size_t>(known - names.begin());
            if (known == names.end()) {
                names.push_back(*name);
            }
        }
        return number;
    };
    for (const OvenDemandIndex index : problem_->ovenDemands.indices()) {
        const OvenDemand& demand = problem_->ovenDemands[index];
        if (!bothPresent(demand.from, demand.to)) {
            continue;
        }
        Hold hold;
        hold.kind = HoldKind::Oven;
        hold.ovenDemand = index;
        hold.amount = demand.shelves;
        hold.stay = ovenStay(demand, {});
        hold.mode = numbered(modes, demand.mode);
        hold.group = numbered(groups, demand.group);
        for (const OvenIndex oven : problem_->ovens.indices()) {
            if (!demand.ovens || std::find(demand.ovens->begin(), demand.ovens->end(), oven) !=
                                     demand.ovens->end()) {
                hold.servants.push_back(oven.value());
            }
        }
        addHold(std::move(hold), demand.from, demand.to);
    }
}

void Instance::makeBundles()
{
    const auto touch = [&](BlockIndex block, HoldIndex index) {
        const Hold& hold = held[index];
        if (hold.kind != HoldKind::Oven) {
            blocks[block].holds.push_back(index);
            return;
        }
        auto& bundles = blocks[block].bundles;
        const auto bundle = std::find_if(bundles.begin(), bundles.end(), [&](const auto& holds) {
            return hold.group && held[holds.front()].group == hold.group;
        });
        if (bundle == bundles.end()) {
            bundles.push_back({index});
        } else {
            bundle->push_back(index);
        }
    };
    for (const HoldIndex index : held.indices()) {
        touch(held[index].from.block, index);
        if (held[index].from.block != held[index].to.block) {
            touch(held[index].to.block, index);
        }
    }
}

void Instance::makeSeatings()
{
    seatingsOf.resize(problem_->cooks.size());
    for (const CookIndex cook : problem_->cooks.indices()) {
        for (const TableAfter& after : problem_->cooks[cook].tableAfter) {
            if (present_[after.event] && after.minutes.count() > 0) {
                const BlockPoint at = pointOf({after.event, Edge::Start});
                blocks[at.block].seatings.push_back(seatings.size());
                seatingsOf[cook].push_back(seatings.size());
                seatings.push_back({cook, at, after.minutes.count()});
            }
        }
    }
    for (const LagIndex lag : problem_->lags.indices()) {
        const Lag& tie = problem_->lags[lag];
        if (tie.loss > 0 && tie.min && bothPresent(tie.from, tie.to)) {
            const BlockIndex from = places_[tie.from.task]->block;
            const BlockIndex to = places_[tie.to.task]->block;
            blocks[from].lossLags.push_back(lag);
            if (to != from) {
                blocks[to].lossLags.push_back(lag);
            }
        }
    }
}

void Instance::makeChoices()
{
    for (const ChoiceIndex choice : problem_->choices.indices()) {
        if (!options_[choice]) {
            continue;
        }
        for (const TaskIndex task : problem_->choices[choice].options[*options_[choice]].tasks) {
            blocks[places_[task]->block].choice = choice;
        }
    }
}

} // namespace suppertide::quick_start
