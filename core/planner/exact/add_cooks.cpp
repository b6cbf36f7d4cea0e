#include <algorithm>

#include "core/planner/engine/forbidden.h"
#include "core/planner/engine/linear.h"
#include "core/planner/engine/timetable.h"
#include "core/planner/exact/pairs.h"
#include "core/planner/exact/parts.h"

namespace suppertide::exact {

namespace {

constexpr Bound fullAttention = 100; // percent of one cook

bool isAble(const Cook& cook, const Task& task)
{
    return !task.hands->skill || std::find(cook.skills.begin(), cook.skills.end(),
                                           *task.hands->skill) != cook.skills.end();
}

/// The value of a Boolean's literal as a view and what is to be added to it.
std::pair<engine::View, Bound> valueOf(Literal literal)
{
    const bool positive = (literal.view & 1U) != 0;
    return {engine::opposite(literal.view), positive ? 0 : 1};
}

/// Exactly so many of the literals hold if the condition does, and never more.
void exactly(Model& model, const Literals& literals, int many, Literal condition)
{
    if (many == 1) {
        model.implies(condition, literals);
        for (std::size_t i = 0; i < literals.size(); ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                model.engine().addClause({~literals[i], ~literals[j]});
            }
        }
        return;
    }
    std::vector<engine::WeightedView> atMostSo;
    std::vector<engine::WeightedView> atLeastSo;
    std::int64_t most = many;
    std::int64_t least = 0;
    for (const Literal literal : literals) {
        const auto [view, plus] = valueOf(literal);
        atMostSo.push_back({view, 1});
        most -= plus;
        atLeastSo.push_back({engine::opposite(view), 1});
        least += plus;
    }
    const auto [view, plus] = valueOf(condition);
    atLeastSo.push_back({view, many});
    engine::LinearPropagator::post(model.engine(), std::move(atMostSo), most);
    engine::LinearPropagator::post(model.engine(), std::move(atLeastSo), least - many * plus);
}

void assignTask(Model& model, TaskIndex index)
{
    const Task& task = model.problem().tasks[index];
    const Literal needed = model.all({model.present(index), model.selector("hands:" + task.id)});
    std::vector<CookIndex> able;
    for (const CookIndex cook : model.problem().cooks.indices()) {
        if (isAble(model.problem().cooks[cook], task)) {
            able.push_back(cook);
        }
    }
    const auto many = static_cast<std::size_t>(task.hands->cooks);
    if (able.size() < many) {
        model.engine().addFact(~needed);
        return;
    }
    Literals chosen;
    for (const CookIndex cook : able) {
        const Literal literal =
            able.size() == many ? needed : engine::isTrue(model.engine().newBoolean());
        model.implies(literal, {needed});
        chosen.push_back(literal);
        model.cooks[index].emplace_back(cook, literal);
    }
    if (able.size() > many) {
        exactly(model, chosen, task.hands->cooks, needed);
    }
}

/// Starts at which a task would not lie in one of the free times, or would overlap one at table.
std::vector<engine::ValueRange> closedStarts(const Problem& problem, const Cook& cook,
                                             const Task& task)
{
    const auto bound = [](std::int64_t value) { return static_cast<Bound>(value); };
    const Bound length = bound(task.duration.count());
    std::vector<engine::ValueRange> closed;
    Bound open = 0;
    for (const Interval& free : cook.free) {
        const Bound first = bound(minuteOf(free.start));
        const Bound last = bound(minuteOf(free.end)) - length;
        if (last >= first) {
            closed.push_back({open, first - 1});
            open = last + 1;
        }
    }
    closed.push_back({open, bound(minuteOf(problem.horizon))});
    for (const Interval& table : cook.table) {
        if (!task.atTable && !table.empty()) {
            closed.push_back(
                {bound(minuteOf(table.start)) - length + 1, bound(minuteOf(table.end)) - 1});
        }
    }
    return closed;
}

void keepCalendar(Model& model, TaskIndex index, CookIndex cookIndex, Literal chosen)
{
    const Problem& problem = model.problem();
    const Task& task = problem.tasks[index];
    const Cook& cook = problem.cooks[cookIndex];
    engine::ForbiddenPropagator::post(model.engine(), model.start(index),
                                      closedStarts(problem, cook, task), chosen);
    if (task.atTable) {
        return;
    }
    for (const TableAfter& after : cook.tableAfter) {
        if (after.minutes.count() <= 0) {
            continue;
        }
        const Term from = model.point({after.event, Edge::Start});
        const Term to{from.variable, from.plus + static_cast<Bound>(after.minutes.count())};
        const Literal both = model.all({chosen, model.present(after.event)});
        addApart(model, {model.point({index, Edge::Start}), model.point({index, Edge::End}), both},
                 0, {from, to, both}, 0, both);
    }
}

/// A literal for each cook that holds if any of the tasks is theirs.
void addWorks(Model& model, const std::vector<std::vector<engine::TimetableItem>>& byCook)
{
    for (const auto& items : byCook) {
        const bool surely =
            std::any_of(items.begin(), items.end(), [&](const engine::TimetableItem& item) {
                return model.isAlways(*item.present);
            });
        const Literal works = surely ? model.always() : engine::isTrue(model.engine().newBoolean());
        for (const engine::TimetableItem& item : items) {
            model.implies(*item.present, {works});
        }
        model.works.push_back(works);
    }
}

/// A cook who does nothing is taken, all of the time, out of what all cooks can do together.
void addIdle(Model& model, std::vector<engine::TimetableItem>& together)
{
    const Variable one = model.always().variable();
    for (const Literal works : model.works) {
        if (!model.isAlways(works)) {
            together.push_back({{one, -1},
                                {one, static_cast<Bound>(minuteOf(model.problem().horizon)) - 1},
                                fullAttention,
                                ~works});
        }
    }
}

} // namespace

void addCooks(Model& model)
{
    const Problem& problem = model.problem();
    std::vector<std::vector<engine::TimetableItem>> byCook(problem.cooks.size());
    std::vector<engine::TimetableItem> together;
    for (const TaskIndex index : problem.tasks.indices()) {
        const Task& task = problem.tasks[index];
        if (!task.needsCooks() || model.isNever(model.present(index))) {
            continue;
        }
        assignTask(model, index);
        const Term from = model.point({index, Edge::Start});
        const Term to = model.point({index, Edge::End});
        const auto attention = Bound{task.hands->attention.percent()};
        for (const auto& [cook, chosen] : model.cooks[index]) {
            byCook[cook.value()].push_back({from, to, attention, chosen});
            keepCalendar(model, index, cook, chosen);
        }
        together.push_back({from, to, attention * task.hands->cooks,
                            model.all({model.present(index), model.selector("hands:" + task.id)})});
    }
    addWorks(model, byCook);
    std::set<std::pair<Variable, Variable>> paired;
    for (auto& items : byCook) {
        if (items.size() > 1) {
            if (problem.cooks.size() == 1) {
                addPairs(model, items, fullAttention, paired);
            }
            engine::TimetablePropagator::post(model.engine(), std::move(items), fullAttention);
        }
    }
    if (problem.cooks.size() > 1 && together.size() > 1) {
        addIdle(model, together);
        engine::TimetablePropagator::post(model.engine(), std::move(together),
                                          fullAttention * static_cast<Bound>(problem.cooks.size()));
    }
}

} // namespace suppertide::exact
