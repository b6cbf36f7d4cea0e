// PlanJob: the planner on a thread of its own. The request is a snapshot; progress and outcome
// come back as signals on the thread that owns this. Starting anew stops the run before and parks
// it until it has reported: nobody waits for it before the program ends.
#pragma once

#include <QObject>

#include <memory>

#include "core/propose/make_plan.h"
#include "ui/worker/parked_runs.h"

namespace suppertide::ui {

class PlanJob : public QObject
{
    Q_OBJECT

public:
    explicit PlanJob(QObject* parent = nullptr);

    void start(PlanRequest request);
    /// Ends the run; `finished` follows with the best plan so far, if there is one.
    void stop();
    [[nodiscard]] bool isRunning() const { return runs_.isRunning(); }

Q_SIGNALS:
    void progressed(const suppertide::PlanProgress& progress);
    void finished(const suppertide::PlanOutcome& outcome, quint64 revision);
    void failed(const suppertide::Failure& failure);

private:
    void report(quint64 run, const Result<PlanOutcome>& outcome, quint64 revision);

    ParkedRuns runs_;
};

} // namespace suppertide::ui
