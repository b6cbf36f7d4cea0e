// PlaceTable: who gets what at table, guest by guest and dish by dish, with what speaks against it;
// and the occasion with one guest's helping changed by hand. Shown on a page, and on paper.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/occasion/give_helping.h"
#include "core/occasion/suitability.h"
#include "core/plan/formulation.h"

namespace suppertide::menus {

/// Dishes of a course of which each guest gets one: the main dishes of the alternatives that may
/// lead it; or a single side.
struct PlaceColumn
{
    CourseId course;
    std::string name; // the course's, or the side's
    std::vector<DishId> dishes;
    bool isMain = false;

    friend bool operator==(const PlaceColumn&, const PlaceColumn&) = default;
};

/// What a guest may be given.
struct PlaceOption
{
    DishId dish;
    VariantId variant;
    Suitability suitability;

    friend bool operator==(const PlaceOption&, const PlaceOption&) = default;
};

/// What a guest gets of a column; nothing: goes without.
using PlaceCell = std::optional<PlaceOption>;

struct PlaceTable
{
    std::vector<PlaceColumn> columns;
    std::vector<GuestId> guests;
    std::vector<std::vector<PlaceCell>> cells; // by guest and column

    friend bool operator==(const PlaceTable&, const PlaceTable&) = default;
};

/// Of what is cooked and of what could be: a course of which nothing is cooked has a column too.
[[nodiscard]] PlaceTable placesOf(const PlanInput& input);

/// All variants of the column's dishes for the guest, as the menu has them.
[[nodiscard]] std::vector<PlaceOption> optionsFor(const PlanInput& input, const PlaceColumn& column,
                                                  const GuestId& guest);

/// The guest gets that, or nothing, instead of what they had of the column; everybody else of it
/// keeps what they have, by name from now on. Portions follow.
[[nodiscard]] Occasion withHelping(const PlanInput& input, const PlaceColumn& column,
                                   const GuestId& guest, const GivenHelping& helping);

} // namespace suppertide::menus
