// OvenNow: how hot each oven is at this moment, as the evening went: by the program that the plan
// had for it, by what a thermometer showed, and by what was put in: nobody puts food into an oven
// that is not ready. For restOfEvening.
#pragma once

#include "core/night/facts.h"

namespace suppertide {

/// In whole °C. `whole` has true times (`withFacts`), `schedule` its ovens and programs.
[[nodiscard]] IndexedVector<OvenIndex, int> ovensNow(const Formulation& whole,
                                                     const Schedule& schedule,
                                                     const EveningFacts& facts,
                                                     const Progress& progress);

} // namespace suppertide
