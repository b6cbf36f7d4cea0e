// Analysis: what a conflict teaches. From the literals that cannot all hold, the latest is replaced
// by what it follows from, until only one of the last level is left (the first unique implication
// point); the rest is thinned out by leaving out what follows from the others. Of each view only
// the strongest literal needed is kept, and only as strong as it is needed.
// Source: L. Zhang et al., Efficient conflict driven learning in a Boolean satisfiability solver
// (2001); N. Sörensson, A. Biere, Minimizing learned clauses (2009).
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/planner/engine/trail.h"

namespace suppertide::engine {

class Engine;

class Analysis
{
public:
    struct Learnt
    {
        Literals literals; // the first is implied at `level`; the second fails last of the others
        std::int32_t level = 0;
        std::int32_t levels = 0; // how many different ones
    };

    explicit Analysis(Engine& engine) : engine_(&engine) {}

    /// Absent: the conflict holds at level 0.
    [[nodiscard]] std::optional<Learnt> learn(const Literals& conflict);

    /// The decisions from which a literal that holds follows.
    [[nodiscard]] static Literals decisionsBehind(const Engine& engine, Literal literal);

private:
    struct Need
    {
        Literal literal;
        EventIndex event = 0;
    };
    /// What is needed, in a heap by event, at most one of a view.
    class Needs;

    [[nodiscard]] bool isCovered(Literal literal, EventIndex before, int depth,
                                 const std::vector<Need>& kept) const;
    void thinOut(std::vector<Need>& kept) const;
    [[nodiscard]] Learnt clauseOf(const Need& implied, const std::vector<Need>& kept) const;
    [[nodiscard]] std::int32_t levelOf(EventIndex event) const;

    Engine* engine_;
};

} // namespace suppertide::engine
