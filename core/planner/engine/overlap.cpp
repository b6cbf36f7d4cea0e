#include "core/planner/engine/overlap.h"

#include <algorithm>

namespace suppertide::engine {

void OverlapPropagator::post(Engine& engine, const Overlap& overlap)
{
    std::vector<View> views{overlap.shared.plus(),
                            overlap.start.variable.plus(),
                            overlap.start.variable.minus(),
                            overlap.reference.variable.plus(),
                            overlap.reference.variable.minus(),
                            overlap.present.view};
    std::sort(views.begin(), views.end());
    views.erase(std::unique(views.begin(), views.end()), views.end());
    engine.add(std::make_unique<OverlapPropagator>(overlap), views);
}

bool OverlapPropagator::raiseShared(Engine& engine) const
{
    const Trail& trail = engine.trail();
    const Overlap& o = overlap_;
    const Bound low = trail.least(o.start) - trail.most(o.reference);
    const Bound high = trail.most(o.start) - trail.least(o.reference);
    const Bound shared = std::min({o.length, o.window, low + o.length + o.window, -high});
    if (shared <= 0 || shared <= trail.least(o.shared)) {
        return true;
    }
    const Bound from = shared - o.length - o.window;
    return engine.imply(atLeast(o.shared, shared),
                        {atLeast(o.start, trail.most(o.reference) + from),
                         atMost(o.reference, trail.most(o.reference)),
                         atMost(o.start, trail.least(o.reference) - shared),
                         atLeast(o.reference, trail.least(o.reference)), o.present});
}

/// s − T ≥ edge, and so, as no more than `most` may be shared, s − T ≥ −most.
bool OverlapPropagator::pushLater(Engine& engine, Bound most, Bound edge) const
{
    const Trail& trail = engine.trail();
    const Overlap& o = overlap_;
    const Literals because{atMost(o.shared, most), atLeast(o.start, trail.most(o.reference) + edge),
                           atMost(o.reference, trail.most(o.reference)), o.present};
    Literals forStart = because;
    forStart.push_back(atLeast(o.reference, trail.least(o.reference)));
    if (!engine.imply(atLeast(o.start, trail.least(o.reference) - most), forStart)) {
        return false;
    }
    Literals forReference = because;
    forReference.push_back(atMost(o.start, trail.most(o.start)));
    return engine.imply(atMost(o.reference, trail.most(o.start) + most), forReference);
}

/// s − T ≤ −most − 1, and so s − T ≤ edge − 1.
bool OverlapPropagator::pushEarlier(Engine& engine, Bound most, Bound edge) const
{
    const Trail& trail = engine.trail();
    const Overlap& o = overlap_;
    const Literals because{atMost(o.shared, most),
                           atMost(o.start, trail.least(o.reference) - most - 1),
                           atLeast(o.reference, trail.least(o.reference)), o.present};
    Literals forStart = because;
    forStart.push_back(atMost(o.reference, trail.most(o.reference)));
    if (!engine.imply(atMost(o.start, trail.most(o.reference) + edge - 1), forStart)) {
        return false;
    }
    Literals forReference = because;
    forReference.push_back(atLeast(o.start, trail.least(o.start)));
    return engine.imply(atLeast(o.reference, trail.least(o.start) - edge + 1), forReference);
}

bool OverlapPropagator::keepOut(Engine& engine) const
{
    const Trail& trail = engine.trail();
    const Overlap& o = overlap_;
    const Bound most = std::max(0, trail.most(o.shared));
    if (most >= std::min(o.length, o.window)) {
        return true;
    }
    const Bound edge = most + 1 - o.length - o.window; // from here to −most − 1 too much is shared
    if (trail.least(o.start) - trail.most(o.reference) >= edge && !pushLater(engine, most, edge)) {
        return false;
    }
    return trail.most(o.start) - trail.least(o.reference) > -most - 1 ||
           pushEarlier(engine, most, edge);
}

bool OverlapPropagator::propagate(Engine& engine)
{
    if (!engine.trail().holds(overlap_.present)) {
        return true;
    }
    return raiseShared(engine) && keepOut(engine);
}

} // namespace suppertide::engine
