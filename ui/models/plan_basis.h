// PlanBasis: what a plan had been made from, kept in the layout when it is taken, so that it can be
// said later, after a restart too, that the evening has changed since and what of it.
#pragma once

#include <QString>
#include <QStringList>

#include <map>
#include <string>

#include "ui/document/state.h"

namespace suppertide::ui {

/// A print of each part that the open occasion's plan hangs on: "guests", "course/soup",
/// "recipe/roast-roots". Equal prints are equal parts. Requires an open occasion with a kitchen.
[[nodiscard]] std::map<std::string, std::string> planBasis(const LibraryState& library);

/// What has changed since the open occasion's plan was taken: "the guests", "the main course";
/// empty if nothing has, or it was laid out by hand.
[[nodiscard]] QStringList changedSincePlanned(const LibraryState& library);

/// "Planned before the guests and the kitchen changed."; empty for no changes.
[[nodiscard]] QString staleText(const QStringList& changed);

} // namespace suppertide::ui
