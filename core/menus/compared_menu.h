// ComparedMenu: one menu of an occasion, an alternative leading each course, with what is known of
// it so far: whom it suits, whether it can be cooked in this kitchen, and what it would do to the
// evening. Values; compare.h makes them, figure.h reads them for tables and charts.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/menus/energy.h"
#include "core/menus/mix.h"
#include "core/plan/layout.h"

namespace suppertide::menus {

/// Whether there is a plan for this kitchen and these cooks.
enum class Cookable
{
    Yes,
    No, // proven
    NotSettled
};

/// What the best plan found so far comes to.
struct EveningFigures
{
    Minutes handsOn{0};  // weighted by attention, all cooks together
    Minutes lastHour{0}; // of these, before the first serving
    Minutes ahead{0};    // of these, before the day of the first serving
    int stepsAhead = 0;  // done before that day
    int steps = 0;       // in all
    int ovenChanges = 0;
    Minutes ovenOn{0};
    Energy energy;
    int unsafe = 0;        // clashes with rules of food safety, and at guests' places
    std::int64_t cost = 0; // of the plan, in its own units

    friend bool operator==(const EveningFigures&, const EveningFigures&) = default;
};

/// A main ingredient of more than one course.
struct Repeated
{
    std::string ingredient;
    std::vector<CourseId> courses;

    friend bool operator==(const Repeated&, const Repeated&) = default;
};

/// What one dish leaves and another takes.
struct LeftUsed
{
    std::string what; // "egg yolks from Rhubarb pavlova"
    std::string by;   // "Mushroom tartlets"

    friend bool operator==(const LeftUsed&, const LeftUsed&) = default;
};

struct ComparedMenu
{
    std::size_t number = 0;             // in the order of the courses' alternatives
    std::vector<AlternativeId> leading; // by course
    std::vector<GuestId> notServed;     // nothing safe in some course; each once
    std::vector<GuestId> unsure;        // something of which not all is known; each once
    int extraSteps = 0;                 // for guests whom what leads does not suit
    std::vector<Repeated> repeated;
    std::vector<LeftUsed> leftUsed;    // by the best plan found so far; need not be bought
    std::optional<std::int64_t> price; // of what must be bought, in hundredths; unknown: absent

    Cookable cookable = Cookable::NotSettled;
    std::vector<std::string> conflict;     // if proven: requirements that cannot hold together
    std::optional<EveningFigures> evening; // if it can be cooked
    bool isBestPlan = false;               // no plan of this menu costs less: proven
    std::shared_ptr<const Layout> layout;  // that plan's, if it can be cooked

    [[nodiscard]] bool suitsEverybody() const { return notServed.empty() && unsure.empty(); }
};

} // namespace suppertide::menus
