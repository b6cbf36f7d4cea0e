// Model: a planning problem in the engine's terms: a start for each task, Booleans for options,
// cooks, units and ovens, and constraints among them. Each part of the problem is added by a file
// of its own (add_….cpp). With `selectors`, each requirement that may be left out holds only if its
// own literal does, so that a conflict can be read off assumptions.
//
// What a solution of the model is a schedule for, but for rare cases of an oven that is off
// (oven_uses.h), keeps the problem exactly; nothing that keeps the problem is ruled out.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/planner/engine/difference_costs.h"
#include "core/planner/engine/engine.h"
#include "core/planner/engine/linear.h"
#include "core/planner/exact/box_costs.h"
#include "core/planner/exact/start_differences.h"
#include "core/planner/exact/stay_lengths.h"
#include "core/problem/problem.h"

namespace suppertide::exact {

using engine::Bound;
using engine::Literal;
using engine::Literals;
using engine::Term;
using engine::Variable;

struct ModelStyle
{
    bool selectors = false;
    bool costs = true;
};

/// What is held from one point to another, if it is.
struct Stretch
{
    Term from;
    Term to;
    Literal held; // both tasks are present (and, where asked for, the demand is kept)
};

class Model
{
public:
    /// The problem must outlive this.
    Model(const Problem& problem, ModelStyle style);

    [[nodiscard]] const Problem& problem() const { return *problem_; }
    [[nodiscard]] engine::Engine& engine() { return engine_; }
    [[nodiscard]] const engine::Engine& engine() const { return engine_; }
    [[nodiscard]] const ModelStyle& style() const { return style_; }
    /// False: numbers are too large for the engine, and nothing here means anything.
    [[nodiscard]] bool isSupported() const { return supported_; }
    void refuse() { supported_ = false; }

    [[nodiscard]] Literal always() const { return always_; }
    [[nodiscard]] bool isAlways(Literal literal) const { return engine_.trail().holds(literal); }
    [[nodiscard]] bool isNever(Literal literal) const { return engine_.trail().fails(literal); }
    /// A literal that holds exactly if all of these do.
    [[nodiscard]] Literal all(Literals literals);
    /// Adds: if the first holds, one of the others does.
    void implies(Literal condition, Literals consequences);
    void edge(const Term& from, const Term& to, std::int64_t least, Literal enabler);
    /// A Boolean that is true only if the literal holds.
    [[nodiscard]] Variable boolean(Literal onlyIf);

    [[nodiscard]] Literal present(TaskIndex task) const { return present_[task]; }
    [[nodiscard]] Literal option(ChoiceIndex choice, OptionIndex option) const
    {
        return options_[choice][option];
    }
    [[nodiscard]] Variable start(TaskIndex task) const { return starts_[task]; }
    [[nodiscard]] Term point(const TaskPoint& point) const;
    [[nodiscard]] Stretch stretch(const TaskPoint& from, const TaskPoint& to, Literal selector);
    /// The literal without which a requirement is left out: "lag:l1".
    [[nodiscard]] Literal selector(const std::string& requirement);
    [[nodiscard]] const std::vector<std::pair<std::string, Literal>>& selectors() const
    {
        return selectors_;
    }

    /// Who does what and what is where, filled by the parts: a literal for each possibility.
    IndexedVector<TaskIndex, std::vector<std::pair<CookIndex, Literal>>> cooks;
    /// Whether a cook does anything at all.
    IndexedVector<CookIndex, Literal> works;
    IndexedVector<OvenDemandIndex, std::vector<std::pair<OvenIndex, Literal>>> ovens;
    /// Nothing is known of them where a lag may be left out.
    IndexedVector<OvenDemandIndex, StayLength> stayLengths;
    IndexedVector<OvenDemandIndex, std::optional<Stretch>> ovenStretches;
    /// The same, as what they cost is looked at: where how long a stay lasts is sure, its end is
    /// said by its beginning.
    IndexedVector<OvenDemandIndex, std::optional<Stretch>> ovenStays;
    struct UnitClass
    {
        std::vector<UnitIndex> units; // alike
        Literal chosen;
    };
    IndexedVector<DemandIndex, std::vector<UnitClass>> units;

    /// The sum that the cost is at least (costs whose exact amount the model does not know count
    /// with the least that they can be).
    void charge(Literal condition, std::int64_t amount);
    void charge(Variable variable, std::int64_t weight);
    void chargeAlways(std::int64_t amount) { fixedCost_ += amount; }
    /// The same, said once more as paid for how far two points are apart: `charges` times their
    /// variables and `always` is `price` for each minute of it.
    struct GapCharge
    {
        std::vector<std::pair<Variable, std::int64_t>> charges;
        std::int64_t always = 0;
        std::vector<engine::PricedGap> gaps;
    };
    void charge(GapCharge charge);
    /// A view of a variable as the sum of gaps and a constant.
    struct AsGaps
    {
        std::vector<engine::PricedGap> gaps; // none: it is no such sum
        std::int64_t plus = 0;
    };
    [[nodiscard]] AsGaps asGaps(engine::View view) const;
    /// What all gaps cost together; absent if none costs anything.
    [[nodiscard]] const engine::DifferenceCosts* gapCosts() const { return gapCosts_; }
    [[nodiscard]] Variable cost() const { return cost_; }
    /// What that sum is of, but for what is always charged.
    [[nodiscard]] const std::vector<engine::WeightedView>& costTerms() const { return costTerms_; }
    [[nodiscard]] std::int64_t fixedCost() const { return fixedCost_; }
    /// The same, but with what programs for the ovens have been found to cost; see `ovenCost`.
    /// It guides the search and proves nothing.
    [[nodiscard]] Variable likelyCost() const { return likelyCost_; }
    /// What an oven's program costs at least, given what is in it: raised by clauses that the
    /// search adds.
    IndexedVector<OvenIndex, Variable> ovenLeast;
    /// The same, but where the cheapest program is not known, the cheapest one found.
    IndexedVector<OvenIndex, Variable> ovenCost;
    /// By how much stays in ovens are apart; absent without costs of ovens.
    std::shared_ptr<const StartDifferences> differences;
    /// What is known of each oven's costs by the order of what is in it.
    IndexedVector<OvenIndex, std::shared_ptr<BoxCosts>> ovenBoxes;
    /// All of them, and no less than what is in any of them asks for.
    std::optional<Variable> ovensTogether;
    static constexpr Bound mostOvenCost = 10'000'000;
    /// Booleans that say which comes first and the like, to be decided before the starts.
    std::vector<Variable> orders;

private:
    void addOptions();
    void addTasks();
    void addLags();
    struct Charge
    {
        Variable variable;
        std::int64_t weight;
    };
    void addCostVariables();
    void addGapCosts(Variable cost);
    [[nodiscard]] Variable sumOfOvens(const IndexedVector<OvenIndex, Variable>& costs);
    [[nodiscard]] std::vector<engine::WeightedView>
    termsOf(const std::vector<Charge>& charges) const;
    [[nodiscard]] Variable sumOf(std::vector<engine::WeightedView> terms);

    const Problem* problem_;
    ModelStyle style_;
    engine::Engine engine_;
    Literal always_;
    bool supported_ = true;
    IndexedVector<TaskIndex, Literal> present_;
    IndexedVector<TaskIndex, Variable> starts_;
    IndexedVector<ChoiceIndex, IndexedVector<OptionIndex, Literal>> options_;
    std::map<Literals, Literal> conjunctions_;
    std::vector<std::pair<std::string, Literal>> selectors_;
    std::map<std::string, Literal> selectorOf_;
    std::vector<Charge> charges_;
    std::vector<GapCharge> gaps_;
    const engine::DifferenceCosts* gapCosts_ = nullptr;
    std::int64_t fixedCost_ = 0;
    std::vector<engine::WeightedView> costTerms_;
    Variable cost_;
    Variable likelyCost_;
    std::optional<Variable> ovensSum_;
};

} // namespace suppertide::exact
