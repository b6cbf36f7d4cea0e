// Redating: the same evening on another day: a copied occasion, or the demo, which is never in the
// past.
#pragma once

#include "core/library/library.h"

namespace suppertide {

/// Everything of the occasion `days` later: servings, jobs, trips, cooks' hours and the layout.
/// What was reported of the night, and what was bought, stay behind: on the other day nothing has
/// been done yet. Clock
/// times stay what they are, also across a clock change in between. BadInput if its zone is
/// unknown.
[[nodiscard]] Result<OccasionRecord> redated(OccasionRecord record, int days);

/// What is at home is to be used so much later.
[[nodiscard]] Larder redated(Larder larder, int days);

/// The next day not before `today` that is of the same kind as `day`: the same weekday of the same
/// month, counted from the month's start (the third Saturday of June). A fifth one that a month
/// lacks is its last.
[[nodiscard]] CivilDate nextOfItsKind(const CivilDate& day, const CivilDate& today);

} // namespace suppertide
