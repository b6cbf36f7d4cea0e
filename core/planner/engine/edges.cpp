#include "core/planner/engine/edges.h"

namespace suppertide::engine {

void Edges::grow(std::size_t views)
{
    out_.resize(views);
    enabled_.resize(views);
}

void Edges::addHalf(const Half& half)
{
    const auto index = static_cast<std::uint32_t>(halves_.size());
    halves_.push_back(half);
    out_[half.from].push_back(
        {half.to, half.weight, index, half.enabler.has_value(), half.enabler.value_or(Literal{})});
    if (half.enabler) {
        enabled_[half.enabler->view].push_back(index);
    }
}

void Edges::add(Variable from, Variable to, Bound least, std::optional<Literal> enabler)
{
    addHalf({from.minus(), to.minus(), -least, enabler});
    addHalf({to.plus(), from.plus(), -least, enabler});
}

void Edges::explain(std::uint32_t half, Bound bound, Literals& because) const
{
    const Half& edge = halves_[half];
    because.push_back({edge.from, bound - edge.weight});
    if (edge.enabler) {
        because.push_back(*edge.enabler);
    }
}

std::optional<Literals> Edges::cycleAt(const Trail& trail, EventIndex newest) const
{
    const auto& events = trail.events();
    const View goal = events[static_cast<std::size_t>(newest)].view;
    Literals enablers;
    EventIndex at = newest;
    while (at >= 0) {
        const Event& event = events[static_cast<std::size_t>(at)];
        if (event.reason.kind != Reason::Kind::Edge) {
            return std::nullopt;
        }
        const Half& edge = halves_[event.reason.at];
        if (edge.enabler) {
            enablers.push_back(*edge.enabler);
        }
        if (edge.from == goal) {
            return enablers;
        }
        at = trail.madeTrue({edge.from, event.after - edge.weight});
        if (enablers.size() > events.size()) {
            return std::nullopt;
        }
    }
    return std::nullopt;
}

} // namespace suppertide::engine
