// The judges: one function a kind of requirement. Each looks at one requirement and says how it is
// broken; an empty list means that it holds. `check` asks all of them, LiveCheck those that a
// change touches.
#pragma once

#include <vector>

#include "core/check/check.h"
#include "core/check/evidence.h"

namespace suppertide {

using Verdict = std::vector<Broken>;

[[nodiscard]] Verdict judgeChoice(const Evidence& evidence, ChoiceIndex choice);
[[nodiscard]] Verdict judgeStart(const Evidence& evidence, TaskIndex task);
[[nodiscard]] Verdict judgeWindow(const Evidence& evidence, TaskIndex task);
[[nodiscard]] Verdict judgeLag(const Evidence& evidence, LagIndex lag);
[[nodiscard]] Verdict judgeCount(const Evidence& evidence, CountIndex count);
/// Of a pool; a demand of a count is judged with its count.
[[nodiscard]] Verdict judgeDemand(const Evidence& evidence, DemandIndex demand);
[[nodiscard]] Verdict judgeUnit(const Evidence& evidence, const UnitPlace& place);
[[nodiscard]] Verdict judgeHands(const Evidence& evidence, TaskIndex task);
[[nodiscard]] Verdict judgeCook(const Evidence& evidence, CookIndex cook);
[[nodiscard]] Verdict judgeProgram(const Evidence& evidence, OvenIndex oven);
[[nodiscard]] Verdict judgeOvenDemand(const Evidence& evidence, OvenDemandIndex demand);
[[nodiscard]] Verdict judgeShelves(const Evidence& evidence, OvenIndex oven);

} // namespace suppertide
