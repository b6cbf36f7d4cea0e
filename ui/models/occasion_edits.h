// Changes of an occasion, as values: each takes an occasion (or a library) and gives the next one.
// The pages, the timeline and the repertoire all change the menu through these.
#pragma once

#include <optional>
#include <string>

#include "core/occasion/occasion.h"
#include "ui/models/edit.h"

namespace suppertide::ui {

[[nodiscard]] const Course* findCourse(const Occasion& occasion, const DishId& dish);
[[nodiscard]] const Dish* findDish(const Occasion& occasion, const DishId& dish);
[[nodiscard]] Dish* findDish(Occasion& occasion, const DishId& dish);

/// How many guests of the course have nothing of its main alternatives yet: what a variant that is
/// dropped on it is made for. All guests if everybody is served already or nobody is named; at
/// least 1.
[[nodiscard]] Portions portionsWanted(const Occasion& occasion, const Course& course,
                                      const Recipe& recipe);

/// The occasion with a dish of that variant in the course. A dish of the same recipe that the
/// course has already gets the variant beside its others. Says which dish it is.
struct WithDish
{
    Occasion occasion;
    DishId dish;
};
[[nodiscard]] WithDish withDishAdded(Occasion occasion, const CourseId& course,
                                     const Recipe& recipe, const VariantId& variant,
                                     const Portions& portions);
/// Nothing in the library's occasions names the cook of that kitchen any more: their hours go, and
/// what they were to do is anybody's.
[[nodiscard]] LibraryState withCookForgotten(LibraryState library, const KitchenId& kitchen,
                                             const CookId& cook);
[[nodiscard]] Occasion withDishRemoved(Occasion occasion, const DishId& dish);
/// 0 takes the variant off the mix.
[[nodiscard]] Occasion withPortions(Occasion occasion, const DishId& dish, const VariantId& variant,
                                    const Portions& portions);

/// All times (courses, jobs, trips, the cooks' hours) moved by whole days, so that the first course
/// is served on `date`.
[[nodiscard]] Occasion movedTo(Occasion occasion, const CivilDate& date);
/// The day of the first course; absent without courses.
[[nodiscard]] std::optional<CivilDate> dateOf(const Occasion& occasion);

/// One course after the last, half an hour later, with an alternative of its own; at 19:30 on
/// `date` if it is the first.
[[nodiscard]] Occasion withCourseAdded(Occasion occasion, const std::string& name,
                                       const CivilDate& date);
/// Courses stand in order of serving, whatever was typed.
[[nodiscard]] Occasion sorted(Occasion occasion);

/// A new occasion on `date` with one course, in the first kitchen, and opened. A kitchen is made if
/// there is none.
[[nodiscard]] LibraryState withNewOccasion(const LibraryState& library, const std::string& name,
                                           const CivilDate& date);
/// A copy of the open one ("… (copy)"), opened.
[[nodiscard]] LibraryState withOccasionCopied(const LibraryState& library);
[[nodiscard]] LibraryState withOccasionRemoved(const LibraryState& library, const OccasionId& id);
[[nodiscard]] LibraryState withOpened(const LibraryState& library, const OccasionId& id);

} // namespace suppertide::ui
