// Why this long: the sentences that say how a step's length was computed, with the numbers behind
// it, and that it differs from the recipe's own.
#pragma once

#include <string>
#include <vector>

#include "core/plan/formulation.h"
#include "core/wording/wording.h"

namespace suppertide {

/// "Computed for the joint: 84 min (70 to 103). The recipe says 60 min: look at both." and the
/// numbers, "Because: mass 1.6 kg; …". Or why nothing could be computed. A sentence each.
[[nodiscard]] std::vector<std::string> whyThisLong(const ComputedDuration& computed,
                                                   const ReadingStyle& style = {});

/// The first of them in few words, for paper: "computed 84 min, the recipe says 60". Empty if the
/// two agree or nothing was computed.
[[nodiscard]] std::string lengthNote(const ComputedDuration& computed);

/// Of the step, and of the waits that begin or end with it, each once.
[[nodiscard]] std::vector<ComputedDuration> computedAt(const Plan& plan, TaskIndex task);

} // namespace suppertide
