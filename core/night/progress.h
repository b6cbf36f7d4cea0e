// Progress: what the cooks have said of an evening under way: which steps are begun and done, which
// are late or not being done, what an oven's thermometer shows. Facts by the readable ids of tasks
// and ovens, in UTC, kept with the occasion, so that a restart comes back to the same moment. It
// plans nothing; restOfEvening does.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/plan/plan.h"

namespace suppertide {

/// What was said of one step, and what it was begun with: a step keeps its cooks, its burner and
/// its oven until it is done.
struct StepReport
{
    std::optional<Instant> started;
    std::optional<Instant> done;
    std::optional<Instant> notBefore; // begins no earlier than this
    Minutes longer{0};                // takes so much longer than planned
    bool isLeftOut = false;           // it is not being done
    std::vector<std::string> cooks;
    std::map<std::string, std::string> units; // demand id → unit
    std::map<std::string, std::string> ovens; // oven demand id → oven

    friend bool operator==(const StepReport&, const StepReport&) = default;
};

/// What the thermometer of an oven showed.
struct OvenReading
{
    std::string oven;
    Instant at;
    int celsius = 0;

    friend bool operator==(const OvenReading&, const OvenReading&) = default;
};

struct Progress
{
    std::map<std::string, StepReport> steps; // by task id
    std::vector<OvenReading> ovens;          // as they were said
    std::set<std::string> givenUp;           // requirements ("lag:l1") that the cooks let go
    Minutes longerHours{0};                  // after the last of their hours
    /// Who was told to do what is to come, by task id: it stays so while it can.
    std::map<std::string, std::vector<std::string>> cooks;

    [[nodiscard]] bool empty() const { return *this == Progress{}; }
    friend bool operator==(const Progress&, const Progress&) = default;
};

// Each gives the progress with one more report; `plan` is what the cooks went by, and `task` is
// one of its tasks.
[[nodiscard]] Progress withStarted(Progress progress, const Plan& plan, TaskIndex task, Instant at);
[[nodiscard]] Progress withDone(Progress progress, const Plan& plan, TaskIndex task, Instant at);
/// A step under way takes `by` longer; one to come begins so much later than planned, or than now
/// where its time has passed.
[[nodiscard]] Progress withLate(Progress progress, const Plan& plan, TaskIndex task, Minutes by,
                                Instant now);
[[nodiscard]] Progress withLeftOut(Progress progress, const Plan& plan, TaskIndex task);
[[nodiscard]] Progress withOvenAt(Progress progress, const std::string& oven, Instant at,
                                  int celsius);
/// Who is to do what is to come, as the plan has it.
[[nodiscard]] Progress withCooks(Progress progress, const Plan& plan);
/// All that the plan has before `now` went as planned: done, or begun where it goes on.
[[nodiscard]] Progress asPlannedUntil(Progress progress, const Plan& plan, Instant now);

/// Whether it is something that a cook begins and ends, and so can report.
[[nodiscard]] bool isReportable(const TaskSource& task);

} // namespace suppertide
