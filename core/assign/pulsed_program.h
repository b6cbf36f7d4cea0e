// PulsedProgram: a program that holds its settings, made cheaper by being on only in the minutes in
// which it must be, as a thermostat is. A cost that charges minutes on asks for it.
//
//     held      180 ═══════════════     18 minutes on
//     pulsed    180 ═   ═   ═   ═        4 minutes on
#pragma once

#include <optional>
#include <vector>

#include "core/assign/oven_program.h"

namespace suppertide {

/// On in none but the minutes of `held`, at the same settings, in as few as the stays allow; on
/// where `held` is on at the start of a stay that prefers a setting. Absent: `held` does not keep
/// the stays, or nothing is gained.
[[nodiscard]] std::optional<OvenProgramResult> pulsedProgram(const Oven& oven,
                                                             const OvenProgram& held,
                                                             const std::vector<OvenStay>& stays,
                                                             const OvenProgramStyle& style);

} // namespace suppertide
