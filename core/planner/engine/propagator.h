// Propagator: one constraint over many variables. It is run after one of the views that it listens
// to has fallen, and implies literals, each with the literals that it follows from.
#pragma once

#include "core/planner/engine/trail.h"

namespace suppertide::engine {

class Engine;

class Propagator
{
public:
    Propagator() = default;
    virtual ~Propagator() = default;
    Propagator(const Propagator&) = delete;
    Propagator& operator=(const Propagator&) = delete;
    Propagator(Propagator&&) = delete;
    Propagator& operator=(Propagator&&) = delete;

    /// False: no values are left; the engine knows why.
    [[nodiscard]] virtual bool propagate(Engine& engine) = 0;
    /// Those of lower order run first.
    [[nodiscard]] virtual int order() const { return 0; }
    /// For literals implied with `implyLater`: why the event's literal, weakened to `needed`, held.
    virtual void explain(const Trail& /*trail*/, EventIndex /*event*/, Literal /*needed*/,
                         Literals& /*because*/) const
    {}
    /// For those that the engine tells: the trail has gone back to so many events.
    virtual void wentBack(std::size_t /*events*/) {}

private:
    friend class Engine;
    std::uint32_t index_ = 0; // in the engine
};

} // namespace suppertide::engine
