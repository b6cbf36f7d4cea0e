#include "core/planner/engine/difference_costs.h"

#include <algorithm>
#include <functional>
#include <limits>
#include <map>
#include <utility>

namespace suppertide::engine {

namespace {

constexpr std::int64_t unlimited = std::int64_t{1} << 40;
constexpr std::int64_t farAway = std::int64_t{1} << 50;

} // namespace

DifferenceCosts::DifferenceCosts(std::vector<PricedGap> gaps, Term total)
    : gaps_(std::move(gaps)), total_(total)
{}

DifferenceCosts& DifferenceCosts::post(Engine& engine, std::vector<PricedGap> gaps, Term total)
{
    auto propagator = std::make_unique<DifferenceCosts>(std::move(gaps), total);
    propagator->build(engine);
    propagator->findOrders();
    std::vector<View> views;
    for (const Arc& arc : propagator->arcs_) {
        if (arc.onlyIf) {
            views.push_back(arc.onlyIf->view);
        }
        if (arc.kind == Kind::LeastValue) {
            views.push_back(arc.variable.minus());
        } else if (arc.kind == Kind::MostValue) {
            views.push_back(arc.variable.plus());
        }
    }
    std::sort(views.begin(), views.end());
    views.erase(std::unique(views.begin(), views.end()), views.end());
    DifferenceCosts& result = engine.add(std::move(propagator), views);
    engine.tellOfGoingBack(result);
    return result;
}

DifferenceCosts::Node DifferenceCosts::nodeOf(Variable variable)
{
    if (nodes_.size() <= variable.index) {
        nodes_.resize(variable.index + 1, -1);
    }
    if (nodes_[variable.index] < 0) {
        nodes_[variable.index] = static_cast<std::int32_t>(at_.size());
        at_.push_back(0);
        out_.emplace_back();
    }
    return static_cast<Node>(nodes_[variable.index]);
}

void DifferenceCosts::addArc(Arc arc)
{
    const auto index = static_cast<std::uint32_t>(arcs_.size());
    const auto listen = [&](View view) {
        if (byView_.size() <= view) {
            byView_.resize(view + 1);
        }
        byView_[view].push_back(index);
    };
    if (arc.onlyIf) {
        listen(arc.onlyIf->view);
    }
    if (arc.kind == Kind::LeastValue) {
        listen(arc.variable.minus());
    } else if (arc.kind == Kind::MostValue) {
        listen(arc.variable.plus());
    }
    stale_.push_back(index);
    arcs_.push_back(arc);
}

/// Variables are those for which something may be paid, and those that edges tie to them.
void DifferenceCosts::build(Engine& engine)
{
    const Trail& trail = engine.trail();
    at_.push_back(0); // the node of all constants
    out_.emplace_back();
    const auto place = [&](const Term& term) {
        return trail.isFixed(term.variable)
                   ? std::pair<Node, std::int64_t>{0, trail.least(term)}
                   : std::pair<Node, std::int64_t>{nodeOf(term.variable), term.plus};
    };
    for (const PricedGap& gap : gaps_) {
        const auto [from, fromPlus] = place(gap.from);
        const auto [to, toPlus] = place(gap.to);
        if (gap.price > 0 && !trail.fails(gap.onlyIf)) {
            Arc arc{Kind::Price, to, from, toPlus - fromPlus, gap.price};
            if (!trail.holds(gap.onlyIf)) {
                arc.onlyIf = gap.onlyIf;
            }
            addArc(arc);
        }
    }
    const auto& halves = engine.edges().halves();
    const auto isIn = [&](View view) { return view / 2 < nodes_.size() && nodes_[view / 2] >= 0; };
    for (bool grows = true; grows;) {
        grows = false;
        for (std::size_t i = 0; i < halves.size(); i += 2) {
            const Variable from{halves[i].from / 2};
            const Variable to{halves[i].to / 2};
            if (isIn(halves[i].from) != isIn(halves[i].to) && !trail.isFixed(from) &&
                !trail.isFixed(to)) {
                static_cast<void>(nodeOf(from));
                static_cast<void>(nodeOf(to));
                grows = true;
            }
        }
    }
    for (std::size_t i = 0; i < halves.size(); i += 2) {
        const Edges::Half& half = halves[i]; // −to ≤ −from + weight
        const bool never = half.enabler && trail.fails(*half.enabler);
        if (isIn(half.from) && isIn(half.to) && !never) {
            Arc arc{Kind::Edge, nodeOf({half.from / 2}), nodeOf({half.to / 2}), -half.weight,
                    unlimited};
            arc.onlyIf = half.enabler;
            addArc(arc);
        }
    }
    for (std::uint32_t index = 0; index < nodes_.size(); ++index) {
        if (nodes_[index] >= 0) {
            const auto node = static_cast<Node>(nodes_[index]);
            Arc least{Kind::LeastValue, 0, node, 0, unlimited};
            least.variable = {index};
            least.floor = trail.least(Variable{index});
            addArc(least);
            Arc most{Kind::MostValue, node, 0, 0, unlimited};
            most.variable = {index};
            most.floor = -trail.most(Variable{index});
            addArc(most);
            at_[node] = trail.least(Variable{index});
        }
    }
    distance_.assign(at_.size(), farAway);
    via_.assign(at_.size(), {});
}

void DifferenceCosts::markStale(std::uint32_t index)
{
    if (!arcs_[index].isStale) {
        arcs_[index].isStale = true;
        stale_.push_back(index);
    }
}

void DifferenceCosts::wentBack(std::size_t events)
{
    followed_ = std::min(followed_, events);
    while (!touched_.empty() && touched_.back().event >= events) {
        markStale(touched_.back().arc);
        touched_.pop_back();
    }
}

void DifferenceCosts::follow(const Trail& trail)
{
    const auto& events = trail.events();
    for (; followed_ < events.size(); ++followed_) {
        const View view = events[followed_].view;
        if (view < byView_.size()) {
            for (const std::uint32_t arc : byView_[view]) {
                touched_.push_back({followed_, arc});
                markStale(arc);
            }
        }
    }
}

void DifferenceCosts::takeOut(Node node, std::uint32_t place)
{
    std::vector<Step>& list = out_[node];
    const Step last = list.back();
    list.pop_back();
    if (place < list.size()) {
        list[place] = last;
        (last.back ? arcs_[last.arc].placeTo : arcs_[last.arc].placeFrom) = place;
    }
}

void DifferenceCosts::link(std::uint32_t index)
{
    Arc& arc = arcs_[index];
    if (!arc.isLinked) {
        arc.isLinked = true;
        arc.placeFrom = static_cast<std::uint32_t>(out_[arc.from].size());
        out_[arc.from].push_back({index, false});
        arc.placeTo = static_cast<std::uint32_t>(out_[arc.to].size());
        out_[arc.to].push_back({index, true});
    }
}

void DifferenceCosts::unlink(std::uint32_t index)
{
    Arc& arc = arcs_[index];
    if (arc.isLinked) {
        arc.isLinked = false;
        takeOut(arc.from, arc.placeFrom);
        takeOut(arc.to, arc.placeTo);
    }
}

/// What the arc asks for now.
void DifferenceCosts::refresh(const Trail& trail, std::uint32_t index)
{
    Arc& arc = arcs_[index];
    arc.inForce = !arc.onlyIf || trail.holds(*arc.onlyIf);
    if (arc.kind == Kind::LeastValue || arc.kind == Kind::MostValue) {
        const std::int64_t length = arc.kind == Kind::LeastValue
                                        ? std::int64_t{trail.least(arc.variable)}
                                        : -std::int64_t{trail.most(arc.variable)};
        worth_ += arc.flow * (length - arc.length);
        arc.length = length;
        if (trail.level() == 0) {
            arc.floor = static_cast<Bound>(length);
        }
    }
    if (arc.inForce) {
        link(index);
    } else if (arc.flow == 0) {
        unlink(index);
    }
}

void DifferenceCosts::letFlow(Arc& arc, std::int64_t more)
{
    arc.flow += more;
    worth_ += more * arc.length;
}

/// How much more may flow this way; 0 where the arc has yet to be mended.
std::int64_t DifferenceCosts::room(const Arc& arc, bool back) const
{
    if (back) {
        return !arc.inForce || slack(arc) <= 0 ? arc.flow : 0;
    }
    return arc.inForce && slack(arc) >= 0 ? arc.most - arc.flow : 0;
}

/// By how much less than `source` each node may be raised, as far as that is below `below`; of the
/// goal. Source: E. Dijkstra, A note on two problems in connexion with graphs (1959).
std::int64_t DifferenceCosts::distances(Node source, Node goal, std::int64_t below)
{
    for (const Node node : reached_) {
        distance_[node] = farAway;
    }
    reached_.assign(1, source);
    distance_[source] = 0;
    heap_.assign(1, {0, source});
    while (!heap_.empty()) {
        std::pop_heap(heap_.begin(), heap_.end(), std::greater<>());
        const auto [far, node] = heap_.back();
        heap_.pop_back();
        if (far > distance_[node]) {
            continue;
        }
        if (node == goal) {
            return far;
        }
        for (const Step step : out_[node]) {
            const Arc& arc = arcs_[step.arc];
            if (room(arc, step.back) <= 0) {
                continue;
            }
            const Node next = step.back ? arc.from : arc.to;
            const std::int64_t there = far + (arc.inForce ? std::abs(slack(arc)) : 0);
            if (there < below && there < distance_[next]) {
                if (distance_[next] == farAway) {
                    reached_.push_back(next);
                }
                distance_[next] = there;
                via_[next] = step;
                heap_.emplace_back(there, next);
                std::push_heap(heap_.begin(), heap_.end(), std::greater<>());
            }
        }
    }
    return below;
}

/// Lets more flow along an arc that asks for more than the values give, or less along one that asks
/// for less; or raises values until it does not. False: without end, as the edges contradict.
bool DifferenceCosts::mend(std::uint32_t index, bool back)
{
    Arc& arc = arcs_[index];
    const Node first = back ? arc.to : arc.from; // of the way that is to be used more
    const Node last = back ? arc.from : arc.to;
    while (true) {
        const std::int64_t left = back ? arc.flow : arc.most - arc.flow;
        const std::int64_t lacks = !back ? -slack(arc) : arc.inForce ? slack(arc) : farAway;
        if (left <= 0 || lacks <= 0) {
            return true;
        }
        const std::int64_t far = distances(last, first, lacks);
        if (far >= farAway) {
            return false;
        }
        for (const Node node : reached_) {
            at_[node] += std::max<std::int64_t>(0, far - distance_[node]);
        }
        if (far >= lacks) {
            return true;
        }
        std::int64_t more = left;
        for (Node node = first; node != last;) {
            const Step step = via_[node];
            const Arc& on = arcs_[step.arc];
            more = std::min(more, step.back ? on.flow : on.most - on.flow);
            node = step.back ? on.to : on.from;
        }
        if (more > unlimited / 2) {
            return false;
        }
        for (Node node = first; node != last;) {
            const Step step = via_[node];
            Arc& on = arcs_[step.arc];
            letFlow(on, step.back ? -more : more);
            node = step.back ? on.to : on.from;
        }
        letFlow(arc, back ? -more : more);
    }
}

/// Brings what flows in line with what stale arcs ask for. False: the edges contradict.
bool DifferenceCosts::settle()
{
    for (const std::uint32_t index : stale_) {
        const Arc& arc = arcs_[index];
        if (!arc.inForce) {
            continue;
        }
        if (arc.flow > 0 && slack(arc) > 0 && !mend(index, true)) {
            return false;
        }
        if (arc.flow < arc.most && slack(arc) < 0 && !mend(index, false)) {
            return false;
        }
    }
    for (const std::uint32_t index : stale_) {
        if (!arcs_[index].inForce) {
            if (arcs_[index].flow > 0 && !mend(index, true)) {
                return false;
            }
            unlink(index);
        }
    }
    for (const std::uint32_t index : stale_) {
        arcs_[index].isStale = false;
    }
    stale_.clear();
    return true;
}

/// Bounds may be said as much weaker as what is spared allows.
void DifferenceCosts::sayWhy(std::int64_t spare, Literals& because) const
{
    for (const Arc& arc : arcs_) {
        if (arc.flow <= 0) {
            continue;
        }
        if (arc.onlyIf) {
            because.push_back(*arc.onlyIf);
        }
        if (arc.kind != Kind::LeastValue && arc.kind != Kind::MostValue) {
            continue;
        }
        const std::int64_t above = arc.length - arc.floor;
        const std::int64_t less = std::min(above, spare / arc.flow);
        spare -= less * arc.flow;
        if (less < above) {
            const auto said = static_cast<Bound>(arc.length - less);
            because.push_back(arc.kind == Kind::LeastValue ? atLeast(arc.variable, said)
                                                           : atMost(arc.variable, -said));
        }
    }
}

void DifferenceCosts::findOrders()
{
    std::map<std::uint32_t, EitherOrder> orders;
    for (std::uint32_t index = 0; index < arcs_.size(); ++index) {
        const Arc& arc = arcs_[index];
        if (arc.kind == Kind::Edge && arc.onlyIf) {
            const Variable which = arc.onlyIf->variable();
            EitherOrder& order = orders[which.index];
            order.which = which;
            const bool positive = (arc.onlyIf->view & 1U) != 0;
            (positive ? order.ifTrue : order.ifFalse).push_back(index);
        }
    }
    for (auto& [index, order] : orders) {
        if (!order.ifTrue.empty() && !order.ifFalse.empty()) {
            orders_.push_back(std::move(order));
        }
    }
}

/// The most that one of them asks for beyond what the values give.
std::int64_t DifferenceCosts::lacking(const std::vector<std::uint32_t>& arcs) const
{
    std::int64_t most = 0;
    for (const std::uint32_t arc : arcs) {
        most = std::max(most, -slack(arcs_[arc]));
    }
    return most;
}

std::optional<Literal> DifferenceCosts::worstConflict(const Trail& trail) const
{
    std::optional<Literal> result;
    std::int64_t worst = 0;
    for (const EitherOrder& order : orders_) {
        if (trail.isFixed(order.which)) {
            continue;
        }
        const std::int64_t ifTrue = lacking(order.ifTrue);
        const std::int64_t ifFalse = ifTrue > worst ? lacking(order.ifFalse) : 0;
        if (std::min(ifTrue, ifFalse) > worst) {
            worst = std::min(ifTrue, ifFalse);
            result = ifTrue <= ifFalse ? isTrue(order.which) : isFalse(order.which);
        }
    }
    return result;
}

void DifferenceCosts::startAfresh()
{
    for (std::uint32_t index = 0; index < arcs_.size(); ++index) {
        arcs_[index].flow = 0;
        markStale(index);
    }
    worth_ = 0;
}

bool DifferenceCosts::propagate(Engine& engine)
{
    const Trail& trail = engine.trail();
    follow(trail);
    for (const std::uint32_t index : stale_) {
        refresh(trail, index);
    }
    if (!settle()) {
        startAfresh(); // what contradicts is found by the edges
        return true;
    }
    const std::int64_t sum = worth_;
    if (sum <= trail.least(total_)) {
        return true;
    }
    const std::int64_t claimed = std::min<std::int64_t>(sum, trail.most(total_) + std::int64_t{1});
    Literals because;
    sayWhy(sum - claimed, because);
    return engine.imply(atLeast(total_, static_cast<Bound>(claimed)), because);
}

} // namespace suppertide::engine
