#include "ui/worker/why_job.h"

#include "core/base/log.h"

namespace suppertide::ui {

namespace {

std::optional<WhyHere> answerTo(const PlanPtr& plan, const PlanInput& input, TaskIndex task,
                                const std::stop_token& stop)
{
    try {
        return whyHere(plan, input, task, stop);
    } catch (const std::exception& error) { // a thread's entry is an edge
        log::error("ui.worker", "asking why failed: {}", error.what());
        return std::nullopt;
    }
}

} // namespace

WhyJob::WhyJob(QObject* parent) : QObject(parent) {}

void WhyJob::ask(PlanPtr plan, PlanInput input, TaskIndex task)
{
    runs_.begin([this, task, plan = std::move(plan),
                 input = std::move(input)](quint64 run, const std::stop_token& stop) {
        const std::optional<WhyHere> why = answerTo(plan, input, task, stop);
        QMetaObject::invokeMethod(
            this,
            [this, run, why, plan] {
                if (runs_.end(run) && why) {
                    Q_EMIT answered(*why, plan);
                }
            },
            Qt::QueuedConnection);
    });
}

void WhyJob::drop()
{
    runs_.drop();
}

} // namespace suppertide::ui
