// Block words: what is said of a thing in the timeline, on a hover card and to a screen reader.
#pragma once

#include <QString>

#include "ui/timeline/geometry.h"
#include "ui/timeline/hit_test.h"

namespace suppertide::ui {

/// The block's own sentence, or one made of what the scene knows: "Braise shoulder, 15:55 to 19:30,
/// on Oven, Maren; pinned; clash 1: …".
[[nodiscard]] QString sentenceOf(const Scene& scene, const SceneBlock& block);

/// For the hover card; empty where there is nothing to say. `x`: the pointer, for the contents of a
/// cold place.
[[nodiscard]] QString describe(const Scene& scene, const Target& target, double x,
                               const Geometry& geometry);

} // namespace suppertide::ui
