// Ways to serve: for a guest whom no dish of a course suits, which variant would, if some of its
// lines were left out or replaced, as another variant of the same recipe does it or by a
// substitute of the table. Tells of
// possibilities; nothing is changed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/menus/course_offer.h"

namespace suppertide::menus {

/// A line left out, or taken in another form, as another variant has it; or another ingredient
/// that plays its part (substitutes.h).
struct Substitution
{
    std::string ingredient;
    std::optional<std::string> instead; // absent: left out
    std::optional<VariantId> as;        // absent: of the table of substitutes

    friend bool operator==(const Substitution&, const Substitution&) = default;
};

struct WayToServe
{
    DishId dish;
    VariantId variant;
    std::vector<Substitution> substitutions;

    friend bool operator==(const WayToServe&, const WayToServe&) = default;
};

/// At most `most`, fewest substitutions first, then in the order of the course; only such as make
/// the variant wholly suitable.
[[nodiscard]] std::vector<WayToServe> waysToServe(const PlanInput& input, const CourseOffer& offer,
                                                  const Guest& guest, std::size_t most = 3);

} // namespace suppertide::menus
