// EveningFacts: where each task of an evening stands at one moment: to come, under way, done, or
// not being done, with its true times. Follows from what was reported and from what that implies:
// what needs nobody begins and ends by itself, what must have come before is done. Used by
// restOfEvening; it plans nothing.
#pragma once

#include "core/night/progress.h"

namespace suppertide {

enum class StepState
{
    ToCome,
    UnderWay,
    Done,
    LeftOut
};

struct StepFact
{
    StepState state = StepState::ToCome;
    /// Done: when it was; under way: since when, and when it should end, later than now.
    Interval when;
    Minutes overdue{0}; // under way: past when it should have ended
    /// To come: no earlier than this.
    PlanTime earliest;

    [[nodiscard]] bool isBegun() const
    {
        return state == StepState::UnderWay || state == StepState::Done;
    }
    friend bool operator==(const StepFact&, const StepFact&) = default;
};

struct EveningFacts
{
    PlanTime now;
    IndexedVector<TaskIndex, StepFact> steps;

    friend bool operator==(const EveningFacts&, const EveningFacts&) = default;
};

/// The same step of the same portions: its time in the oven and its ways in and out, its pieces.
[[nodiscard]] bool areOneBatch(const TaskSource& one, const TaskSource& other);

/// `planned` says which tasks are there and when they were to begin. Reports of later than `now`
/// do not count yet.
[[nodiscard]] EveningFacts factsOf(const Formulation& formulation, const Schedule& planned,
                                   const Progress& progress, Instant now);

} // namespace suppertide
