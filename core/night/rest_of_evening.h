// RestOfEvening: what is left of an evening under way, as a problem of its own (formulate rule 14).
// Minute 0 is now: done tasks leave and their ties become lags from now, what they hold is held
// from now, running tasks are fixed with the time that they still take, their cook, unit and oven;
// ovens start as hot as they are. What can no longer be met by anything is left out and named, so
// that one late step does not make everything impossible. core/propose plans it.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/night/facts.h"

namespace suppertide {

/// A requirement whose time has passed without its being met.
enum class PassedKind
{
    Wait,    // food has waited longer than its most
    Window,  // a house job, trip or pin past its hours
    Serving, // a course past the time by which it was to be served
};

struct Passed
{
    PassedKind kind = PassedKind::Wait;
    TaskIndex task; // of the whole evening: the one that comes too late
    std::optional<LagIndex> lag;

    friend bool operator==(const Passed&, const Passed&) = default;
};

/// In what a rest may give way; as it stands, in nothing.
struct RestOptions
{
    bool mayChoose = false;  // methods and places not begun may change
    Minutes servingLater{0}; // courses to come may be served so much later than set
    Minutes cooksLonger{0};  // cooks have so much more time after the last of their hours
    /// Requirements that need not be kept to: waits ("lag:l1") and hours ("window:t1").
    std::set<std::string> givenUp;

    [[nodiscard]] bool isNone() const { return *this == RestOptions{}; }
    friend bool operator==(const RestOptions&, const RestOptions&) = default;
};

/// The progress of cooks who have agreed to give way in this.
[[nodiscard]] Progress withGivenUp(Progress progress, const RestOptions& givingWay);

struct RestOfEvening
{
    FormulationPtr whole; // of the whole evening, with true times for what is begun
    Schedule planned;     // of `whole`: as it was and as it is laid out
    /// What the cooks go by: the layout, and where it says nothing, where things are laid out.
    Layout layout;
    EveningFacts facts;
    FormulationPtr formulation;                                // of the rest; minute 0 is now
    IndexedVector<TaskIndex, std::optional<TaskIndex>> inRest; // from `whole`
    std::vector<Passed> passed;
};

/// Fails as formulate does.
[[nodiscard]] Result<RestOfEvening> restOfEvening(const PlanInput& input, const Progress& progress,
                                                  Instant now, const RestOptions& options = {});

/// The rest as its layout has it: what could not begin by now begins as soon as it may, and what is
/// tied to it moves along no further than it must. Nothing is late: nothing moves.
[[nodiscard]] Schedule carriedOn(const RestOfEvening& rest);

/// Cooks, units, ovens and programs for these starts: those that the cooks go by where that holds,
/// else as few others as need be.
[[nodiscard]] Schedule assignedAsBefore(const RestOfEvening& rest, const Schedule& starts);

/// A step that begins at another time than the cooks go by.
struct NightMove
{
    TaskIndex task; // of the rest
    Instant from;
    Instant to;

    friend bool operator==(const NightMove&, const NightMove&) = default;
};

/// In order of time; a step with its ways into and out of the oven counts once, by its first task.
[[nodiscard]] std::vector<NightMove> movesOf(const RestOfEvening& rest, const Schedule& schedule);

/// The layout with the rest as planned: its starts and options; what is begun is where it was.
[[nodiscard]] Layout layoutWith(const RestOfEvening& rest, const Schedule& schedule);

} // namespace suppertide
