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

WhyJob::~WhyJob()
{
    for (Run& run : runs_) {
        run.thread.request_stop();
    }
}

void WhyJob::ask(PlanPtr plan, PlanInput input, TaskIndex task)
{
    drop();
    const quint64 number = current_;
    runs_.push_back({number, std::jthread([this, number, task, plan = std::move(plan),
                                           input = std::move(input)](const std::stop_token& stop) {
                         const std::optional<WhyHere> why = answerTo(plan, input, task, stop);
                         QMetaObject::invokeMethod(
                             this,
                             [this, number, why, plan] {
                                 runs_.remove_if(
                                     [number](const Run& run) { return run.number == number; });
                                 if (number == current_ && why) {
                                     Q_EMIT answered(*why, plan);
                                 }
                             },
                             Qt::QueuedConnection);
                     })});
}

void WhyJob::drop()
{
    ++current_;
    if (!runs_.empty()) {
        runs_.back().thread.request_stop();
    }
}

} // namespace suppertide::ui
