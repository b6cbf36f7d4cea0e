// Branching: what to decide next by what the problem is about: options, who and where, then the
// tasks that can begin first, then which comes first, then the rest. Near the aims, if there are
// any.
#pragma once

#include <optional>
#include <vector>

#include "core/planner/exact/model.h"

namespace suppertide::exact {

class Branching
{
public:
    explicit Branching(const Model& model);

    [[nodiscard]] std::optional<Literal> next(const engine::Trail& trail);
    void aimAt(std::vector<Bound> aims) { aims_ = std::move(aims); }

private:
    [[nodiscard]] std::optional<Literal> undecidedChoice(const engine::Trail& trail) const;
    [[nodiscard]] std::optional<Literal> earliestStart(const engine::Trail& trail) const;
    [[nodiscard]] Literal nearAim(const engine::Trail& trail, Variable variable) const;

    const Model* model_;
    std::vector<Variable> choices_; // Booleans
    std::vector<Variable> rest_;
    std::size_t restFrom_ = 0; // all before are decided, as long as the trail is this long
    std::size_t restEvents_ = 0;
    std::vector<Bound> aims_;
};

} // namespace suppertide::exact
