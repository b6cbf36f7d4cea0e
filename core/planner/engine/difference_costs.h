// DifferenceCosts: what is paid for differences of variables comes to at least so much, given all
// edges in force and the bounds of the variables:
//
//     bread ≤ 10:00, else 2 a minute       soup ≥ 9:50, else 3 a minute
//     bread ───[ +30 ]──▶ soup ───[ +20 ]──▶ gravy ≤ 10:30, else 1 a minute
//
// None of these says by itself that something is paid; together they do. The least is the greatest
// worth of a circulation: an edge is worth its weight for each unit that flows along it; a price is
// the most that flows along what it is paid for. The edges along which something flows are the
// reason. The flow is kept between calls, whatever was decided or taken back in the meantime.
// Source: R. Ahuja, D. Hochbaum, J. Orlin, Solving the convex cost integer dual network flow
// problem, Management Science 49 (2003), for the dual; M. Vanhoucke, E. Demeulemeester, W.
// Herroelen, An exact procedure for the resource-constrained weighted earliness-tardiness project
// scheduling problem, Annals of Operations Research 102 (2001), for such a bound in scheduling.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/planner/engine/engine.h"

namespace suppertide::engine {

/// price · max(0, to − from) is paid if `onlyIf` holds.
struct PricedGap
{
    Term from;
    Term to;
    std::int64_t price = 0; // ≥ 0
    Literal onlyIf;
};

class DifferenceCosts : public Propagator
{
public:
    /// `total` is at least what the gaps cost together, given the edges that the engine has when
    /// this is posted.
    static DifferenceCosts& post(Engine& engine, std::vector<PricedGap> gaps, Term total);
    DifferenceCosts(std::vector<PricedGap> gaps, Term total);

    bool propagate(Engine& engine) override;
    /// Of two orders that are both open and both broken by the values that cost least, the one
    /// that is broken less, where that is most.
    [[nodiscard]] std::optional<Literal> worstConflict(const Trail& trail) const;
    void wentBack(std::size_t events) override;
    [[nodiscard]] int order() const override { return 2; }

private:
    using Node = std::uint32_t;
    enum class Kind : std::uint8_t
    {
        Edge,
        Price,
        LeastValue, // from the node of all constants
        MostValue   // to it
    };
    /// to ≥ from + length, or so much is paid for each minute by which it is not.
    struct Arc
    {
        Kind kind = Kind::Edge;
        Node from = 0;
        Node to = 0;
        std::int64_t length = 0;
        std::int64_t most = 0; // that may flow
        std::optional<Literal> onlyIf{};
        Variable variable{};
        Bound floor = 0; // of a bound: what holds at level 0, in the arc's terms
        std::int64_t flow = 0;
        bool inForce = false;
        bool isStale = true;         // what it asks for is to be read anew, and mended
        bool isLinked = false;       // it is in force, or something flows
        std::uint32_t placeFrom = 0; // of its steps in the lists of its ends
        std::uint32_t placeTo = 0;
    };
    /// An arc used forwards or backwards.
    struct Step
    {
        std::uint32_t arc = 0;
        bool back = false;
    };

    void build(Engine& engine);
    void findOrders();
    [[nodiscard]] std::int64_t lacking(const std::vector<std::uint32_t>& arcs) const;
    [[nodiscard]] Node nodeOf(Variable variable);
    void addArc(Arc arc);
    void markStale(std::uint32_t arc);
    void follow(const Trail& trail);
    void refresh(const Trail& trail, std::uint32_t arc);
    void link(std::uint32_t arc);
    void unlink(std::uint32_t arc);
    void takeOut(Node node, std::uint32_t place);
    void letFlow(Arc& arc, std::int64_t more);
    [[nodiscard]] std::int64_t slack(const Arc& arc) const
    {
        return at_[arc.to] - at_[arc.from] - arc.length;
    }
    [[nodiscard]] bool settle();
    [[nodiscard]] bool mend(std::uint32_t arc, bool back);
    [[nodiscard]] std::int64_t room(const Arc& arc, bool back) const;
    [[nodiscard]] std::int64_t distances(Node source, Node goal, std::int64_t below);
    void startAfresh();
    void sayWhy(std::int64_t spare, Literals& because) const;

    std::vector<PricedGap> gaps_;
    Term total_;
    std::vector<std::int32_t> nodes_; // by variable; −1: none
    std::vector<std::int64_t> at_;    // by node: values at which so much, and no more, is paid
    std::vector<Arc> arcs_;
    std::vector<std::vector<Step>> out_;             // by node, of linked arcs
    std::vector<std::vector<std::uint32_t>> byView_; // arcs of which it says whether, or how long
    std::vector<std::uint32_t> stale_;
    /// Edges of which one is in force as a Boolean is true, or false: one order, or the other.
    struct EitherOrder
    {
        Variable which;
        std::vector<std::uint32_t> ifTrue; // arcs
        std::vector<std::uint32_t> ifFalse;
    };
    std::vector<EitherOrder> orders_;
    struct Touched
    {
        std::size_t event;
        std::uint32_t arc;
    };
    std::vector<Touched> touched_; // by events of the trail that have been followed
    std::size_t followed_ = 0;
    std::int64_t worth_ = 0; // of all that flows
    std::vector<std::int64_t> distance_;
    std::vector<Step> via_;
    std::vector<Node> reached_;
    std::vector<std::pair<std::int64_t, Node>> heap_;
};

} // namespace suppertide::engine
