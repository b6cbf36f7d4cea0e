#include "ui/worker/plan_job.h"

#include "core/base/log.h"

namespace suppertide::ui {

namespace {

Result<PlanOutcome> planned(const PlanRequest& request, const std::stop_token& stop,
                            const PlanProgressSink& progress)
{
    try {
        return makePlan(request, stop, progress);
    } catch (const std::exception& error) { // a thread's entry is an edge
        log::error("ui.worker", "planning failed: {}", error.what());
        return Failure{FailureKind::BadInput,
                       "Planning stopped because of a defect in the program. Your evening is as "
                       "it was; laying it out by hand still works.",
                       error.what()};
    }
}

} // namespace

PlanJob::PlanJob(QObject* parent) : QObject(parent) {}

PlanJob::~PlanJob()
{
    for (Run& run : runs_) {
        run.thread.request_stop();
    }
}

void PlanJob::start(PlanRequest request)
{
    stop();
    const quint64 number = ++current_;
    isRunning_ = true;
    const auto progress = [this, number](const PlanProgress& made) {
        QMetaObject::invokeMethod(
            this,
            [this, number, made] {
                if (number == current_ && isRunning_) {
                    Q_EMIT progressed(made);
                }
            },
            Qt::QueuedConnection);
    };
    runs_.push_back({number, std::jthread([this, number, progress, request = std::move(request)](
                                              const std::stop_token& stop) {
                         const Result<PlanOutcome> outcome = planned(request, stop, progress);
                         QMetaObject::invokeMethod(
                             this,
                             [this, number, outcome, revision = request.revision] {
                                 report(number, outcome, revision);
                             },
                             Qt::QueuedConnection);
                     })});
}

void PlanJob::stop()
{
    if (!runs_.empty()) {
        runs_.back().thread.request_stop();
    }
}

void PlanJob::report(quint64 run, const Result<PlanOutcome>& outcome, quint64 revision)
{
    runs_.remove_if([run](const Run& parked) { return parked.number == run; });
    if (run != current_) {
        return; // replaced by a later one meanwhile
    }
    isRunning_ = false;
    if (outcome) {
        Q_EMIT finished(*outcome, revision);
    } else {
        Q_EMIT failed(outcome.error());
    }
}

} // namespace suppertide::ui
