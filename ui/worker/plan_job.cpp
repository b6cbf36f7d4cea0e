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

void PlanJob::start(PlanRequest request)
{
    runs_.begin([this, request = std::move(request)](quint64 run, const std::stop_token& stop) {
        const auto progress = [this, run](const PlanProgress& made) {
            QMetaObject::invokeMethod(
                this,
                [this, run, made] {
                    if (runs_.isCurrent(run)) {
                        Q_EMIT progressed(made);
                    }
                },
                Qt::QueuedConnection);
        };
        const Result<PlanOutcome> outcome = planned(request, stop, progress);
        QMetaObject::invokeMethod(
            this,
            [this, run, outcome, revision = request.revision] { report(run, outcome, revision); },
            Qt::QueuedConnection);
    });
}

void PlanJob::stop()
{
    runs_.stop();
}

void PlanJob::report(quint64 run, const Result<PlanOutcome>& outcome, quint64 revision)
{
    if (!runs_.end(run)) {
        return;
    }
    if (outcome) {
        Q_EMIT finished(*outcome, revision);
    } else {
        Q_EMIT failed(outcome.error());
    }
}

} // namespace suppertide::ui
