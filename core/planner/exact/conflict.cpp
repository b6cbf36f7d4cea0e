#include "core/planner/exact/conflict.h"

#include <algorithm>
#include <limits>

#include "core/planner/engine/search.h"
#include "core/planner/exact/branching.h"
#include "core/planner/exact/model.h"
#include "core/planner/exact/oven_programs.h"
#include "core/planner/exact/oven_uses.h"
#include "core/planner/exact/reading.h"

namespace suppertide::exact {

namespace {

using engine::Search;

class Shrinking
{
public:
    Shrinking(Model& model, quick_start::Budget& budget)
        : budget_(&budget), model_(&model), programs_(model.problem()), branching_(model),
          search_(
              model.engine(),
              [this](const engine::Trail& trail) {
                  const auto leftOut = undecidedSelector(trail);
                  return leftOut ? leftOut : branching_.next(trail);
              },
              [&budget, left = std::int64_t{0}](std::int64_t steps) mutable {
                  left += steps;
                  const std::int64_t whole = left / stepsPerStep;
                  left %= stepsPerStep;
                  return budget.spend(whole);
              })
    {}

    /// Some of the literals that cannot hold together; absent: not found in time, or they can.
    std::optional<Literals> fails(const Literals& literals)
    {
        std::int64_t conflicts = 200;
        for (bool byActivity = false;; byActivity = !byActivity) {
            switch (search_.run(literals, {conflicts, byActivity})) {
            case Search::End::Found:
                if (!ruleOutOvens()) {
                    return std::nullopt;
                }
                break;
            case Search::End::Infeasible:
                return search_.core();
            case Search::End::Given:
                break;
            }
            conflicts = std::min<std::int64_t>(2 * conflicts, longest);
            if (budget_->isOver()) {
                return std::nullopt;
            }
        }
    }

private:
    static constexpr std::int64_t stepsPerStep = 16;
    static constexpr std::int64_t longest = 1'000'000'000; // conflicts of one try

    /// What need not hold is left out first of all: that others can hold is easy to see then.
    std::optional<Literal> undecidedSelector(const engine::Trail& trail)
    {
        if (trail.events().size() < decidedEvents_) {
            decided_ = 0;
        }
        decidedEvents_ = trail.events().size();
        const auto& selectors = model_->selectors();
        for (; decided_ < selectors.size(); ++decided_) {
            const Literal selector = selectors[decided_].second;
            if (!trail.holds(selector) && !trail.fails(selector)) {
                return ~selector;
            }
        }
        return std::nullopt;
    }

    /// Whether an oven has no program for what was found; what is in it is then ruled out.
    bool ruleOutOvens()
    {
        const auto clauses = withoutProgram(*model_, search_.values(), programs_);
        for (const Literals& clause : clauses) {
            model_->engine().addClause(clause);
        }
        return !clauses.empty();
    }

    quick_start::Budget* budget_;
    Model* model_;
    OvenPrograms programs_;
    Branching branching_;
    std::size_t decided_ = 0; // selectors, as long as the trail is this long
    std::size_t decidedEvents_ = 0;
    Search search_;
};

} // namespace

std::optional<Conflict> findConflict(const Problem& problem, quick_start::Budget& budget)
{
    Model model(problem, {true, false});
    if (!model.isSupported()) {
        return std::nullopt;
    }
    Literals all;
    for (const auto& [name, literal] : model.selectors()) {
        all.push_back(literal);
    }
    Shrinking shrinking(model, budget);
    auto found = shrinking.fails(all);
    if (!found) {
        return std::nullopt;
    }
    Literals core = *std::move(found);
    Literals needed;
    while (!core.empty() && !budget.isOver()) {
        const Literal tried = core.back();
        core.pop_back();
        Literals rest = needed;
        rest.insert(rest.end(), core.begin(), core.end());
        if (const auto smaller = shrinking.fails(rest)) {
            std::erase_if(core, [&](Literal literal) {
                return std::find(smaller->begin(), smaller->end(), literal) == smaller->end();
            });
        } else {
            needed.push_back(tried);
        }
    }
    Conflict conflict;
    conflict.minimal = !budget.isOver();
    needed.insert(needed.end(), core.begin(), core.end());
    for (const auto& [name, literal] : model.selectors()) {
        if (std::find(needed.begin(), needed.end(), literal) != needed.end()) {
            conflict.requirements.push_back(name);
        }
    }
    return conflict;
}

} // namespace suppertide::exact
