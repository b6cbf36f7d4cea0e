#include "core/check/touched.h"

#include <algorithm>
#include <utility>

namespace suppertide {

void Touched::byChoice(ChoiceIndex choice)
{
    add(requirements_->number(BrokenKind::Choice, choice));
    for (const Option& option : evidence_->problem().choices[choice].options) {
        for (const TaskIndex task : option.tasks) {
            byTask(task);
        }
    }
}

void Touched::byTask(TaskIndex task)
{
    add(requirements_->number(BrokenKind::Start, task));
    add(requirements_->number(BrokenKind::Window, task));
    byCooksOf(task);
    const Ties& ties = evidence_->ties();
    for (const LagIndex lag : ties.lagsOf[task]) {
        add(requirements_->number(BrokenKind::Lag, lag));
    }
    for (const DemandIndex demand : ties.demandsOf[task]) {
        if (const auto& count = evidence_->problem().demands[demand].count) {
            add(requirements_->number(BrokenKind::Count, *count));
        } else {
            byUnitOf(demand);
        }
    }
    for (const CookIndex cook : ties.seatedAfter[task]) {
        allHandsOf(cook);
    }
    for (const OvenDemandIndex demand : ties.ovenDemandsOf[task]) {
        byOvenOf(demand);
    }
}

void Touched::byCooksOf(TaskIndex task)
{
    add(requirements_->number(BrokenKind::Hands, task));
    for (const CookIndex cook : evidence_->schedule().cooks[task]) {
        add(requirements_->number(BrokenKind::Cook, cook));
    }
}

void Touched::byUnitOf(DemandIndex demand)
{
    add(requirements_->number(BrokenKind::Demand, demand));
    const auto& pool = evidence_->problem().demands[demand].pool;
    const auto& unit = evidence_->schedule().units[demand];
    if (pool && unit) {
        add(requirements_->number(evidence_->ties(), {*pool, *unit}));
    }
}

void Touched::byOvenOf(OvenDemandIndex demand)
{
    add(requirements_->number(BrokenKind::Oven, demand));
    for (const OvenDemandIndex other : evidence_->ties().sameGroup[demand]) {
        add(requirements_->number(BrokenKind::Oven, other));
    }
    if (const auto& oven = evidence_->schedule().ovens[demand]) {
        add(requirements_->number(BrokenKind::Shelves, *oven));
        allIn(*oven);
    }
}

void Touched::byProgram(OvenIndex oven)
{
    add(requirements_->number(BrokenKind::Program, oven));
    allIn(oven);
}

std::vector<RequirementNumber> Touched::take()
{
    for (const RequirementNumber number : numbers_) {
        isTouched_[number] = false;
    }
    return std::exchange(numbers_, {});
}

void Touched::add(RequirementNumber number)
{
    if (!isTouched_[number]) {
        isTouched_[number] = true;
        numbers_.push_back(number);
    }
}

void Touched::allIn(OvenIndex oven)
{
    for (const OvenDemandIndex demand : evidence_->problem().ovenDemands.indices()) {
        if (evidence_->schedule().ovens[demand] == oven) {
            add(requirements_->number(BrokenKind::Oven, demand));
        }
    }
}

void Touched::allHandsOf(CookIndex cook)
{
    for (const TaskIndex task : evidence_->problem().tasks.indices()) {
        const auto& cooks = evidence_->schedule().cooks[task];
        if (std::ranges::find(cooks, cook) != cooks.end()) {
            add(requirements_->number(BrokenKind::Hands, task));
        }
    }
}

} // namespace suppertide
