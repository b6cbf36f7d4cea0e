// Target box: where a thing that can be pointed at is drawn: for the mark of the focus and for a
// menu that is called by key. Pure.
#pragma once

#include <optional>

#include "ui/timeline/geometry.h"
#include "ui/timeline/hit_test.h"

namespace suppertide::ui {

/// Cut to the view where the thing itself is longer (a lane, a fold). None if it is not drawn. A
/// flag's box is that of its mast on the rail; a clash with several tags has that of the first in
/// `band`, or, without one, of any.
[[nodiscard]] std::optional<Box> boxOfTarget(const Scene& scene, const Geometry& geometry,
                                             const Target& target,
                                             std::optional<LaneBand> band = std::nullopt);

} // namespace suppertide::ui
