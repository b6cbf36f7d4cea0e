// Mix: for one course and the alternative that leads it, which portion each guest gets. Everybody
// whom the leading dish suits gets it in its usual variant; the others get the variant or
// alternative that suits them and takes the fewest extra steps, worked out for all of them
// together. A guest for whom nothing is safe is named, with what would make something safe.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/menus/course_offer.h"
#include "core/menus/ways_to_serve.h"

namespace suppertide::menus {

/// A dislike weighs as much as so many more steps (our own choice).
inline constexpr int stepsPerDislike = 4;

/// One helping of one guest.
struct Plate
{
    GuestId guest;
    DishId dish;
    VariantId variant;
    bool isMain = false; // of what leads the course, or what the guest gets instead
    Suitability suitability;

    friend bool operator==(const Plate&, const Plate&) = default;
};

/// A guest whom no main dish of the course suits: they get none.
struct NotServed
{
    GuestId guest;
    std::vector<WayToServe> ways; // fewest changes first; may be empty

    friend bool operator==(const NotServed&, const NotServed&) = default;
};

/// A guest who goes without a side, as it does not suit.
struct GoesWithout
{
    GuestId guest;
    DishId dish;

    friend bool operator==(const GoesWithout&, const GoesWithout&) = default;
};

struct CourseMix
{
    CourseId course;
    AlternativeId leading;
    std::vector<Dish> dishes; // all of the course, with their new mixes
    std::vector<Plate> plates;
    std::vector<NotServed> notServed;
    std::vector<GoesWithout> without;
    int steps = 0;      // that it takes, with preparations
    int extraSteps = 0; // above those of the leading dish and the sides alone

    /// Each guest has a main dish of which all is known.
    [[nodiscard]] bool suitsEverybody() const;
    /// Guests who get something of which not all is known; each once.
    [[nodiscard]] std::vector<GuestId> unsure() const;

    friend bool operator==(const CourseMix&, const CourseMix&) = default;
};

/// The mix with `leading`, which must be one of the offer's alternatives.
[[nodiscard]] CourseMix mixOf(const PlanInput& input, const CourseOffer& offer,
                              const AlternativeId& leading);

/// The course as it is with the mix. What is not in the mix has no portions.
[[nodiscard]] Course withMix(Course course, const CourseMix& mix);

/// The alternative of the course that most guests eat of now; the first if nothing is cooked yet.
[[nodiscard]] AlternativeId leadingNow(const Course& course);

} // namespace suppertide::menus
