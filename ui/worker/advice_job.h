// AdviceJob: looking for ways out on a thread of its own, each told as it is found. Starting anew
// stops the run before and parks it until it has reported, like PlanJob.
#pragma once

#include <QObject>

#include <optional>
#include <string>
#include <vector>

#include "core/advice/ways_out.h"
#include "ui/worker/parked_runs.h"

namespace suppertide::ui {

class AdviceJob : public QObject
{
    Q_OBJECT

public:
    explicit AdviceJob(QObject* parent = nullptr);

    void start(AdviceRequest request);
    /// Ends the run and forgets it: nothing more is told of it.
    void drop();
    /// Ends the run; `finished` follows with what was found so far.
    void stop();
    [[nodiscard]] bool isRunning() const { return runs_.isRunning(); }

Q_SIGNALS:
    void found(const suppertide::WayOut& way);
    void progressed(int tried, int toTry);
    void finished(const suppertide::Advice& advice);
    void failed(const suppertide::Failure& failure);

private:
    void tell(quint64 run, int tried, int toTry, const std::optional<WayOut>& way);
    void report(quint64 run, const Result<Advice>& advice);

    ParkedRuns runs_;
};

} // namespace suppertide::ui
