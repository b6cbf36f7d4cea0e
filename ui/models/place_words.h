// What pages of who gets what have in common: names of guests and helpings, marks and words of what
// speaks against one, and the change by which a guest gets another.
#pragma once

#include <QString>

#include <optional>

#include "core/menus/place_table.h"
#include "ui/models/edit.h"

namespace suppertide::ui {

/// The open occasion with the recipes of all alternatives, cooked or not; absent if none is open.
[[nodiscard]] std::optional<PlanInput> placesInput(const LibraryState& library);

/// “✕ milk”, “? label”: what speaks against a helping, in few signs; empty if nothing does.
[[nodiscard]] QString markOf(const Suitability& suitability);
/// The same in words.
[[nodiscard]] QString wordsOf(const Suitability& suitability);

struct HelpingWords
{
    QString dish;    // "Squash"
    QString variant; // "vegetarian"; empty where there is only one
};
[[nodiscard]] HelpingWords helpingWords(const PlanInput& input, const DishId& dish,
                                        const VariantId& variant);
/// "Squash, vegetarian".
[[nodiscard]] QString helpingName(const PlanInput& input, const DishId& dish,
                                  const VariantId& variant);
[[nodiscard]] QString guestName(const PlanInput& input, const GuestId& guest);

/// The guest gets that, or nothing, of the column; `input` must be the library's.
[[nodiscard]] Edit givenHelping(const LibraryState& library, const PlanInput& input,
                                const menus::PlaceColumn& column, const GuestId& guest,
                                const GivenHelping& helping);

} // namespace suppertide::ui
