#include "core/planner/engine/linear.h"

#include <algorithm>
#include <limits>

namespace suppertide::engine {

namespace {

constexpr EventIndex now = std::numeric_limits<EventIndex>::max();

Bound leastBefore(const Trail& trail, EventIndex event, View view)
{
    return event == now ? trail.least(view) : -trail.mostBefore(event, opposite(view));
}

} // namespace

LinearPropagator::LinearPropagator(std::vector<WeightedView> terms, std::int64_t most,
                                   const Trail& trail)
    : terms_(std::move(terms)), most_(most)
{
    for (const WeightedView& term : terms_) {
        floor_.push_back(trail.least(term.view));
    }
}

void LinearPropagator::post(Engine& engine, std::vector<WeightedView> terms, std::int64_t most)
{
    std::vector<View> views;
    for (const WeightedView& term : terms) {
        views.push_back(opposite(term.view));
    }
    std::sort(views.begin(), views.end());
    views.erase(std::unique(views.begin(), views.end()), views.end());
    engine.add(std::make_unique<LinearPropagator>(std::move(terms), most, engine.trail()), views);
}

std::int64_t LinearPropagator::leastSum(const Trail& trail, EventIndex before) const
{
    std::int64_t sum = 0;
    for (const WeightedView& term : terms_) {
        sum += std::int64_t{term.weight} * leastBefore(trail, before, term.view);
    }
    return sum;
}

void LinearPropagator::explainSum(const Trail& trail, EventIndex before, View without,
                                  std::int64_t spare, Literals& because) const
{
    for (std::size_t i = 0; i < terms_.size(); ++i) {
        const WeightedView& term = terms_[i];
        const Bound least = leastBefore(trail, before, term.view);
        if (term.view == without || least <= floor_[i]) {
            continue;
        }
        const std::int64_t all = std::int64_t{term.weight} * (least - floor_[i]);
        if (all <= spare) {
            spare -= all;
            continue;
        }
        const std::int64_t less = spare / term.weight;
        spare -= less * term.weight;
        because.push_back(~Literal{term.view, static_cast<Bound>(least - less - 1)});
    }
}

bool LinearPropagator::propagate(Engine& engine)
{
    const Trail& trail = engine.trail();
    const std::int64_t room = most_ - leastSum(trail, now);
    if (trail.level() == 0) {
        for (std::size_t i = 0; i < terms_.size(); ++i) {
            floor_[i] = trail.least(terms_[i].view);
        }
    }
    if (room < 0) {
        Literals because;
        explainSum(trail, now, std::numeric_limits<View>::max(), -room - 1, because);
        return engine.fail(std::move(because));
    }
    for (const WeightedView& term : terms_) {
        const std::int64_t most = trail.least(term.view) + room / term.weight;
        if (most < trail.most(term.view)) {
            engine.implyLater({term.view, static_cast<Bound>(most)}, *this);
        }
    }
    return true;
}

void LinearPropagator::explain(const Trail& trail, EventIndex event, Literal needed,
                               Literals& because) const
{
    for (const WeightedView& term : terms_) {
        if (term.view == needed.view) {
            const std::int64_t others =
                leastSum(trail, event) -
                std::int64_t{term.weight} * leastBefore(trail, event, term.view);
            const std::int64_t spare =
                others + std::int64_t{term.weight} * (needed.bound + std::int64_t{1}) - most_ - 1;
            explainSum(trail, event, term.view, spare, because);
            return;
        }
    }
}

} // namespace suppertide::engine
