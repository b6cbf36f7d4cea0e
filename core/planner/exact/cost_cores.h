// CostCores: a lower bound of the cost from reasons why not all of its terms can be as low as they
// might. It assumes each term at its least; terms that cannot be so together are replaced by their
// sum, which is one more, as far as their weights go:
//
//     3·x + 2·y + 5·z,  x ≤ 0 and y ≤ 0 cannot both hold
//  →  2·s + 1·x + 5·z + 2,  s = x + y − 1 ≥ 0
//
// What it learns holds for schedules that are cheaper than the best known; among them the terms as
// they are now must come to less than that one's cost, which is held to while searching.
// Source: A. Morgado, C. Dodaro, J. Marques-Silva, Core-guided MaxSAT with soft cardinality
// constraints (2014); C. Ansótegui, M. Bonet, J. Levy, SAT-based MaxSAT algorithms (2013), for
// looking at heavy terms first; for integers G. Gange, J. Berg, E. Demirović, P. Stuckey,
// Core-guided and core-boosted search for CP (2020).
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/planner/engine/search.h"
#include "core/planner/exact/model.h"

namespace suppertide::exact {

class CostCores
{
public:
    using End = engine::Search::End;

    /// Both must outlive this.
    CostCores(Model& model, engine::Search& search);

    /// Raises the bound as far as so many conflicts allow, among schedules for which `better`
    /// holds. Found: the search has a solution, with the terms looked at as low as they can be;
    /// Infeasible: there is none that is better.
    [[nodiscard]] End raise(Literal better, std::int64_t conflicts);
    /// Whether there are no lighter terms to be looked at yet.
    [[nodiscard]] bool looksAtAll() const { return looksAtAll_; }

private:
    struct Charge
    {
        engine::View view = 0; // costs weight · view
        std::int64_t weight = 0;
        Model::AsGaps gaps;
    };
    void takeApart();
    [[nodiscard]] std::int64_t usual(std::int64_t conflicts) const;
    [[nodiscard]] std::int64_t bound() const;
    [[nodiscard]] Literal atItsLeast(const Charge& charge) const;
    [[nodiscard]] Literals assumptions(Literal better) const;
    [[nodiscard]] bool looksAtLighter();
    [[nodiscard]] End tryFor(const Literals& assumed, std::int64_t conflicts);
    [[nodiscard]] std::vector<std::size_t> chargesOf(const Literals& core) const;
    [[nodiscard]] Literals shrunk(Literals core, Literal better);
    [[nodiscard]] Model::AsGaps sumOfGaps(const std::vector<std::size_t>& together) const;
    void replaceBySum(const std::vector<std::size_t>& together);
    [[nodiscard]] bool holdToBetter(Literal better);
    [[nodiscard]] bool pushUp(std::size_t charge, Literal better);

    Model* model_;
    engine::Search* search_;
    std::vector<Charge> charges_;
    std::int64_t fixed_ = 0;
    std::int64_t lightest_ = 0; // weight of the lightest charge that is looked at
    bool looksAtAll_ = false;
    std::optional<std::int64_t> leftWhenHeld_; // what could still be better then
    std::int64_t left_ = 0;                    // conflicts
};

} // namespace suppertide::exact
