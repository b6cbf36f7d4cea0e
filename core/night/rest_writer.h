// RestWriter: writes the problem of the rest from the whole evening and its facts. For
// restOfEvening only.
#pragma once

#include <map>
#include <set>

#include "core/night/rest_of_evening.h"
#include "core/problem/timetable.h"

namespace suppertide {

/// A point of the whole evening as the rest sees it.
struct RestPoint
{
    bool isGone = false;         // not there: not chosen, or not being done
    std::optional<Minutes> past; // from now to then; 0 or negative
    TaskPoint point;             // of the rest, unless gone or past
};

/// Rising intervals that do not overlap, with one more that joins those it touches.
[[nodiscard]] std::vector<Interval> withJoined(const std::vector<Interval>& all, Interval more);

class RestWriter
{
public:
    /// All must outlive this.
    RestWriter(RestOfEvening& rest, const Progress& progress, const RestOptions& options);

    /// Sets formulation, inRest and passed.
    void write();

private:
    void decideChoices();
    void addNow();
    void addTasks();
    void addToCome(TaskIndex task);
    void addUnderWay(TaskIndex task);
    void giveToItsCooks(TaskIndex task, Task& left);
    TaskIndex add(TaskIndex from, Task task);
    void addChoices();
    void addLags();
    void addLag(LagIndex index, TaskPoint from, TaskPoint to, std::optional<Minutes> min,
                std::optional<Minutes> max);
    void addServingLoss(TaskIndex serving, TaskIndex added);
    void addDemands();
    void letGoOfTaken(Demand& demand) const;
    bool holdNow(Demand& demand, DemandIndex index);
    bool takeUnit(Demand& demand, DemandIndex index);
    void addOvenDemands();
    void holdNow(OvenDemand& demand, OvenDemandIndex index);
    void keepGroup(OvenDemandIndex index);
    void addCooks();
    void addOvens();
    void addCosts();

    [[nodiscard]] PlanTime shifted(PlanTime time) const { return time - now_; }
    [[nodiscard]] Interval shifted(const Interval& when) const;
    [[nodiscard]] std::vector<Interval> shifted(const std::vector<Interval>& all) const;
    [[nodiscard]] RestPoint see(const TaskPoint& point) const;
    [[nodiscard]] PlanTime earliest(const TaskPoint& point) const;
    [[nodiscard]] const StepReport* reportOf(TaskIndex task) const;

    RestOfEvening& rest_;
    const Formulation& whole_;
    const Problem& from_;
    const Progress& progress_;
    const RestOptions& options_;
    Minutes now_;
    Timetable times_;
    std::set<ChoiceIndex> open_;
    std::set<TaskIndex> notChosen_;
    Formulation made_;
    TaskIndex nowEvent_;
    IndexedVector<OvenIndex, int> degrees_;
    std::map<CookIndex, int> taken_; // percent of who is at work
    std::map<std::pair<PoolIndex, UnitIndex>, bool> unitsTaken_;
    std::map<CountIndex, std::int64_t> amountsTaken_;
    std::map<OvenIndex, std::int64_t> shelvesTaken_;
    std::map<OvenIndex, std::string> modes_;
    std::map<std::string, OvenIndex> groupOvens_;
};

} // namespace suppertide
