// CourseOffer: what one course of an occasion has to offer, in numbers that a search can work with:
// its dishes with the nature of each variant, which alternatives may lead, and how many steps a
// choice of variants takes. Used by core/menus alone.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "core/occasion/suitability.h"
#include "core/plan/formulation.h"

namespace suppertide::menus {

struct OfferedVariant
{
    VariantId id;
    VariantNature nature;
};

struct OfferedDish
{
    const Dish* dish = nullptr;
    const Recipe* recipe = nullptr;
    std::optional<std::size_t> alternative; // absent: for everybody
    std::vector<OfferedVariant> variants;
    std::size_t usual =
        0; // the variant that half of the guests or more have so far, else the first
};

struct CourseOffer
{
    const Course* course = nullptr;
    std::vector<AlternativeId> alternatives; // that may lead
    std::vector<OfferedDish> dishes;         // whose recipes are there, in order of the course

    /// The first dish of an alternative is what it is about; absent if it has none.
    [[nodiscard]] std::optional<std::size_t> mainDish(std::size_t alternative) const;
    [[nodiscard]] std::vector<std::size_t> dishesOf(std::optional<std::size_t> alternative) const;
};

/// The alternatives of a course that may lead it, in its order: those with dishes that are not for
/// everybody. Of a course without alternatives one, the empty id: all its dishes.
[[nodiscard]] std::vector<AlternativeId> leadingAlternatives(const Course& course);

/// Of a dish for everybody that has no portions while others of the course have, nothing is
/// offered. `input` must outlive the offer.
[[nodiscard]] CourseOffer offerOf(const PlanInput& input, const Course& course);

/// Dish and variant, by their numbers in the offer.
using MadeVariant = std::pair<std::size_t, std::size_t>;

/// How many steps it takes to make some variants of a course, with their preparations and the usual
/// method of each choice; steps that variants share count once.
class StepCounter
{
public:
    /// Both must outlive this.
    StepCounter(const PlanInput& input, const CourseOffer& offer);
    [[nodiscard]] int count(const std::set<MadeVariant>& made);

private:
    PlanInput input_; // recipes, kitchen; the occasion is exchanged for each count
    const CourseOffer& offer_;
    std::map<std::set<MadeVariant>, int> known_;
};

} // namespace suppertide::menus
