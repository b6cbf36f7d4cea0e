// TaskPlaces: on which lanes of the timeline each task of a plan stands, and what is held where
// between two tasks. Used to make a scene of a plan.
#pragma once

#include <string>
#include <vector>

#include "core/plan/plan.h"
#include "core/problem/timetable.h"
#include "ui/timeline/scene.h"

namespace suppertide::ui {

[[nodiscard]] std::string ovenLane(const Problem& problem, OvenIndex oven);
[[nodiscard]] std::string unitLane(const Problem& problem, PoolIndex pool, UnitIndex unit);
[[nodiscard]] std::string countLane(const Problem& problem, CountIndex count);
[[nodiscard]] std::string cookLane(const Problem& problem, CookIndex cook);

/// A thing held between two tasks, in its own lane.
struct HeldSpan
{
    DemandIndex demand;
    std::string lane;
    Interval when; // between the two blocks
};

class TaskPlaces
{
public:
    explicit TaskPlaces(const Plan& plan);

    [[nodiscard]] const std::vector<Placement>& of(TaskIndex task) const { return places_[task]; }
    [[nodiscard]] const std::vector<HeldSpan>& spans() const { return spans_; }
    [[nodiscard]] const Timetable& times() const { return times_; }
    /// A task that is drawn: present, with a start, and longer than an event.
    [[nodiscard]] bool isShown(TaskIndex task) const;
    /// The task that is drawn for an oven demand: the time in the oven itself.
    [[nodiscard]] std::optional<TaskIndex> inOven(OvenDemandIndex demand) const;
    /// Whether anything shown stands on that lane.
    [[nodiscard]] bool isUsed(const std::string& lane) const;

private:
    void placeOvens();
    void placeOven(OvenIndex oven);
    void placeDemands();
    void placeCooks();
    void put(TaskIndex task, Placement place);
    [[nodiscard]] std::vector<TaskIndex> tasksIn(OvenDemandIndex demand) const;

    const Plan& plan_;
    const Problem& problem_;
    Timetable times_;
    IndexedVector<TaskIndex, std::vector<Placement>> places_;
    std::vector<HeldSpan> spans_;
};

} // namespace suppertide::ui
