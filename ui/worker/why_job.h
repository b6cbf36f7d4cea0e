// WhyJob: finding out why a step stands where it does, on a thread of its own.
#pragma once

#include <QObject>

#include "core/advice/why_here.h"
#include "ui/worker/parked_runs.h"

namespace suppertide::ui {

class WhyJob : public QObject
{
    Q_OBJECT

public:
    explicit WhyJob(QObject* parent = nullptr);

    /// A question before this one is forgotten.
    void ask(PlanPtr plan, PlanInput input, TaskIndex task);
    void drop();

Q_SIGNALS:
    void answered(const suppertide::WhyHere& why, const suppertide::PlanPtr& plan);

private:
    ParkedRuns runs_;
};

} // namespace suppertide::ui
