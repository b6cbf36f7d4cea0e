#include "core/planner/exact/pairs.h"

namespace suppertide::exact {

namespace {

/// More than this cost more to keep than they save.
constexpr std::size_t mostPairs = 12'000;

} // namespace

void addApart(Model& model, const Stretch& first, std::int64_t firstThenSecond,
              const Stretch& second, std::int64_t secondThenFirst, Literal enabler)
{
    const auto& trail = model.engine().trail();
    const bool forward = trail.least(first.to) + firstThenSecond <= trail.most(second.from);
    const bool backward = trail.least(second.to) + secondThenFirst <= trail.most(first.from);
    if (!forward && !backward) {
        model.engine().addFact(~enabler);
        return;
    }
    if (forward && trail.most(first.to) + firstThenSecond <= trail.least(second.from)) {
        return;
    }
    if (backward && trail.most(second.to) + secondThenFirst <= trail.least(first.from)) {
        return;
    }
    if (!backward) {
        model.edge(first.to, second.from, firstThenSecond, enabler);
        return;
    }
    if (!forward) {
        model.edge(second.to, first.from, secondThenFirst, enabler);
        return;
    }
    const Variable order = model.engine().newBoolean();
    model.orders.push_back(order);
    model.edge(first.to, second.from, firstThenSecond, model.all({enabler, engine::isTrue(order)}));
    model.edge(second.to, first.from, secondThenFirst,
               model.all({enabler, engine::isFalse(order)}));
}

void addPairs(Model& model, const std::vector<engine::TimetableItem>& items, Bound capacity,
              std::set<std::pair<Variable, Variable>>& known)
{
    for (std::size_t i = 0; i < items.size(); ++i) {
        for (std::size_t j = i + 1; j < items.size(); ++j) {
            const engine::TimetableItem& a = items[i];
            const engine::TimetableItem& b = items[j];
            // Items of variable length may hold nothing, and then overlap nothing.
            const bool fixed = a.start.variable == a.end.variable &&
                               b.start.variable == b.end.variable && a.start.plus < a.end.plus &&
                               b.start.plus < b.end.plus;
            if (!fixed || a.start.variable == b.start.variable || a.amount + b.amount <= capacity ||
                a.amount > capacity || b.amount > capacity) {
                continue;
            }
            if (known.size() >= mostPairs ||
                !known.emplace(a.start.variable, b.start.variable).second) {
                continue;
            }
            addApart(model, {a.start, a.end, *a.present}, 0, {b.start, b.end, *b.present}, 0,
                     model.all({*a.present, *b.present}));
        }
    }
}

} // namespace suppertide::exact
